#include "dialogs/explanation_dialog.hpp"

#include "models/headline.hpp"
#include "settings/measures.hpp"

#include <QDialogButtonBox>
#include <QFontDatabase>
#include <QHBoxLayout>
#include <QHeaderView>
#include <QLabel>
#include <QListWidget>
#include <QSignalBlocker>
#include <QTableWidget>
#include <QVBoxLayout>

namespace loopwright::dialogs {

namespace {

constexpr QSize usual_explanation_size{760, 480};
enum Column { name_column, meaning_column, value_column, column_count };

QLabel* new_text(QWidget* parent) {
    auto* label = new QLabel(parent);
    label->setWordWrap(true);
    label->setTextFormat(Qt::PlainText);
    label->setTextInteractionFlags(Qt::TextSelectableByMouse | Qt::TextSelectableByKeyboard);
    return label;
}

} // namespace

ExplanationDialog::ExplanationDialog(QWidget* parent)
    : QDialog(parent), list_(new QListWidget(this)), title_(new_text(this)), formula_(new_text(this)),
      symbols_(new QTableWidget(this)), source_(new_text(this)), validity_(new_text(this)) {
    setWindowTitle(tr("Where does this number come from"));
    resize(usual_explanation_size);
    list_->setAccessibleName(tr("Numbers"));
    list_->setToolTip(tr("All numbers of this operating point; a number is made of others."));
    list_->setMaximumWidth(usual_explanation_size.width() / 3);
    QFont bold = title_->font();
    bold.setBold(true);
    title_->setFont(bold);
    formula_->setFont(QFontDatabase::systemFont(QFontDatabase::FixedFont));
    formula_->setAccessibleName(tr("Formula"));
    symbols_->setAccessibleName(tr("What stands in the formula"));
    symbols_->setColumnCount(column_count);
    symbols_->setHorizontalHeaderLabels({tr("Symbol"), tr("Meaning"), tr("Value")});
    symbols_->horizontalHeader()->setSectionResizeMode(QHeaderView::ResizeToContents);
    symbols_->horizontalHeader()->setSectionResizeMode(meaning_column, QHeaderView::Stretch);
    symbols_->verticalHeader()->hide();
    symbols_->setEditTriggers(QAbstractItemView::NoEditTriggers);
    symbols_->setSelectionBehavior(QAbstractItemView::SelectRows);
    symbols_->setTabKeyNavigation(false);
    symbols_->setWordWrap(true);

    auto* content = new QVBoxLayout;
    content->setSpacing(unit_px);
    content->addWidget(title_);
    content->addWidget(formula_);
    content->addWidget(symbols_, 1);
    content->addWidget(source_);
    content->addWidget(validity_);
    auto* row = new QHBoxLayout;
    row->setSpacing(unit_px);
    row->addWidget(list_);
    row->addLayout(content, 1);
    auto* column = new QVBoxLayout(this);
    column->setContentsMargins(unit_px, unit_px, unit_px, unit_px);
    column->addLayout(row, 1);
    auto* buttons = new QDialogButtonBox(QDialogButtonBox::Close, this);
    column->addWidget(buttons);
    connect(buttons, &QDialogButtonBox::rejected, this, &QDialog::reject);
    connect(list_, &QListWidget::currentRowChanged, this, &ExplanationDialog::show_current);
}

void ExplanationDialog::set_point(const design::Design& design,
                                  const std::optional<loop::OperatingPoint>& point,
                                  units::UnitSystem system) {
    explanations_ = point ? loop::explanations(design, *point, system) : std::vector<loop::Explanation>{};
    reason_ = point ? models::reason_not_established(*point) : QString();
    const int row = list_->currentRow();
    {
        const QSignalBlocker quiet(list_);
        list_->clear();
        for (const loop::Explanation& explanation : explanations_) {
            auto* item = new QListWidgetItem(QString::fromStdString(explanation.title), list_);
            item->setData(Qt::UserRole, QString::fromStdString(explanation.key));
        }
        list_->setCurrentRow(row < 0 && list_->count() > 0 ? 0 : row);
    }
    show_current();
}

void ExplanationDialog::select(const QString& key) {
    for (int row = 0; row < list_->count(); ++row) {
        if (list_->item(row)->data(Qt::UserRole).toString() == key) {
            list_->setCurrentRow(row);
        }
    }
}

void ExplanationDialog::show_current() {
    const int row = list_->currentRow();
    const bool some = row >= 0 && row < static_cast<int>(explanations_.size());
    const loop::Explanation shown = some ? explanations_[static_cast<std::size_t>(row)] : loop::Explanation{};
    title_->setText(some ? QString::fromStdString(shown.title) : tr("Not established. %1").arg(reason_));
    formula_->setText(QString::fromStdString(shown.formula));
    fill_symbols(shown.symbols);
    source_->setText(some ? tr("Source: %1").arg(QString::fromStdString(shown.source)) : QString());
    validity_->setText(some ? tr("Holds: %1").arg(QString::fromStdString(shown.validity)) : QString());
}

void ExplanationDialog::fill_symbols(const std::vector<loop::Symbol>& symbols) {
    symbols_->setRowCount(static_cast<int>(symbols.size()));
    for (int row = 0; row < symbols_->rowCount(); ++row) {
        const loop::Symbol& symbol = symbols[static_cast<std::size_t>(row)];
        symbols_->setItem(row, name_column, new QTableWidgetItem(QString::fromStdString(symbol.name)));
        symbols_->setItem(row, meaning_column, new QTableWidgetItem(QString::fromStdString(symbol.meaning)));
        auto* value = new QTableWidgetItem(QString::fromStdString(symbol.value));
        value->setTextAlignment(Qt::AlignRight | Qt::AlignVCenter);
        symbols_->setItem(row, value_column, value);
    }
    symbols_->resizeRowsToContents();
}

} // namespace loopwright::dialogs
