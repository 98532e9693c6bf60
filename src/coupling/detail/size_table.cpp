#include "coupling/detail/size_table.hpp"

#include "base/error.hpp"
#include "coupling/detail/coupling_wire.hpp"
#include "coupling/detail/series_feed.hpp"
#include "design/winding.hpp"
#include "geometry/winding.hpp"
#include "units/constants.hpp"
#include "units/text.hpp"

#include <oneapi/tbb/parallel_for.h>

#include <algorithm>
#include <atomic>
#include <cmath>

namespace loopwright::coupling::detail {

SizeRange diameters(const design::Design& design) {
    const double width = width_m(design.loop);
    const design::Coupling& coupling = *design.coupling;
    const SizeRange range{std::max(0.05 * width, 4 * coupling.conductor_diameter.value.value()),
                          std::min(0.5 * width, 0.89 * width - coupling.axis_offset.value.value())};
    if (!(range.low < range.high)) {
        throw base::InputError("coupling.conductor_diameter",
                               units::canonical(coupling.conductor_diameter.value),
                               "a wire and an offset that leave room for a coupling loop inside the loop");
    }
    return range;
}

FeedOfSize coupling_loops(const design::Design& design, const loop::FullWave& alone) {
    return [&](double diameter_m) {
        design::Coupling coupling = *design.coupling;
        coupling.diameter = units::metres(diameter_m);
        return std::make_unique<const CouplingWire>(design, coupling, alone);
    };
}

SizeRange tap_lengths(const design::Design& design) {
    constexpr double least_share = 0.02,
                     most_share = 0.4; // of the conductor; the second is the design's rule
    const double length_m = geometry::perimeter(design::as_winding(design.loop)).value();
    const SizeRange range{
        std::max(least_share * length_m, 2 * design.coupling->conductor_diameter.value.value()),
        most_share * length_m};
    if (!(range.low < range.high)) {
        throw base::InputError("coupling.conductor_diameter",
                               units::canonical(design.coupling->conductor_diameter.value),
                               "a rod that is thin against the loop");
    }
    return range;
}

FeedOfSize taps(const design::Design& design, const loop::FullWave& alone) {
    return [&](double length_m) {
        design::Coupling coupling = *design.coupling;
        coupling.tap_length = units::metres(length_m);
        return std::make_unique<const TapFeed>(design, coupling, alone);
    };
}

SizeTable::SizeTable(const SizeRange& range, const FeedOfSize& make, const MatchPlaces& places,
                     const base::StopToken& stop, const base::Progress& progress)
    : range_(range), places_(places) {
    for (std::size_t i = 0; i < nodes; ++i) {
        const double x = std::cos(units::constants::pi * (static_cast<double>(i) + 0.5) / nodes);
        size_.at(i) = 0.5 * (range_.low + range_.high) + 0.5 * (range_.high - range_.low) * x;
    }
    std::atomic<std::size_t> done{0};
    oneapi::tbb::parallel_for(std::size_t{0}, nodes, [&](std::size_t node) {
        solve_node(node, make, stop);
        if (progress && !stop.stop_requested()) {
            progress(0.8 * static_cast<double>(++done) / nodes);
        }
    });
    complete_ = !stop.stop_requested();
}

void SizeTable::solve_node(std::size_t node, const FeedOfSize& make, const base::StopToken& stop) {
    if (stop.stop_requested()) {
        return;
    }
    const auto fed = make(size_.at(node));
    for (std::size_t i = 0; i < places_.frequencies.size() && !stop.stop_requested(); ++i) {
        ports_.at(node).push_back(places_.own[i] ? fed->at(places_.frequencies[i]) : OpenTwoPort{});
    }
}

double SizeTable::reflected_power(double size, std::size_t i) const {
    OpenTwoPort port{};
    for (std::size_t n = 0; n < nodes; ++n) {
        double weight = 1;
        for (std::size_t k = 0; k < nodes; ++k) {
            if (k != n) {
                weight *= (size - size_.at(k)) / (size_.at(n) - size_.at(k));
            }
        }
        const OpenTwoPort& at = ports_.at(n).at(i);
        port.z11 += weight * at.z11;
        port.z12 += weight * at.z12;
        port.z22 += weight * at.z22;
    }
    const Tuner& tuner = places_.tuner;
    const double f = places_.frequencies[i].value();
    return tuner.reflected_power(port, tuner.best_F(port, f, *places_.own[i]), f);
}

} // namespace loopwright::coupling::detail
