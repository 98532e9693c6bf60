#pragma once
// What the scale shows for a capacitance that the loop needs, by the law of the dial. docs/theory/
// retune-card.md, (RC6) and (RC7).
#include "capacitor/capacitor.hpp"
#include "tuning/dial_law.hpp"
#include "units/quantities.hpp"

#include <optional>

namespace loopwright::tuning {

/// A setting of the dial with its interval.
struct Reading {
    double reading = 0;
    units::Interval<double> range{}; ///< the ends may lie beyond the stops
    double per_Hz = 0;               ///< change of the reading with frequency, with its sign
    bool within_stops = false;       ///< reading lies between the stops, ends included
    /// Half of the interval, the wider side.
    [[nodiscard]] double uncertainty() const {
        const double below = reading - range.low, above = range.high - reading;
        return below > above ? below : above;
    }
};

/// What the loop needs across its ends, stray included, at a frequency.
struct Needed {
    units::Capacitance whole{};
    units::Interval<units::Capacitance> range{}; ///< of whole
    units::Frequency frequency{};
    double farads_per_Hz = 0; ///< change of whole with frequency, below 0
};

/// The reading for that, through the fixed capacitors of the network. Nothing where no setting of the
/// variable capacitor, between the stops or beyond, gives it.
[[nodiscard]] std::optional<Reading> reading_for(const DialCurve& curve, const capacitor::Capacitor& network,
                                                 const Needed& needed);

} // namespace loopwright::tuning
