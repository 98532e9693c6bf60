#pragma once
// The capacitor as it stands at a frequency: fixed capacitors that are plugged or switched in elsewhere left
// out.
#include "capacitor/capacitor.hpp"
#include "capacitor/network.hpp"
#include "design/design.hpp"

#include <cstddef>
#include <string>
#include <vector>

namespace loopwright::loop {

/// The band whose fixed capacitors are in at a frequency: the band of the station's region that holds it,
/// and between bands the nearest one by ratio (an operator who listens beside a band has not changed the
/// plug).
[[nodiscard]] std::string fitted_band(const design::Station& station, units::Frequency frequency);

/// The design's capacitor with only the fixed ones that are in there.
[[nodiscard]] design::Capacitor fitted(const design::Design& design, units::Frequency frequency);

/// Throws as capacitor_of().
[[nodiscard]] capacitor::Capacitor capacitor_at(const design::Design& design, units::Frequency frequency);
/// With ratings and the air of the site; members are counted as the design lists them. Throws as
/// capacitor_of().
[[nodiscard]] capacitor::Network network_at(const design::Design& design, units::Frequency frequency);
/// Of the whole, stray and what is fitted there included.
[[nodiscard]] units::Interval<units::Capacitance> capacitor_range_at(const design::Design& design,
                                                                     units::Frequency frequency);

/// Every combination that a design stands in, prepared once; immutable.
class FittedCapacitors {
public:
    /// Throws as capacitor_of().
    explicit FittedCapacitors(const design::Design& design);

    [[nodiscard]] std::size_t size() const { return all_.size(); }
    [[nodiscard]] const capacitor::Capacitor& operator[](std::size_t i) const { return all_[i]; }
    /// Which of them stands at a frequency, from 0. Cost: some 10 ns; nothing where there is only one.
    [[nodiscard]] std::size_t index_at(units::Frequency frequency) const;
    [[nodiscard]] const capacitor::Capacitor& at(units::Frequency frequency) const {
        return all_[index_at(frequency)];
    }

private:
    std::vector<capacitor::Capacitor> all_;
    std::vector<std::size_t> of_band_; ///< by the region's bands; empty where there is one combination
    int region_ = 1;
};

} // namespace loopwright::loop
