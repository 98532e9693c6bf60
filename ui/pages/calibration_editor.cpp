#include "pages/calibration_editor.hpp"

#include "base/error.hpp"
#include "inputs/quantity_text.hpp"
#include "inputs/text_field.hpp"
#include "models/calibration_rows.hpp"
#include "models/quantity_words.hpp"
#include "pages/pairs_editor.hpp"
#include "pages/refusal.hpp"
#include "settings/measures.hpp"
#include "tuning/point_text.hpp"

#include <QDate>
#include <QFile>
#include <QFileDialog>
#include <QFileInfo>
#include <QFormLayout>
#include <QLabel>
#include <QPushButton>
#include <QVBoxLayout>

#include <algorithm>

namespace loopwright::pages {

namespace {

constexpr qint64 largest_file = 1 << 20;

/// Points are of some day; the first ones say which, unless a person has said.
void date_today(design::Calibration& calibration) {
    if (calibration.date.empty()) {
        calibration.date = QDate::currentDate().toString(Qt::ISODate).toStdString();
    }
}

PairsWords calibration_words() {
    PairsWords words;
    words.id = QStringLiteral("calibration");
    words.first = CalibrationEditor::tr("Dial at");
    words.first_tip =
        CalibrationEditor::tr("What the scale showed when the loop was in resonance. A table of readings "
                              "and frequencies can be pasted here as a whole.");
    words.second = CalibrationEditor::tr("Resonance at");
    words.second_tip =
        CalibrationEditor::tr("Where the VSWR was least, by the radio or an analyser: 7.074 MHz. Enter "
                              "adds the point.");
    words.headings = {CalibrationEditor::tr("Dial"), CalibrationEditor::tr("Frequency"),
                      CalibrationEditor::tr("Off by"), CalibrationEditor::tr("Judged")};
    words.tips = {CalibrationEditor::tr("Double click or F2 to change"),
                  CalibrationEditor::tr("Double click or F2 to change"),
                  CalibrationEditor::tr("Measured frequency less what the other points and the model say"),
                  CalibrationEditor::tr("Whether the point counts; the reason stands in the row's tip")};
    words.add = CalibrationEditor::tr("&Add point");
    words.add_tip = CalibrationEditor::tr("Put this pair into the calibration");
    words.table = CalibrationEditor::tr("Points of the calibration");
    words.table_tip =
        CalibrationEditor::tr("One row a point. Delete takes out, paste adds rows from a table.");
    return words;
}

} // namespace

CalibrationEditor::CalibrationEditor(const Context& context, QWidget* parent)
    : QWidget(parent), context_(context), pairs_(new PairsEditor(calibration_words(), this)),
      date_(new inputs::TextField(this)), note_(new inputs::TextField(this)), next_(new QLabel(this)),
      fitted_(new QLabel(this)) {
    auto* column = new QVBoxLayout(this);
    column->setContentsMargins(0, 0, 0, 0);
    column->setSpacing(unit_px / 2);
    for (QLabel* label : {next_, fitted_}) {
        label->setWordWrap(true);
        label->setTextFormat(Qt::PlainText);
        label->setTextInteractionFlags(Qt::TextSelectableByMouse);
        label->setContentsMargins(2 * unit_px, 0, 0, 0);
    }
    next_->setObjectName(QStringLiteral("calibration.next"));
    fitted_->setObjectName(QStringLiteral("calibration.fitted"));
    auto* file = new QPushButton(tr("Read &CSV…"), this);
    file->setObjectName(QStringLiteral("calibration.read"));
    file->setToolTip(tr("Add the points of a file: dial reading and frequency on each line"));
    pairs_->add_button(file);
    auto* form = new QFormLayout;
    form->setContentsMargins(2 * unit_px, 0, 0, 0);
    form->setFieldGrowthPolicy(QFormLayout::AllNonFixedFieldsGrow);
    const auto add = [&](inputs::TextField* field, const QString& label, const QString& tip, const char* name,
                         std::string design::Calibration::*member) {
        field->setObjectName(QLatin1String(name));
        field->setToolTip(tip);
        field->setAccessibleName(label);
        form->addRow(label, field);
        connect(field, &QLineEdit::textEdited, this, [this, label, member, name](const QString& text) {
            edit(
                label, [&](design::Calibration& one) { one.*member = text.toStdString(); },
                QLatin1String(name));
        });
        connect(field, &QLineEdit::editingFinished, &context_.document, &session::Document::end_merge);
    };
    column->addWidget(next_);
    column->addWidget(pairs_);
    column->addWidget(fitted_);
    add(date_, tr("Measured on"), tr("The date of the calibration."), "calibration.date",
        &design::Calibration::date);
    add(note_, tr("Note"), tr("Where and how: what stood near, which drive, who turned."), "calibration.note",
        &design::Calibration::note);
    column->addLayout(form);
    connect(pairs_, &PairsEditor::add_wanted, this, &CalibrationEditor::add_point);
    connect(pairs_, &PairsEditor::change_wanted, this, &CalibrationEditor::change_point);
    connect(pairs_, &PairsEditor::remove_wanted, this, &CalibrationEditor::remove_points);
    connect(pairs_, &PairsEditor::paste_wanted, this, [this](const QString& text) {
        add_text(text, tr("Add calibration points"), tr("What was pasted"));
    });
    connect(file, &QPushButton::clicked, this, &CalibrationEditor::read_file);
    connect(&context_.document, &session::Document::design_changed, this, &CalibrationEditor::refresh);
    refresh();
}

void CalibrationEditor::edit(const QString& what, const std::function<void(design::Calibration&)>& change,
                             const QString& merge_key) {
    design::Design next = context_.document.design();
    design::Calibration calibration = next.calibration.value_or(design::Calibration{});
    try {
        change(calibration);
        if (calibration == design::Calibration{}) {
            next.calibration.reset();
        } else {
            next.calibration = calibration;
        }
        if (merge_key.isEmpty()) {
            context_.document.end_merge();
        }
        context_.document.edit(next, {what, {}, {}}, merge_key);
    } catch (const base::InputError& error) {
        pairs_->refuse(refusal_sentence(error));
    }
}

void CalibrationEditor::add_point(double reading, double frequency_Hz, const QString& text) {
    edit(tr("Add calibration point"), [&](design::Calibration& calibration) {
        date_today(calibration);
        calibration.points.push_back({reading, {units::hertz(frequency_Hz), text.toStdString()}});
    });
}

void CalibrationEditor::change_point(int row, int column, const QString& text) {
    edit(tr("Change calibration point"), [&](design::Calibration& calibration) {
        design::CalibrationPoint& point = calibration.points.at(static_cast<std::size_t>(row));
        if (column == 0) {
            point.reading = inputs::read(text, {units::Dimension::number}, {}, "calibration").si;
        } else {
            const inputs::Reading read =
                inputs::read(text, {units::Dimension::frequency}, QStringLiteral("MHz"), "calibration");
            point.frequency = {units::hertz(read.si), read.text.toStdString()};
        }
    });
    refresh(); // also where it was refused: the table shows what the design holds
}

void CalibrationEditor::remove_points(const QList<int>& rows) {
    edit(tr("Remove calibration points"), [&](design::Calibration& calibration) {
        for (auto row = rows.rbegin(); row != rows.rend(); ++row) {
            calibration.points.erase(calibration.points.begin() + *row);
        }
    });
}

void CalibrationEditor::add_text(const QString& text, const QString& what, const QString& where) {
    edit(what, [&](design::Calibration& calibration) {
        const auto more = tuning::read_points(text.toStdString(), where.toStdString());
        date_today(calibration);
        calibration.points.insert(calibration.points.end(), more.begin(), more.end());
    });
}

void CalibrationEditor::read_file() {
    const QString path =
        QFileDialog::getOpenFileName(this, tr("Read calibration points"), context_.settings.last_folder(),
                                     tr("Tables (*.csv *.txt *.tsv);;All files (*)"));
    if (path.isEmpty()) {
        return;
    }
    context_.settings.set_last_folder(QFileInfo(path).absolutePath());
    pairs_->refuse({});
    QFile file(path);
    if (!file.open(QIODevice::ReadOnly) || file.size() > largest_file) {
        pairs_->refuse(tr("“%1” cannot be read, or is no small table.").arg(QFileInfo(path).fileName()));
        return;
    }
    add_text(QString::fromUtf8(file.readAll()), tr("Read calibration points"), QFileInfo(path).fileName());
}

void CalibrationEditor::refresh() {
    const auto& calibration = context_.document.design().calibration;
    date_->show_text(calibration ? QString::fromStdString(calibration->date) : QString());
    note_->show_text(calibration ? QString::fromStdString(calibration->note) : QString());
    show_words();
}

void CalibrationEditor::set_result(const std::shared_ptr<const jobs::DialResult>& result) {
    result_ = result;
    show_words();
}

void CalibrationEditor::show_words() {
    const design::Design& design = context_.document.design();
    const std::vector<design::CalibrationPoint> none;
    const auto& points = design.calibration ? design.calibration->points : none;
    const bool told = result_ && result_->dial && result_->request.design.calibration == design.calibration;
    static const std::vector<tuning::JudgedPoint> unjudged;
    pairs_->set_rows(models::calibration_rows(points, told ? result_->dial->points() : unjudged));
    if (!told) {
        next_->setText(design.capacitor.dial
                           ? tr("Computing what the points tell.")
                           : tr("Points can be kept already; they count once there is a dial."));
        fitted_->setText({});
    } else {
        QStringList lines{models::calibration_summary(result_->dial->points())};
        if (!result_->next.empty() && design.capacitor.dial) {
            lines << models::next_point_words(result_->next, *design.capacitor.dial);
        }
        next_->setText(lines.join(QLatin1Char('\n')));
        fitted_->setText(models::fitted_words(result_->dial->parts()).join(QLatin1Char('\n')));
    }
    fitted_->setVisible(!fitted_->text().isEmpty());
}

} // namespace loopwright::pages
