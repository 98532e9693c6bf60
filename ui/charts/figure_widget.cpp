#include "charts/figure_widget.hpp"

#include <QClipboard>
#include <QContextMenuEvent>
#include <QGuiApplication>
#include <QKeyEvent>
#include <QMenu>
#include <QMimeData>
#include <QMouseEvent>
#include <QPainter>
#include <QToolButton>
#include <QToolTip>

#include <algorithm>
#include <cmath>

namespace loopwright::charts {

namespace {
constexpr double older_opacity = 0.45, reach_px = 24.0, ring_px = 6.0;
constexpr QSize least_figure_size{240, 220};
constexpr int figure_dpi = 200, height_px = 300, large_figure_step = 10;
constexpr double copied_height_mm = 100.0;
} // namespace

FigureWidget::FigureWidget(QWidget* parent)
    : QWidget(parent), button_(new QToolButton(this)), menu_(new QMenu(this)) {
    setMinimumSize(least_figure_size);
    setFocusPolicy(Qt::StrongFocus);
    setMouseTracking(true);
    menu_->addAction(tr("&Copy picture"), this, &FigureWidget::copy);
    menu_->addAction(tr("E&xport picture…"), this, &FigureWidget::export_wanted);
    table_ = menu_->addAction(tr("Export &table as CSV…"), this, &FigureWidget::table_wanted);
    table_->setVisible(false);
    button_->setText(QStringLiteral("\u22EE"));
    button_->setAutoRaise(true);
    button_->setToolTip(tr("Copy, export"));
    button_->setAccessibleName(tr("Menu of the chart"));
    button_->setEnabled(false);
    connect(button_, &QToolButton::clicked, menu_,
            [this] { menu_->popup(button_->mapToGlobal(QPoint(0, button_->height()))); });
    look_ = screen_appearance(palette(), font());
}

FigureWidget::~FigureWidget() = default;

QSize FigureWidget::sizeHint() const {
    const double shape = figure_ ? figure_->shape() : 1.0;
    return {static_cast<int>(height_px * shape), height_px};
}

void FigureWidget::set_figure(std::shared_ptr<const Figure> figure) {
    figure_ = std::move(figure);
    pointed_ = -1;
    button_->setEnabled(figure_ != nullptr);
    setAccessibleName(figure_ ? tr("Chart: %1").arg(figure_->title()) : QString());
    setAccessibleDescription(figure_ ? figure_->description() + QLatin1Char(' ') +
                                           tr("Arrow keys walk along the curve and show its numbers.")
                                     : QString());
    button_->setAccessibleName(figure_ ? tr("Menu of the chart: %1").arg(figure_->title()) : QString());
    updateGeometry();
    update();
}

void FigureWidget::set_enlargeable() {
    if (enlarge_ == nullptr) {
        enlarge_ = new QAction(tr("&Enlarge"), menu_);
        menu_->insertAction(menu_->actions().value(0), enlarge_);
        connect(enlarge_, &QAction::triggered, this, &FigureWidget::enlarge_toggled);
        button_->setToolTip(tr("Enlarge, copy, export"));
    }
}

void FigureWidget::set_enlarged(bool enlarged) {
    if (enlarge_ != nullptr) {
        enlarge_->setText(enlarged ? tr("&Back to all charts") : tr("&Enlarge"));
    }
}

void FigureWidget::set_table(bool offered) {
    table_->setVisible(offered);
}

void FigureWidget::mouseDoubleClickEvent(QMouseEvent* event) {
    if (enlarge_ != nullptr) {
        Q_EMIT enlarge_toggled();
    }
    event->accept();
}

void FigureWidget::set_stale(bool stale) {
    if (stale != stale_) {
        stale_ = stale;
        update();
    }
}

void FigureWidget::copy() {
    if (figure_) {
        auto* picture = new QMimeData;
        const PictureSize size{{copied_height_mm * figure_->shape(), copied_height_mm}, figure_dpi};
        picture->setImageData(picture_image(*figure_, {}, size));
        QGuiApplication::clipboard()->setMimeData(picture);
    }
}

void FigureWidget::changeEvent(QEvent* event) {
    QWidget::changeEvent(event);
    if (event->type() == QEvent::PaletteChange || event->type() == QEvent::FontChange ||
        event->type() == QEvent::StyleChange) {
        look_ = screen_appearance(palette(), font());
        update();
    }
}

void FigureWidget::paintEvent(QPaintEvent* /*event*/) {
    QPainter painter(this);
    painter.setRenderHint(QPainter::Antialiasing);
    painter.fillRect(rect(), look_.paper);
    if (figure_) {
        painter.setOpacity(stale_ ? older_opacity : 1.0);
        words_ = figure_->paint(painter, QRectF(rect()), look_);
        painter.setOpacity(1.0);
        if (pointed_ >= 0) {
            painter.setPen(QPen(look_.ink, 1.5));
            painter.setBrush(Qt::NoBrush);
            painter.drawEllipse(figure_->points(QRectF(rect()), look_).at(pointed_), ring_px, ring_px);
        }
    }
    if (hasFocus()) {
        painter.setRenderHint(QPainter::Antialiasing, false);
        painter.setBrush(Qt::NoBrush);
        painter.setPen(QPen(palette().color(QPalette::Highlight), 2.0));
        painter.drawRect(rect().adjusted(1, 1, -1, -1));
    }
}

void FigureWidget::resizeEvent(QResizeEvent* event) {
    QWidget::resizeEvent(event);
    const QSize size = button_->sizeHint();
    button_->setGeometry(width() - size.width() - 1, 1, size.width(), size.height());
}

void FigureWidget::contextMenuEvent(QContextMenuEvent* event) {
    if (figure_) {
        menu_->popup(event->globalPos());
    }
}

void FigureWidget::point_to(qsizetype point) {
    if (point == pointed_) {
        return;
    }
    pointed_ = point;
    update();
    if (point < 0) {
        QToolTip::hideText();
        return;
    }
    const QPointF at = figure_->points(QRectF(rect()), look_).at(point);
    QToolTip::showText(mapToGlobal(at.toPoint() + QPoint(8, 8)), figure_->point_text(point), this);
}

void FigureWidget::keyPressEvent(QKeyEvent* event) {
    const qsizetype count = figure_ ? figure_->points(QRectF(rect()), look_).size() : 0;
    const int step = event->modifiers().testFlag(Qt::ControlModifier) ? large_figure_step : 1;
    const bool plain = !event->modifiers().testFlag(Qt::AltModifier);
    qsizetype next = -1;
    if (plain && count > 0 && event->key() == Qt::Key_Right) {
        next = std::min(pointed_ + step, count - 1);
    } else if (plain && count > 0 && event->key() == Qt::Key_Left) {
        next = std::max<qsizetype>(pointed_ - step, 0);
    } else if (plain && count > 0 && event->key() == Qt::Key_Home) {
        next = 0;
    } else if (plain && count > 0 && event->key() == Qt::Key_End) {
        next = count - 1;
    } else if (event->key() != Qt::Key_Escape || pointed_ < 0) {
        QWidget::keyPressEvent(event);
        return;
    }
    point_to(next);
    event->accept();
}

void FigureWidget::mouseMoveEvent(QMouseEvent* event) {
    if (figure_) {
        const QList<QPointF> points = figure_->points(QRectF(rect()), look_);
        qsizetype nearest = -1;
        double least = reach_px;
        for (qsizetype i = 0; i < points.size(); ++i) {
            const QPointF away = points[i] - event->position();
            if (const double distance = std::hypot(away.x(), away.y()); distance < least) {
                least = distance;
                nearest = i;
            }
        }
        point_to(nearest);
    }
    event->accept();
}

void FigureWidget::leaveEvent(QEvent* event) {
    point_to(-1);
    QWidget::leaveEvent(event);
}

} // namespace loopwright::charts
