#include "pages/drawing_view.hpp"

#include <QPainter>

namespace loopwright::pages {

namespace {
constexpr int unit_px = 8;
constexpr QSize usual_size{480, 480};
constexpr QSize least_size{220, 220};
} // namespace

DrawingView::DrawingView(const Context& context, QWidget* parent) : QWidget(parent), context_(context) {
    setAccessibleName(tr("Drawing of the loop"));
    setBackgroundRole(QPalette::Base);
    setAutoFillBackground(true);
    connect(&context_.document, &session::Document::design_changed, this, &DrawingView::refresh);
    connect(&context_.settings, &settings::Settings::unit_system_changed, this, &DrawingView::refresh);
    refresh();
}

void DrawingView::refresh() {
    drawing_.emplace(context_.document.design(), context_.settings.unit_system());
    setAccessibleDescription(drawing_->description());
    setToolTip(drawing_->description());
    update();
}

QSize DrawingView::sizeHint() const {
    return usual_size;
}

QSize DrawingView::minimumSizeHint() const {
    return least_size;
}

void DrawingView::paintEvent(QPaintEvent* /*event*/) {
    QPainter painter(this);
    drawing_->paint(painter, QRectF(rect()).adjusted(unit_px, unit_px, -unit_px, -unit_px), palette());
}

} // namespace loopwright::pages
