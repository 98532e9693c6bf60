#include "inputs/entry.hpp"

#include <QAction>
#include <QGridLayout>
#include <QLabel>
#include <QMenu>
#include <QShortcut>
#include <QToolButton>

namespace loopwright::inputs {

namespace {
constexpr int small_gap = 4;
} // namespace

Entry::Entry(const Kind& kind, const std::string& where, QWidget* parent)
    : QWidget(parent), field_(new QuantityField(kind, where, this)), equivalent_(new QLabel(this)),
      refusal_(new QLabel(this)) {
    auto* grid = new QGridLayout(this);
    grid->setContentsMargins(0, 0, 0, 0);
    grid->setHorizontalSpacing(small_gap);
    grid->setVerticalSpacing(small_gap / 2);
    grid->addWidget(field_, 0, 0);
    if (kind.dimension != units::Dimension::number) {
        fill_units();
        grid->addWidget(units_, 0, 1);
    }
    grid->addWidget(equivalent_, 0, 2);
    grid->addWidget(refusal_, 1, 0, 1, 3);
    grid->setColumnStretch(0, 1);
    grid->setColumnStretch(2, 1);
    refusal_->setWordWrap(true);
    refusal_->setTextFormat(Qt::PlainText);
    refusal_->setTextInteractionFlags(Qt::TextSelectableByMouse);
    equivalent_->setForegroundRole(QPalette::PlaceholderText);
    equivalent_->setSizePolicy(QSizePolicy::Ignored, QSizePolicy::Preferred); // never widens the form
    refusal_->hide();
    connect(field_, &QuantityField::remarks_changed, this, &Entry::show_remarks);
}

void Entry::fill_units() {
    units_ = new QToolButton(this);
    units_->setArrowType(Qt::DownArrow);
    units_->setAutoRaise(true);
    units_->setFocusPolicy(Qt::ClickFocus); // by keyboard: Alt+Down in the field
    auto* menu = new QMenu(units_);
    for (const units::Unit& unit : units::units_of(field_->kind().dimension)) {
        menu->addAction(QString::fromStdString(unit.symbol), field_,
                        [this, unit] { field_->choose_unit(unit); });
    }
    // Not setMenu(): styles would draw a second arrow.
    connect(units_, &QToolButton::clicked, menu,
            [this, menu] { menu->popup(units_->mapToGlobal(units_->rect().bottomLeft())); });
    auto* open = new QShortcut(QKeySequence(Qt::ALT | Qt::Key_Down), field_, nullptr, nullptr,
                               Qt::WidgetWithChildrenShortcut);
    connect(open, &QShortcut::activated, units_, &QToolButton::click);
}

void Entry::describe(const QString& name, const QString& tooltip) {
    field_->setAccessibleName(name);
    field_->setAccessibleDescription(tooltip);
    field_->setToolTip(tooltip);
    if (units_ != nullptr) {
        units_->setAccessibleName(tr("Unit of %1").arg(name));
        units_->setToolTip(tr("Show this value in another unit (Alt+Down)"));
    }
}

void Entry::show_remarks() {
    equivalent_->setText(field_->equivalent());
    equivalent_->setToolTip(field_->equivalent());
    refusal_->setText(field_->refusal());
    refusal_->setVisible(!field_->refusal().isEmpty());
}

} // namespace loopwright::inputs
