#include "pages/pairs_editor.hpp"

#include "inputs/entry.hpp"
#include "pages/plain_table.hpp"
#include "settings/measures.hpp"

#include <QClipboard>
#include <QGridLayout>
#include <QGuiApplication>
#include <QHBoxLayout>
#include <QHeaderView>
#include <QKeyEvent>
#include <QLabel>
#include <QLineEdit>
#include <QPushButton>
#include <QVBoxLayout>

#include <algorithm>
#include <set>

namespace loopwright::pages {

namespace {
constexpr int most_rows_shown = 9, least_rows_shown = 3;

/// More than what belongs into one field: several lines, or cells of a table.
bool holds_pairs(const QString& text) {
    const QString inner = text.trimmed();
    return inner.contains(QLatin1Char('\n')) || inner.contains(QLatin1Char('\t')) ||
           inner.contains(QLatin1Char(';'));
}
} // namespace

PairsEditor::PairsEditor(const PairsWords& words, QWidget* parent)
    : QWidget(parent), model_(new models::PairsModel(words.headings, words.tips, this)),
      first_(new inputs::Entry({units::Dimension::number}, words.id.toStdString() + ".reading", this)),
      second_(new inputs::Entry({words.dimension}, words.id.toStdString() + ".second", this)),
      add_(new QPushButton(words.add, this)), remove_(new QPushButton(tr("Remove"), this)),
      refusal_(new QLabel(this)), table_(new QTableView(this)), buttons_(new QWidget(this)) {
    auto* column = new QVBoxLayout(this);
    column->setContentsMargins(2 * unit_px, 0, 0, 0);
    column->setSpacing(unit_px / 2);
    auto* grid = new QGridLayout;
    grid->setHorizontalSpacing(unit_px);
    grid->setVerticalSpacing(unit_px / 2);
    int line = 0;
    for (const auto& [entry, label, tip, name] :
         {std::tuple(first_, words.first, words.first_tip, QStringLiteral(".reading")),
          std::tuple(second_, words.second, words.second_tip, QStringLiteral(".second"))}) {
        auto* text = new QLabel(label, this);
        text->setBuddy(&entry->field());
        text->setToolTip(tip);
        entry->describe(QString(label).remove(QLatin1Char('&')), tip);
        entry->field().setObjectName(words.id + name);
        entry->field().set_optional(true, {});
        grid->addWidget(text, line, 0);
        grid->addWidget(entry, line++, 1);
    }
    grid->setColumnStretch(1, 1);
    column->addLayout(grid);
    auto* row = new QHBoxLayout(buttons_);
    row->setContentsMargins(0, 0, 0, 0);
    row->addWidget(add_);
    row->addWidget(remove_);
    row->addStretch(1);
    column->addWidget(buttons_);
    refusal_->setWordWrap(true);
    refusal_->setTextFormat(Qt::PlainText);
    refusal_->setTextInteractionFlags(Qt::TextSelectableByMouse);
    refusal_->setObjectName(words.id + QStringLiteral(".refusal"));
    refusal_->hide();
    column->addWidget(refusal_);
    column->addWidget(table_);
    table_->setModel(model_);
    table_->setObjectName(words.id + QStringLiteral(".table"));
    make_plain(*table_, words.table, words.table_tip);
    table_->setEditTriggers(QAbstractItemView::DoubleClicked | QAbstractItemView::EditKeyPressed |
                            QAbstractItemView::AnyKeyPressed);
    table_->horizontalHeader()->setStretchLastSection(true);
    table_->installEventFilter(this);
    add_->setObjectName(words.id + QStringLiteral(".add"));
    add_->setToolTip(words.add_tip);
    remove_->setObjectName(words.id + QStringLiteral(".remove"));
    remove_->setToolTip(tr("Take out the selected rows (Delete)"));
    connect(add_, &QPushButton::clicked, this, &PairsEditor::take);
    connect(remove_, &QPushButton::clicked, this, &PairsEditor::remove);
    connect(model_, &models::PairsModel::change_wanted, this, [this](int at, int which, const QString& text) {
        refuse({});
        Q_EMIT change_wanted(at, which, text);
    });
    connect(&second_->field(), &inputs::QuantityField::edited, this, [this](double si, const QString& text) {
        second_text_ = text;
        second_->field().set_value(si, text);
    });
    connect(&first_->field(), &inputs::QuantityField::edited, this,
            [this](double reading, const QString& text) { first_->field().set_value(reading, text); });
    connect(&first_->field(), &inputs::QuantityField::emptied, &first_->field(),
            &inputs::QuantityField::set_nothing);
    connect(&second_->field(), &inputs::QuantityField::emptied, &second_->field(),
            &inputs::QuantityField::set_nothing);
    first_->field().installEventFilter(this);
    second_->field().installEventFilter(this);
    fit();
}

void PairsEditor::add_button(QPushButton* button) {
    auto* row = qobject_cast<QHBoxLayout*>(buttons_->layout());
    row->insertWidget(row->count() - 1, button);
}

void PairsEditor::set_rows(const QList<models::PairRow>& rows) {
    model_->set_rows(rows);
    fit();
}

/// As high as its rows, within bounds: the page scrolls, not a table of four rows.
void PairsEditor::fit() {
    const int row = table_->verticalHeader()->defaultSectionSize();
    const int shown = std::clamp(model_->rowCount(), least_rows_shown, most_rows_shown);
    table_->setFixedHeight(table_->horizontalHeader()->sizeHint().height() + shown * row + 4);
    table_->resizeColumnsToContents();
    table_->setVisible(model_->rowCount() > 0);
    remove_->setEnabled(model_->rowCount() > 0);
}

void PairsEditor::offer(const QString& first, const QString& second) {
    if (first_->field().value() || second_->field().value() || first_->field().hasFocus() ||
        second_->field().hasFocus()) {
        return;
    }
    first_->field().set_optional(true, first);
    second_->field().set_optional(true, second);
}

void PairsEditor::refuse(const QString& sentence) {
    refusal_->setText(sentence);
    refusal_->setVisible(!sentence.isEmpty());
}

void PairsEditor::take() {
    refuse({});
    add_->setFocus(Qt::OtherFocusReason); // the field that is being typed in settles first
    if (!first_->field().refusal().isEmpty() || !second_->field().refusal().isEmpty()) {
        return; // said beside the field
    }
    const auto reading = first_->field().value(), second = second_->field().value();
    if (!reading || !second) {
        refuse(tr("Give both the reading and what belongs to it."));
        (reading ? second_ : first_)->field().setFocus(Qt::TabFocusReason);
        return;
    }
    Q_EMIT add_wanted(*reading, *second, second_text_);
    if (refusal_->text().isEmpty()) {
        second_text_.clear();
        first_->field().set_nothing();
        second_->field().set_nothing();
        first_->field().setFocus(Qt::TabFocusReason);
    }
}

void PairsEditor::remove() {
    std::set<int> rows;
    for (const QModelIndex& index : table_->selectionModel()->selectedRows()) {
        rows.insert(index.row());
    }
    if (!rows.empty()) {
        refuse({});
        Q_EMIT remove_wanted(QList<int>(rows.begin(), rows.end()));
    }
}

bool PairsEditor::eventFilter(QObject* watched, QEvent* event) {
    if (event->type() != QEvent::KeyPress && event->type() != QEvent::ShortcutOverride) {
        return QWidget::eventFilter(watched, event);
    }
    auto* key = dynamic_cast<QKeyEvent*>(event);
    const bool enter = key->key() == Qt::Key_Return || key->key() == Qt::Key_Enter;
    const bool in_field = watched == &first_->field() || watched == &second_->field();
    if (in_field && key->matches(QKeySequence::Paste) && holds_pairs(QGuiApplication::clipboard()->text())) {
        if (event->type() == QEvent::KeyPress) {
            refuse({});
            Q_EMIT paste_wanted(QGuiApplication::clipboard()->text());
        } else {
            event->accept();
        }
        return true;
    }
    if (watched == &second_->field() && enter && event->type() == QEvent::KeyPress) {
        take();
        return true;
    }
    if (watched == table_) {
        const bool paste = key->matches(QKeySequence::Paste), copy = key->matches(QKeySequence::Copy);
        const bool erase = key->matches(QKeySequence::Delete) || key->key() == Qt::Key_Backspace;
        if (event->type() == QEvent::ShortcutOverride && (paste || copy || erase)) {
            event->accept();
            return true;
        }
        if (event->type() == QEvent::KeyPress && (paste || copy || erase)) {
            if (paste) {
                refuse({});
                Q_EMIT paste_wanted(QGuiApplication::clipboard()->text());
            } else if (copy) {
                QGuiApplication::clipboard()->setText(rows_as_text(*table_));
            } else {
                remove();
            }
            return true;
        }
    }
    return QWidget::eventFilter(watched, event);
}

} // namespace loopwright::pages
