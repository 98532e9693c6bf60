#include "charts/chart_group.hpp"

#include <algorithm>
#include <cmath>

namespace loopwright::charts {

void ChartGroup::set_whole(Span hertz) {
    if (hertz == whole_) {
        return;
    }
    const bool was_zoomed = zoomed();
    whole_ = hertz;
    range_ = was_zoomed ? clamped_span(range_, whole_) : whole_;
    Q_EMIT range_changed();
}

void ChartGroup::set_range(Span hertz) {
    const Span span = clamped_span(hertz, whole_);
    if (!(span == range_)) {
        range_ = span;
        Q_EMIT range_changed();
    }
}

void ChartGroup::zoom(double factor, double around_Hz) {
    const double low = std::pow(range_.low / around_Hz, factor);
    const double high = std::pow(range_.high / around_Hz, factor);
    set_range({around_Hz * low, around_Hz * high});
}

void ChartGroup::point_at(double hertz) {
    const double inside = std::clamp(hertz, range_.low, range_.high);
    if (pointer_Hz_ != inside) {
        pointer_Hz_ = inside;
        Q_EMIT crosshair_moved();
    }
}

void ChartGroup::point_away() {
    if (pointer_Hz_) {
        pointer_Hz_.reset();
        Q_EMIT crosshair_moved();
    }
}

void ChartGroup::step(double share) {
    point_at(crosshair_Hz() * std::pow(range_.high / range_.low, share));
}

void ChartGroup::set_focus(double hertz, const QString& band) {
    if (hertz == focus_Hz_ && band == focus_band_) {
        return;
    }
    focus_Hz_ = hertz;
    focus_band_ = band;
    Q_EMIT focus_changed();
    if (!pointer_Hz_) {
        Q_EMIT crosshair_moved();
    }
}

void ChartGroup::pick(double hertz) {
    Q_EMIT picked(hertz);
}

} // namespace loopwright::charts
