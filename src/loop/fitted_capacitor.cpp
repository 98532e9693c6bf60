#include "loop/fitted_capacitor.hpp"

#include "band/band.hpp"
#include "design/on_band.hpp"
#include "loop/design_parts.hpp"

#include <algorithm>

namespace loopwright::loop {
namespace {

bool any_plugged(const design::Capacitor& capacitor) {
    return std::any_of(capacitor.added.begin(), capacitor.added.end(),
                       [](const design::AddedCapacitor& each) { return !each.bands.empty(); });
}

} // namespace

std::string fitted_band(const design::Station& station, units::Frequency frequency) {
    return band::bands_of(station.region)[band::nearest_band(station.region, frequency)].name;
}

design::Capacitor fitted(const design::Design& design, units::Frequency frequency) {
    return any_plugged(design.capacitor)
               ? design::on_band(design.capacitor, fitted_band(design.station, frequency))
               : design.capacitor;
}

capacitor::Capacitor capacitor_at(const design::Design& design, units::Frequency frequency) {
    return capacitor_of(fitted(design, frequency));
}

capacitor::Network network_at(const design::Design& design, units::Frequency frequency) {
    if (!any_plugged(design.capacitor)) {
        return network_of(design.capacitor, design.site);
    }
    return network_of(design.capacitor, design.site, fitted_band(design.station, frequency));
}

units::Interval<units::Capacitance> capacitor_range_at(const design::Design& design,
                                                       units::Frequency frequency) {
    return capacitor_at(design, frequency).range();
}

FittedCapacitors::FittedCapacitors(const design::Design& design) : region_(design.station.region) {
    if (!any_plugged(design.capacitor)) {
        all_.push_back(capacitor_of(design.capacitor));
        return;
    }
    std::vector<std::vector<design::AddedCapacitor>> combinations;
    for (const band::Band& band : band::bands_of(region_)) {
        const design::Capacitor there = design::on_band(design.capacitor, band.name);
        const auto known = std::find(combinations.begin(), combinations.end(), there.added);
        of_band_.push_back(static_cast<std::size_t>(known - combinations.begin()));
        if (known == combinations.end()) {
            combinations.push_back(there.added);
            all_.push_back(capacitor_of(there));
        }
    }
}

std::size_t FittedCapacitors::index_at(units::Frequency frequency) const {
    return of_band_.empty() ? 0 : of_band_[band::nearest_band(region_, frequency)];
}

} // namespace loopwright::loop
