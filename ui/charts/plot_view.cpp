#include "charts/plot_view.hpp"

#include "charts/plot.hpp"

#include <QFocusEvent>
#include <QKeyEvent>
#include <QMouseEvent>
#include <QPainter>
#include <QRubberBand>
#include <QWheelEvent>

#include <cmath>
#include <cstdlib>

namespace loopwright::charts {

namespace {
constexpr int least_drag_px = 8;
constexpr double small_step = 1.0 / 400.0, large_step = 1.0 / 40.0, zoom_factor = 0.6;
} // namespace

PlotView::PlotView(ChartGroup& group, QWidget* parent)
    : QChartView(parent), group_(group), plot_(new Plot),
      rubber_band_(new QRubberBand(QRubberBand::Rectangle, this)) {
    setChart(plot_);
    setRenderHint(QPainter::Antialiasing);
    setFrameShape(QFrame::NoFrame);
    setMouseTracking(true);
    setFocusPolicy(Qt::StrongFocus);
    setHorizontalScrollBarPolicy(Qt::ScrollBarAlwaysOff);
    setVerticalScrollBarPolicy(Qt::ScrollBarAlwaysOff);
}

PlotView::~PlotView() = default;

double PlotView::frequency_at(const QPointF& position) const {
    return plot_->geometry().frequency_at_px(plot_->mapFromScene(mapToScene(position.toPoint())).x());
}

void PlotView::mousePressEvent(QMouseEvent* event) {
    if (event->button() == Qt::LeftButton) {
        pressed_ = event->position().toPoint();
    }
    event->accept();
}

void PlotView::mouseMoveEvent(QMouseEvent* event) {
    group_.point_at(frequency_at(event->position()));
    if (pressed_) {
        const int width = std::abs(event->position().toPoint().x() - pressed_->x());
        if (width >= least_drag_px) {
            const QRect area = plot_->plotArea().toRect();
            const int x = event->position().toPoint().x();
            const QRect marked(QPoint(std::min(x, pressed_->x()), area.top()),
                               QPoint(std::max(x, pressed_->x()), area.bottom()));
            rubber_band_->setGeometry(marked.intersected(area));
        }
        rubber_band_->setVisible(width >= least_drag_px);
    }
    event->accept();
}

void PlotView::mouseReleaseEvent(QMouseEvent* event) {
    if (event->button() == Qt::LeftButton && pressed_) {
        const QPoint from = *std::exchange(pressed_, std::nullopt);
        rubber_band_->hide();
        const QPoint to = event->position().toPoint();
        if (std::abs(to.x() - from.x()) >= least_drag_px) {
            group_.set_range({std::min(frequency_at(from), frequency_at(to)),
                              std::max(frequency_at(from), frequency_at(to))});
        } else if (plot_->plotArea().adjusted(-2, -2, 2, 2).contains(event->position())) {
            group_.pick(frequency_at(to));
        }
    }
    event->accept();
}

void PlotView::mouseDoubleClickEvent(QMouseEvent* event) {
    pressed_.reset();
    Q_EMIT enlarge_wanted();
    event->accept();
}

void PlotView::leaveEvent(QEvent* event) {
    group_.point_away();
    QChartView::leaveEvent(event);
}

void PlotView::focusInEvent(QFocusEvent* event) {
    QChartView::focusInEvent(event);
    viewport()->update();
}

void PlotView::focusOutEvent(QFocusEvent* event) {
    QChartView::focusOutEvent(event);
    viewport()->update();
}

bool PlotView::key_moves(int key, bool fast) {
    const double step = fast ? large_step : small_step;
    switch (key) {
    case Qt::Key_Left:
        group_.step(-step);
        return true;
    case Qt::Key_Right:
        group_.step(step);
        return true;
    case Qt::Key_Home:
        group_.point_at(group_.range().low);
        return true;
    case Qt::Key_End:
        group_.point_at(group_.range().high);
        return true;
    default:
        return false;
    }
}

bool PlotView::key_zooms(int key) {
    switch (key) {
    case Qt::Key_Plus:
    case Qt::Key_Equal:
        group_.zoom(zoom_factor, group_.crosshair_Hz());
        return true;
    case Qt::Key_Minus:
        group_.zoom(1.0 / zoom_factor, group_.crosshair_Hz());
        return true;
    case Qt::Key_0:
        group_.reset_range();
        return true;
    default:
        return false;
    }
}

void PlotView::keyPressEvent(QKeyEvent* event) {
    const bool fast = event->modifiers().testFlag(Qt::ControlModifier);
    if (event->modifiers().testFlag(Qt::AltModifier)) {
        event->ignore();
        return;
    }
    if (event->key() == Qt::Key_Return || event->key() == Qt::Key_Enter || event->key() == Qt::Key_Space) {
        group_.pick(group_.crosshair_Hz());
    } else if (event->key() == Qt::Key_Escape && (pressed_ || group_.pointing())) {
        pressed_.reset();
        rubber_band_->hide();
        group_.point_away();
    } else if (!key_moves(event->key(), fast) && (fast || !key_zooms(event->key()))) {
        event->ignore();
        return;
    }
    event->accept();
}

void PlotView::wheelEvent(QWheelEvent* event) {
    event->ignore(); // the wheel scrolls the page
}

void PlotView::paintEvent(QPaintEvent* event) {
    QChartView::paintEvent(event);
    if (hasFocus()) {
        QPainter painter(viewport());
        painter.setPen(QPen(palette().color(QPalette::Highlight), 2.0));
        painter.drawRect(viewport()->rect().adjusted(1, 1, -1, -1));
    }
}

} // namespace loopwright::charts
