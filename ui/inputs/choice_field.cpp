#include "inputs/choice_field.hpp"

#include <QWheelEvent>

namespace loopwright::inputs {

ChoiceField::ChoiceField(QWidget* parent) : QComboBox(parent) {
    setFocusPolicy(Qt::StrongFocus);
    setSizeAdjustPolicy(AdjustToMinimumContentsLengthWithIcon);
    setMinimumContentsLength(10);
    connect(this, &QComboBox::activated, this, [this](int index) {
        if (index != shown_) {
            shown_ = index;
            Q_EMIT chosen(index);
        }
    });
}

void ChoiceField::show_choice(int index) {
    shown_ = index;
    setCurrentIndex(index);
}

void ChoiceField::wheelEvent(QWheelEvent* event) {
    if (hasFocus()) {
        QComboBox::wheelEvent(event);
    } else {
        event->ignore();
    }
}

} // namespace loopwright::inputs
