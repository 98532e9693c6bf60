#include "inputs/fold.hpp"

#include "inputs/elided_label.hpp"

#include <QGridLayout>
#include <QLabel>
#include <QToolButton>

namespace loopwright::inputs {

Fold::Fold(const QString& title, QWidget* content, QWidget* parent)
    : QWidget(parent), header_(new QToolButton(this)), summary_(new ElidedLabel(this)), content_(content) {
    auto* grid = new QGridLayout(this);
    grid->setContentsMargins(0, 0, 0, 0);
    grid->setVerticalSpacing(2);
    grid->addWidget(header_, 0, 0);
    grid->addWidget(summary_, 0, 1);
    grid->addWidget(content_, 1, 0, 1, 2);
    grid->setColumnStretch(1, 1);
    header_->setText(title);
    header_->setAccessibleName(title);
    header_->setToolTip(tr("Show or fold this group (Space)"));
    header_->setAutoRaise(true);
    header_->setFocusPolicy(Qt::StrongFocus);
    header_->setToolButtonStyle(Qt::ToolButtonTextBesideIcon);
    summary_->setForegroundRole(QPalette::PlaceholderText);
    connect(header_, &QToolButton::clicked, this, [this] { set_unfolded(!unfolded_); });
    show_state(false);
}

void Fold::set_unfolded(bool unfolded) {
    if (unfolded != unfolded_) {
        show_state(unfolded);
        Q_EMIT toggled(unfolded);
    }
}

void Fold::set_summary(const QString& summary) {
    summary_->setText(summary);
    summary_->setToolTip(summary);
}

void Fold::set_strong(bool strong) {
    QFont font = header_->font();
    font.setBold(strong);
    header_->setFont(font);
}

void Fold::show_state(bool unfolded) {
    unfolded_ = unfolded;
    header_->setArrowType(unfolded ? Qt::DownArrow : Qt::RightArrow);
    content_->setVisible(unfolded);
    summary_->setVisible(!unfolded);
    header_->setAccessibleDescription(unfolded ? tr("shown") : tr("folded"));
}

} // namespace loopwright::inputs
