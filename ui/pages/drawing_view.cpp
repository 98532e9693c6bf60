#include "pages/drawing_view.hpp"

#include "models/model_words.hpp"
#include "models/quantity_words.hpp"
#include "settings/measures.hpp"

#include <QPainter>

namespace loopwright::pages {

namespace {
/// What takes less is not worth a sign that it is under way.
constexpr QSize usual_size{480, 480};
constexpr QSize least_size{220, 220};
} // namespace

DrawingView::DrawingView(const Context& context, QWidget* parent) : QWidget(parent), context_(context) {
    setAccessibleName(tr("Drawing of the loop"));
    setBackgroundRole(QPalette::Base);
    setAutoFillBackground(true);
    connect(&context_.document, &session::Document::design_changed, this, &DrawingView::refresh);
    connect(&context_.settings, &settings::Settings::unit_system_changed, this, &DrawingView::refresh);
    connect(&context_.settings, &settings::Settings::current_drawn_changed, this,
            &DrawingView::refresh_current);
    connect(&context_.point, &jobs::PointJob::finished, this, &DrawingView::refresh_current);
    connect(&context_.point, &jobs::PointJob::started, this, [this] {
        if (!patience_.isActive()) {
            patience_.start();
        }
    });
    patience_.setSingleShot(true);
    patience_.setInterval(patience_ms);
    connect(&patience_, &QTimer::timeout, this, &DrawingView::refresh_current);
    refresh();
}

void DrawingView::refresh() {
    drawing_.emplace(context_.document.design(), context_.settings.unit_system());
    refresh_current();
}

/// The last current stays while a new one is computed, greyed once that has lasted a moment.
void DrawingView::refresh_current() {
    const auto result = context_.point.result();
    std::optional<drawings::CurrentOverlay> overlay;
    if (context_.settings.current_drawn() && result && result->current.size() > 1) {
        const loop::OperatingPoint& point = result->point;
        overlay.emplace(result->current,
                        QStringLiteral("%1, %2, %3")
                            .arg(models::short_text(point.frequency.value(), units::Dimension::frequency),
                                 models::short_text(point.power.value(), units::Dimension::power),
                                 models::model_name(point.model)));
        overlay->set_stale(context_.point.stale() && !patience_.isActive());
    }
    drawing_->set_current(std::move(overlay));
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
