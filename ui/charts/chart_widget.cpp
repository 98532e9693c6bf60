#include "charts/chart_widget.hpp"

#include "charts/chart_picture.hpp"
#include "charts/plot.hpp"
#include "charts/plot_view.hpp"

#include <QAction>
#include <QClipboard>
#include <QContextMenuEvent>
#include <QGuiApplication>
#include <QMenu>
#include <QMimeData>
#include <QToolButton>
#include <QVBoxLayout>

#include <utility>

namespace loopwright::charts {

namespace {
constexpr double stale_opacity = 0.45;
constexpr QSize least_size{260, 170};
constexpr QSizeF copied_mm{160.0, 100.0};
constexpr int copied_dpi = 200;
} // namespace

ChartWidget::ChartWidget(ChartGroup& group, QWidget* parent)
    : QWidget(parent), group_(group), view_(new PlotView(group, this)), button_(new QToolButton(this)),
      menu_(new QMenu(this)), content_(std::make_shared<models::ChartContent>()) {
    auto* column = new QVBoxLayout(this);
    column->setContentsMargins(0, 0, 0, 0);
    column->addWidget(view_);
    setFocusProxy(view_);
    setMinimumSize(least_size);
    build_menu();
    connect(view_, &PlotView::enlarge_wanted, this, &ChartWidget::enlarge_toggled);
    connect(&group_, &ChartGroup::range_changed, this, &ChartWidget::follow_range);
    connect(&group_, &ChartGroup::crosshair_moved, this, [this] {
        plot().set_crosshair(group_.pointing() ? std::optional(group_.crosshair_Hz()) : std::nullopt);
    });
    connect(&group_, &ChartGroup::focus_changed, this,
            [this] { plot().set_focus(group_.focus_Hz(), group_.focus_band()); });
    plot().set_focus(group_.focus_Hz(), group_.focus_band());
    adopt_palette();
}

ChartWidget::~ChartWidget() = default;

Plot& ChartWidget::plot() {
    return view_->plot();
}

QWidget& ChartWidget::view() {
    return *view_;
}

const models::ChartContent& ChartWidget::content() const {
    return *content_;
}

void ChartWidget::build_menu() {
    enlarge_ = menu_->addAction(tr("&Enlarge"), this, &ChartWidget::enlarge_toggled);
    menu_->addAction(tr("Show the &whole range"), this, [this] { group_.reset_range(); });
    menu_->addSeparator();
    menu_->addAction(tr("&Copy picture"), this, &ChartWidget::copy);
    menu_->addAction(tr("E&xport picture…"), this, &ChartWidget::export_wanted);
    button_->setText(QStringLiteral("\u22EE"));
    button_->setAutoRaise(true);
    button_->setToolTip(tr("Enlarge, whole range, copy, export"));
    // Not setMenu(): its arrow would cover the symbol.
    connect(button_, &QToolButton::clicked, menu_,
            [this] { menu_->popup(button_->mapToGlobal(QPoint(0, button_->height()))); });
}

void ChartWidget::set_content(std::shared_ptr<const models::ChartContent> content) {
    content_ = std::move(content);
    dirty_ = true;
    if (isVisible()) {
        draw_content();
    }
    describe();
}

void ChartWidget::draw_content() {
    if (std::exchange(dirty_, false)) {
        plot().set_content(*content_);
        follow_range();
    }
}

void ChartWidget::follow_range() {
    plot().set_range(group_.range());
}

void ChartWidget::describe() {
    view_->setAccessibleName(tr("Chart: %1").arg(content_->title));
    view_->setAccessibleDescription(
        models::description(*content_) + QLatin1Char(' ') +
        tr("Arrow keys move the crosshair, Enter puts its frequency in focus, plus and minus zoom, 0 shows "
           "the "
           "whole range. The numbers at the crosshair stand in the table of read-outs."));
    button_->setAccessibleName(tr("Menu of the chart: %1").arg(content_->title));
}

void ChartWidget::set_enlarged(bool enlarged) {
    enlarge_->setText(enlarged ? tr("Back to &all charts") : tr("&Enlarge"));
}

void ChartWidget::set_stale(bool stale) {
    const double opacity = stale ? stale_opacity : 1.0;
    if (plot().opacity() != opacity) {
        plot().setOpacity(opacity);
    }
}

void ChartWidget::copy() {
    auto* picture = new QMimeData;
    picture->setImageData(picture_image(*content_, {}, {copied_mm, copied_dpi, group_.range()}));
    QGuiApplication::clipboard()->setMimeData(picture);
}

void ChartWidget::adopt_palette() {
    const Appearance look = screen_appearance(palette(), font());
    plot().set_appearance(look);
    view_->setBackgroundBrush(look.paper);
}

void ChartWidget::changeEvent(QEvent* event) {
    QWidget::changeEvent(event);
    if (event->type() == QEvent::PaletteChange || event->type() == QEvent::FontChange ||
        event->type() == QEvent::StyleChange) {
        adopt_palette();
    }
}

void ChartWidget::showEvent(QShowEvent* event) {
    QWidget::showEvent(event);
    draw_content();
}

void ChartWidget::resizeEvent(QResizeEvent* event) {
    QWidget::resizeEvent(event);
    const QSize size = button_->sizeHint();
    button_->setGeometry(width() - size.width() - 1, 1, size.width(), size.height());
    button_->raise();
}

void ChartWidget::contextMenuEvent(QContextMenuEvent* event) {
    menu_->popup(event->globalPos());
}

} // namespace loopwright::charts
