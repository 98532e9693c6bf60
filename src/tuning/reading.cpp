#include "tuning/reading.hpp"

#include <algorithm>
#include <cmath>

namespace loopwright::tuning {
namespace {

/// Of a whole capacitance, continued beyond the stops.
std::optional<double> continued(const DialCurve& curve, const capacitor::Capacitor& network,
                                units::Capacitance whole) {
    const auto variable = network.variable_for(whole);
    return variable ? std::optional(curve.continued_reading(*variable)) : std::nullopt;
}

} // namespace

std::optional<Reading> reading_for(const DialCurve& curve, const capacitor::Capacitor& network,
                                   const Needed& needed) {
    const auto at = continued(curve, network, needed.whole);
    if (!at) {
        return std::nullopt;
    }
    Reading reading;
    reading.reading = *at;
    // Where an end of the interval is beyond what the fixed capacitors leave, the other side stands for it.
    const auto low = continued(curve, network, needed.range.low);
    const auto high = continued(curve, network, needed.range.high);
    const double below = low.value_or(2 * *at - high.value_or(*at));
    const double above = high.value_or(2 * *at - below);
    reading.range = {std::min({below, above, *at}), std::max({below, above, *at})};
    const double step_Hz = 1e-6 * needed.frequency.value();
    const units::Capacitance step = units::farads(std::abs(needed.farads_per_Hz) * step_Hz);
    const auto lower = continued(curve, network, needed.whole - step);
    const auto upper = continued(curve, network, needed.whole + step);
    if (lower && upper && needed.farads_per_Hz != 0) {
        reading.per_Hz = (*upper - *lower) / (2 * step_Hz) * (needed.farads_per_Hz < 0 ? -1 : 1);
    }
    const auto stops = curve.readings();
    const double forgiven = 1e-9 * (stops.high - stops.low);
    reading.within_stops = *at >= stops.low - forgiven && *at <= stops.high + forgiven;
    return reading;
}

} // namespace loopwright::tuning
