#include "printing/chart_export.hpp"

#include <QCheckBox>
#include <QComboBox>
#include <QDialogButtonBox>
#include <QDir>
#include <QDoubleSpinBox>
#include <QFileDialog>
#include <QFormLayout>
#include <QHBoxLayout>
#include <QLabel>
#include <QLineEdit>
#include <QPushButton>
#include <QVBoxLayout>

#include <algorithm>

namespace loopwright::printing {

QString file_stem(const QString& title) {
    QString stem;
    for (const QChar c : title.toLower()) {
        if (c.isLetterOrNumber()) {
            stem += c;
        } else if (!stem.isEmpty() && !stem.endsWith(QLatin1Char('-'))) {
            stem += QLatin1Char('-');
        }
    }
    while (stem.endsWith(QLatin1Char('-'))) {
        stem.chop(1);
    }
    constexpr int longest = 60;
    return stem.isEmpty() ? QStringLiteral("loop") : stem.left(longest);
}

QStringList file_names(const ChartExport& what) {
    QStringList names;
    if (what.figure) {
        const QString name =
            what.stem + QLatin1Char('-') + what.figure->id() + QLatin1Char('.') + what.ending;
        return {QDir(what.folder).filePath(name)};
    }
    for (const models::ChartContent& chart : what.charts) {
        const QString name = what.stem + QLatin1Char('-') + chart.id + QLatin1Char('.') + what.ending;
        names << QDir(what.folder).filePath(name);
    }
    return names;
}

QStringList write_charts(const ChartExport& what, QString& failed) {
    const QStringList names = file_names(what);
    QStringList written;
    if (what.figure) {
        if (charts::write_picture(names.front(), *what.figure, what.origin, what.size)) {
            return names;
        }
        failed = names.front();
        return written;
    }
    for (std::size_t i = 0; i < what.charts.size(); ++i) {
        const QString& name = names[static_cast<qsizetype>(i)];
        if (!charts::write_picture(name, what.charts[i], what.origin, what.size)) {
            failed = name;
            return written;
        }
        written << name;
    }
    return written;
}

ChartExportDialog::ChartExportDialog(const ChartExport& start, int chosen, charts::Span shown,
                                     QWidget* parent)
    : QDialog(parent), start_(start), shown_(shown), ending_(new QComboBox(this)),
      range_(new QComboBox(this)), width_(new QDoubleSpinBox(this)), height_(new QDoubleSpinBox(this)),
      dpi_(new QSpinBox(this)), folder_(new QLineEdit(start.folder, this)) {
    setWindowTitle(tr("Export charts"));
    auto* column = new QVBoxLayout(this);
    auto* form = new QFormLayout;
    column->addLayout(form);
    build_charts(*form, chosen);
    build_size(*form);
    build_place(*form);
    auto* buttons = new QDialogButtonBox(QDialogButtonBox::Cancel, this);
    write_ = buttons->addButton(tr("&Write files"), QDialogButtonBox::AcceptRole);
    connect(buttons, &QDialogButtonBox::accepted, this, &QDialog::accept);
    connect(buttons, &QDialogButtonBox::rejected, this, &QDialog::reject);
    column->addWidget(buttons);
    update_state();
}

void ChartExportDialog::build_charts(QFormLayout& form, int chosen) {
    auto* list = new QVBoxLayout;
    for (int i = 0; i < static_cast<int>(start_.charts.size()); ++i) {
        auto* mark = new QCheckBox(start_.charts[static_cast<std::size_t>(i)].title, this);
        mark->setChecked(chosen < 0 || chosen == i);
        connect(mark, &QCheckBox::toggled, this, &ChartExportDialog::update_state);
        list->addWidget(mark);
        marks_.push_back(mark);
    }
    if (start_.figure) {
        list->addWidget(new QLabel(start_.figure->title(), this));
    }
    form.addRow(tr("Charts"), list);
}

void ChartExportDialog::build_size(QFormLayout& form) {
    ending_->addItem(tr("PNG (pixels)"), QStringLiteral("png"));
    ending_->addItem(tr("SVG (lines)"), QStringLiteral("svg"));
    ending_->addItem(tr("PDF (lines)"), QStringLiteral("pdf"));
    ending_->setCurrentIndex(std::max(0, ending_->findData(start_.ending)));
    connect(ending_, &QComboBox::currentIndexChanged, this, &ChartExportDialog::update_state);
    form.addRow(tr("&Format"), ending_);
    const auto size_field = [&](QDoubleSpinBox* box, const QString& label, double least, double value) {
        box->setRange(least, 1000.0);
        box->setDecimals(0);
        box->setSuffix(QStringLiteral("\u2009mm"));
        box->setValue(value);
        form.addRow(label, box);
    };
    size_field(width_, tr("W&idth"), 60.0, start_.size.mm.width());
    size_field(height_, tr("&Height"), 40.0, start_.size.mm.height());
    dpi_->setRange(72, 1200);
    dpi_->setSuffix(QStringLiteral("\u2009") + tr("dots per inch"));
    dpi_->setValue(start_.size.dpi);
    form.addRow(tr("&Resolution"), dpi_);
    range_->addItem(tr("the whole range"));
    range_->addItem(tr("as shown in the window"));
    range_->setCurrentIndex(shown_.high > shown_.low ? 1 : 0);
    form.addRow(tr("Fre&quencies"), range_);
    form.setRowVisible(range_, start_.figure == nullptr);
}

void ChartExportDialog::build_place(QFormLayout& form) {
    auto* row = new QHBoxLayout;
    row->addWidget(folder_, 1);
    auto* choose = new QPushButton(tr("&Choose…"), this);
    connect(choose, &QPushButton::clicked, this, &ChartExportDialog::choose_folder);
    connect(folder_, &QLineEdit::textChanged, this, &ChartExportDialog::update_state);
    row->addWidget(choose);
    auto* label = new QLabel(tr("Fol&der"), this); // a row that is a layout gets no buddy of its own
    label->setBuddy(folder_);
    form.addRow(label, row);
    folder_->setAccessibleName(tr("Folder"));
}

void ChartExportDialog::choose_folder() {
    const QString folder =
        QFileDialog::getExistingDirectory(this, tr("Folder for the charts"), folder_->text());
    if (!folder.isEmpty()) {
        folder_->setText(folder);
    }
}

void ChartExportDialog::update_state() {
    dpi_->setEnabled(ending_->currentData().toString() == QLatin1String("png"));
    const bool any =
        start_.figure != nullptr ||
        std::any_of(marks_.begin(), marks_.end(), [](const QCheckBox* mark) { return mark->isChecked(); });
    if (write_ != nullptr) {
        const bool place = QDir(folder_->text()).exists() && !folder_->text().isEmpty();
        write_->setEnabled(any && place);
        write_->setToolTip(!any     ? tr("Mark at least one chart")
                           : !place ? tr("The folder does not exist")
                                    : QString());
    }
}

ChartExport ChartExportDialog::result_wanted() const {
    ChartExport wanted = start_;
    wanted.charts.clear();
    for (std::size_t i = 0; i < marks_.size(); ++i) {
        if (marks_[i]->isChecked()) {
            wanted.charts.push_back(start_.charts[i]);
        }
    }
    wanted.ending = ending_->currentData().toString();
    wanted.size.mm = {width_->value(), height_->value()};
    wanted.size.dpi = dpi_->value();
    wanted.size.range = range_->currentIndex() == 1 ? shown_ : charts::Span{};
    wanted.folder = folder_->text();
    return wanted;
}

} // namespace loopwright::printing
