#include "pages/dial_table_editor.hpp"

#include "base/error.hpp"
#include "inputs/quantity_text.hpp"
#include "models/quantity_words.hpp"
#include "pages/pairs_editor.hpp"
#include "pages/refusal.hpp"

#include <QRegularExpression>
#include <QVBoxLayout>

#include <algorithm>

namespace loopwright::pages {

namespace {

/// A line a row: reading, then capacitance, in pF unless it says otherwise.
std::vector<design::DialEntry> pasted_entries(const QString& text) {
    static const QRegularExpression between(QStringLiteral("[\t;]"));
    std::vector<design::DialEntry> entries;
    for (const QString& line : text.split(QLatin1Char('\n'), Qt::SkipEmptyParts)) {
        if (line.trimmed().isEmpty()) {
            continue;
        }
        const QStringList cells = line.trimmed().split(between, Qt::SkipEmptyParts);
        if (cells.size() != 2) {
            throw base::InputError("dial_table", line.trimmed().toStdString(),
                                   DialTableEditor::tr("a reading and a capacitance in each line, a tab or a "
                                                       "semicolon between")
                                       .toStdString());
        }
        const inputs::Reading read =
            inputs::read(cells[1], {units::Dimension::capacitance}, QStringLiteral("pF"), "capacitance");
        entries.push_back({inputs::read(cells[0], {units::Dimension::number}, {}, "reading").si,
                           {units::Capacitance::from_value(read.si), read.text.toStdString()}});
    }
    return entries;
}

PairsWords dial_table_words() {
    PairsWords words;
    words.id = QStringLiteral("dial_table");
    words.first = DialTableEditor::tr("Reading");
    words.first_tip =
        DialTableEditor::tr("What the scale shows. A table of readings and capacitances can be pasted "
                            "here as a whole.");
    words.second = DialTableEditor::tr("Capacitance");
    words.second_tip =
        DialTableEditor::tr("Of the variable capacitor alone, measured at that reading: no stray, "
                            "nothing added.");
    words.dimension = units::Dimension::capacitance;
    words.headings = {DialTableEditor::tr("Reading"), DialTableEditor::tr("Capacitance")};
    words.tips = {DialTableEditor::tr("Double click or F2 to change"),
                  DialTableEditor::tr("Double click or F2 to change")};
    words.add = DialTableEditor::tr("Add &row");
    words.add_tip = DialTableEditor::tr("Put this pair into the table, in the order of the readings");
    words.table = DialTableEditor::tr("Measured table of the dial");
    words.table_tip =
        DialTableEditor::tr("One row a reading. Delete takes out, paste adds rows from a table.");
    return words;
}

} // namespace

DialTableEditor::DialTableEditor(const Context& context, QWidget* parent)
    : QWidget(parent), context_(context), pairs_(new PairsEditor(dial_table_words(), this)) {
    auto* column = new QVBoxLayout(this);
    column->setContentsMargins(0, 0, 0, 0);
    column->addWidget(pairs_);
    connect(pairs_, &PairsEditor::add_wanted, this, [this](double reading, double si, const QString& text) {
        edit(tr("Add row of the dial's table"), [&](std::vector<design::DialEntry>& table) {
            table.push_back({reading, {units::Capacitance::from_value(si), text.toStdString()}});
        });
    });
    connect(pairs_, &PairsEditor::change_wanted, this, [this](int row, int column_at, const QString& text) {
        edit(tr("Change row of the dial's table"), [&](std::vector<design::DialEntry>& table) {
            design::DialEntry& entry = table.at(static_cast<std::size_t>(row));
            if (column_at == 0) {
                entry.reading = inputs::read(text, {units::Dimension::number}, {}, "reading").si;
            } else {
                const inputs::Reading read =
                    inputs::read(text, {units::Dimension::capacitance}, QStringLiteral("pF"), "capacitance");
                entry.capacitance = {units::Capacitance::from_value(read.si), read.text.toStdString()};
            }
        });
        refresh(); // also where it was refused
    });
    connect(pairs_, &PairsEditor::remove_wanted, this, [this](const QList<int>& rows) {
        edit(tr("Remove rows of the dial's table"), [&](std::vector<design::DialEntry>& table) {
            for (auto row = rows.rbegin(); row != rows.rend(); ++row) {
                table.erase(table.begin() + *row);
            }
        });
    });
    connect(pairs_, &PairsEditor::paste_wanted, this, [this](const QString& text) {
        edit(tr("Add rows to the dial's table"), [&](std::vector<design::DialEntry>& table) {
            const std::vector<design::DialEntry> more = pasted_entries(text);
            table.insert(table.end(), more.begin(), more.end());
        });
    });
    connect(&context_.document, &session::Document::design_changed, this, &DialTableEditor::refresh);
    refresh();
}

void DialTableEditor::edit(const QString& what,
                           const std::function<void(std::vector<design::DialEntry>&)>& change) {
    design::Design next = context_.document.design();
    if (!next.capacitor.dial) {
        return;
    }
    try {
        auto& table = next.capacitor.dial->table;
        change(table);
        std::stable_sort(table.begin(), table.end(),
                         [](const auto& a, const auto& b) { return a.reading < b.reading; });
        context_.document.end_merge();
        context_.document.edit(next, {what, {}, {}});
    } catch (const base::InputError& error) {
        pairs_->refuse(refusal_sentence(error));
    }
}

void DialTableEditor::refresh() {
    const auto& dial = context_.document.design().capacitor.dial;
    const bool shown = dial && dial->law == design::DialLaw::table;
    setVisible(shown);
    if (!shown) {
        return;
    }
    QList<models::PairRow> rows;
    for (const design::DialEntry& entry : dial->table) {
        models::PairRow row;
        row.first = models::plain_number(entry.reading, 6);
        row.second = entry.capacitance.text.empty()
                         ? models::given_text(entry.capacitance.value.value(), units::Dimension::capacitance)
                         : QString::fromStdString(entry.capacitance.text);
        rows.append(row);
    }
    pairs_->set_rows(rows);
}

} // namespace loopwright::pages
