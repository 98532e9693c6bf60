#include "pages/settle.hpp"

#include <QTimer>
#include <QWidget>

namespace loopwright::pages {

void paint_when_settled(QWidget& widget) {
    if (!widget.updatesEnabled()) {
        return;
    }
    widget.setUpdatesEnabled(false);
    // Requests for a layout are posted, also those that one layout sends to the next: a timer comes after
    // all.
    QTimer::singleShot(0, &widget, [&widget] { widget.setUpdatesEnabled(true); });
}

} // namespace loopwright::pages
