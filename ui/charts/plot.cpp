#include "charts/plot.hpp"

#include "charts/strokes.hpp"

#include <QCategoryAxis>
#include <QFontMetricsF>
#include <QGraphicsLayout>
#include <QGraphicsLineItem>
#include <QLegend>
#include <QLineSeries>

#include <algorithm>
#include <cmath>

namespace loopwright::charts {

namespace {

// Qt Charts has its grid at 2 and its axes at 3, its curves above.
constexpr double backdrop_z = 1.0, foreground_z = 60.0, crosshair_z = 70.0;
constexpr double mega = 1e6;
constexpr int most_ticks = 11;
constexpr int side_px = 14; ///< half of the last frequency's label stands beyond the plot
constexpr double tick_room_x_px = 38.0, tick_room_y_px = 22.0;

QCategoryAxis* new_axis(QChart& chart, Qt::Alignment side) {
    auto* axis = new QCategoryAxis;
    axis->setLabelsPosition(QCategoryAxis::AxisLabelsPositionOnValue);
    chart.addAxis(axis, side);
    return axis;
}

int room_for_ticks(double length_px, double each_px) {
    return std::clamp(static_cast<int>(length_px / each_px), 2, most_ticks);
}

/// Ticks given in what is printed, at their positions: log10 of the value in the unit that positions count
/// in.
std::vector<Tick> at_log_positions(std::vector<Tick> ticks, double unit = 1.0) {
    for (Tick& tick : ticks) {
        tick.value = std::log10(tick.value * unit);
    }
    return ticks;
}

} // namespace

Plot::Plot()
    : frequency_axis_(new_axis(*this, Qt::AlignBottom)), value_axis_(new_axis(*this, Qt::AlignLeft)),
      backdrop_(new Backdrop(this, state_)), foreground_(new Foreground(this, state_)),
      crosshair_line_(new QGraphicsLineItem(this)) {
    state_.content = &content_;
    state_.look = &look_;
    legend()->hide();
    setAnimationOptions(QChart::NoAnimation);
    setBackgroundRoundness(0);
    layout()->setContentsMargins(0, 0, 0, 0);
    backdrop_->setZValue(backdrop_z);
    foreground_->setZValue(foreground_z);
    crosshair_line_->setZValue(crosshair_z);
    crosshair_line_->hide();
    connect(this, &QChart::plotAreaChanged, this, [this] {
        rescale();
        renew_layers();
    });
    set_appearance(paper_appearance());
}

Plot::~Plot() = default;

PlotGeometry Plot::geometry() const {
    return {plotArea(), {std::log10(hertz_.low), std::log10(hertz_.high)}, values_};
}

QList<QLineSeries*> Plot::curves_drawn() const {
    return series_.mid(0, static_cast<qsizetype>(content_.curves.size()));
}

void Plot::set_appearance(const Appearance& look) {
    if (look == look_) {
        return;
    }
    look_ = look;
    apply_look();
    apply_pens();
    renew_layers();
}

void Plot::apply_look() {
    setBackgroundBrush(look_.paper);
    setBackgroundPen(Qt::NoPen);
    setPlotAreaBackgroundVisible(false);
    // Above the plot: the title and, below it, the names of the bands.
    const int line = static_cast<int>(std::ceil(QFontMetricsF(look_.font).height()));
    setMargins(QMargins(2, 2 * line + 4, side_px, 2));
    for (QCategoryAxis* axis : {frequency_axis_, value_axis_, second_axis_}) {
        if (axis == nullptr) {
            continue;
        }
        axis->setLabelsFont(look_.font);
        axis->setLabelsBrush(look_.ink);
        axis->setTitleFont(look_.font);
        axis->setTitleBrush(look_.ink);
        axis->setLinePen(QPen(look_.quiet_ink, 1.0));
        axis->setGridLinePen(QPen(look_.grid, 1.0));
    }
    crosshair_line_->setPen(QPen(look_.ink, 1.0, Qt::DashLine));
}

void Plot::add_series() {
    auto* series = new QLineSeries;
    addSeries(series);
    series->attachAxis(frequency_axis_);
    series->attachAxis(value_axis_);
    series_.append(series);
}

void Plot::apply_pens() {
    for (qsizetype i = 0; i < series_.size(); ++i) {
        const bool used = static_cast<std::size_t>(i) < content_.curves.size();
        if (series_[i]->isVisible() != used) {
            series_[i]->setVisible(used);
        }
        if (!used) {
            continue;
        }
        const models::Curve& curve = content_.curves[static_cast<std::size_t>(i)];
        if (const QPen pen = pen_of(curve, look_); series_[i]->pen() != pen) {
            series_[i]->setPen(pen);
        }
        series_[i]->setName(curve.name);
    }
}

void Plot::set_content(const models::ChartContent& content) {
    content_ = content;
    value_axis_->setTitleText(content_.scale.title);
    if (content_.second && second_axis_ == nullptr) {
        second_axis_ = new_axis(*this, Qt::AlignRight);
        second_axis_->setGridLineVisible(false);
        apply_look();
    }
    if (second_axis_ != nullptr) {
        second_axis_->setTitleText(content_.second ? content_.second->title : QString());
    }
    state_.positions.clear();
    for (std::size_t i = 0; i < content_.curves.size(); ++i) {
        if (static_cast<qsizetype>(i) == series_.size()) {
            add_series();
        }
        state_.positions.append(positions(content_, content_.curves[i]));
        series_[static_cast<qsizetype>(i)]->replace(state_.positions.last());
    }
    apply_pens();
    hertz_ = clamped_span(hertz_, {content_.from_Hz, content_.to_Hz});
    rescale();
    renew_layers();
}

void Plot::set_range(Span hertz) {
    const Span span = clamped_span(hertz, {content_.from_Hz, content_.to_Hz});
    if (span == hertz_) {
        return;
    }
    hertz_ = span;
    rescale();
    renew_layers();
}

std::vector<Tick> Plot::value_ticks(Span span) const {
    const int most = room_for_ticks(plotArea().height(), tick_room_y_px);
    if (!content_.scale.logarithmic) {
        return linear_ticks(span, most);
    }
    auto ticks = logarithmic_ticks({std::pow(10.0, span.low), std::pow(10.0, span.high)}, most);
    return at_log_positions(std::move(ticks));
}

/// Deep in a zoom few computed points are left: then the axis says so, since the lines between look the same.
QString Plot::frequency_title() const {
    constexpr qsizetype few = 24;
    qsizetype seen = content_.curves.empty() ? few : 0;
    if (!content_.curves.empty()) {
        const QList<QPointF>& points = content_.curves.front().points;
        seen = std::count_if(points.begin(), points.end(), [this](const QPointF& point) {
            return point.x() >= hertz_.low && point.x() <= hertz_.high;
        });
    }
    return seen < few ? tr("Frequency, MHz (computed points: %1, straight lines between)").arg(seen)
                      : tr("Frequency, MHz");
}

/// Sets ranges and ticks, each only where it really changes: a changed range costs a layout.
void Plot::rescale() {
    if (const QString title = frequency_title(); frequency_axis_->titleText() != title) {
        frequency_axis_->setTitleText(title);
    }
    const Span x{std::log10(hertz_.low), std::log10(hertz_.high)};
    const int most = room_for_ticks(plotArea().width(), tick_room_x_px);
    set_ticks(*frequency_axis_, x,
              at_log_positions(logarithmic_ticks({hertz_.low / mega, hertz_.high / mega}, most), mega));
    values_ = value_span(content_, hertz_, values_);
    set_ticks(*value_axis_, values_, value_ticks(values_));
    if (second_axis_ != nullptr && content_.second) {
        const double zero = position_on_scale(content_.scale, content_.second->zero_at_si);
        const double slope = content_.second->per_decade;
        const Span second{(values_.low - zero) * slope, (values_.high - zero) * slope};
        set_ticks(*second_axis_, second,
                  linear_ticks(second, room_for_ticks(plotArea().height(), tick_room_y_px)));
    }
}

void Plot::set_ticks(QCategoryAxis& axis, Span span, const std::vector<Tick>& ticks) {
    QStringList texts;
    for (const Tick& tick : ticks) {
        texts << tick.text;
    }
    if (axis.min() == span.low && axis.max() == span.high && axis.categoriesLabels() == texts) {
        return;
    }
    for (const QString& text : axis.categoriesLabels()) {
        axis.remove(text);
    }
    axis.setStartValue(span.low - 1.0);
    for (const Tick& tick : ticks) {
        axis.append(tick.text, tick.value);
    }
    axis.setRange(span.low, span.high);
}

void Plot::renew_layers() {
    state_.geometry = geometry();
    state_.paper = rect();
    backdrop_->renew();
    foreground_->renew();
    place_crosshair();
}

void Plot::set_focus(double hertz, const QString& band) {
    if (state_.focus_Hz == hertz && state_.focus_band == band) {
        return;
    }
    state_.focus_Hz = hertz;
    state_.focus_band = band;
    renew_layers();
}

void Plot::set_crosshair(std::optional<double> hertz) {
    crosshair_ = hertz;
    place_crosshair();
}

void Plot::place_crosshair() {
    const bool inside = crosshair_ && *crosshair_ >= hertz_.low && *crosshair_ <= hertz_.high;
    crosshair_line_->setVisible(inside);
    if (inside) {
        const double x = geometry().px_of_frequency(*crosshair_);
        crosshair_line_->setLine(x, plotArea().top(), x, plotArea().bottom());
    }
}

} // namespace loopwright::charts
