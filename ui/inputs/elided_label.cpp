#include "inputs/elided_label.hpp"

#include <QStyle>
#include <QStylePainter>

namespace loopwright::inputs {

ElidedLabel::ElidedLabel(QWidget* parent) : QLabel(parent) {
    setTextFormat(Qt::PlainText);
    setSizePolicy(QSizePolicy::Ignored, QSizePolicy::Preferred);
}

void ElidedLabel::paintEvent(QPaintEvent* event) {
    const QRect room = contentsRect();
    if (fontMetrics().horizontalAdvance(text()) <= room.width()) {
        QLabel::paintEvent(event);
        return;
    }
    QStylePainter painter(this);
    painter.drawItemText(room, static_cast<int>(Qt::AlignLeft | Qt::AlignVCenter) | Qt::TextSingleLine,
                         palette(), isEnabled(),
                         fontMetrics().elidedText(text(), Qt::ElideRight, room.width()), foregroundRole());
}

} // namespace loopwright::inputs
