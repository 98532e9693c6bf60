#include "coupling/detail/size_table.hpp"

#include "base/error.hpp"
#include "loop/design_parts.hpp"
#include "units/constants.hpp"
#include "units/text.hpp"

#include <oneapi/tbb/parallel_for.h>

#include <algorithm>
#include <atomic>
#include <cmath>

namespace loopwright::coupling::detail {

SizeTable::SizeTable(const design::Design& design, const std::vector<units::Frequency>& frequencies,
                     const std::vector<std::optional<loop::Resonance>>& own, units::Resistance line,
                     const base::StopToken& stop, const base::Progress& progress)
    : frequencies_(frequencies), own_(own), tuner_{loop::capacitor_of(design.capacitor), line.value()} {
    const double width = width_m(design.loop);
    const design::Coupling& coupling = *design.coupling;
    low_m_ = std::max(0.05 * width, 4 * coupling.conductor_diameter.value.value());
    high_m_ = std::min(0.5 * width, 0.89 * width - coupling.axis_offset.value.value());
    if (!(low_m_ < high_m_)) {
        throw base::InputError("coupling.conductor_diameter",
                               units::canonical(coupling.conductor_diameter.value),
                               "a wire and an offset that leave room for a coupling loop inside the loop");
    }
    for (std::size_t i = 0; i < nodes; ++i) {
        const double x = std::cos(units::constants::pi * (static_cast<double>(i) + 0.5) / nodes);
        diameter_m_.at(i) = 0.5 * (low_m_ + high_m_) + 0.5 * (high_m_ - low_m_) * x;
    }
    const loop::FullWave alone(design);
    std::atomic<std::size_t> done{0};
    oneapi::tbb::parallel_for(std::size_t{0}, nodes, [&](std::size_t node) {
        solve_node(node, design, alone, stop);
        if (progress && !stop.stop_requested()) {
            progress(0.8 * static_cast<double>(++done) / nodes);
        }
    });
    complete_ = !stop.stop_requested();
}

void SizeTable::solve_node(std::size_t node, const design::Design& design, const loop::FullWave& alone,
                           const base::StopToken& stop) {
    if (stop.stop_requested()) {
        return;
    }
    design::Coupling coupling = *design.coupling;
    coupling.diameter = units::metres(diameter_m_.at(node));
    const CouplingWire fed(design, coupling, alone);
    for (std::size_t i = 0; i < frequencies_.size() && !stop.stop_requested(); ++i) {
        ports_.at(node).push_back(own_[i] ? fed.at(frequencies_[i]) : OpenTwoPort{});
    }
}

double SizeTable::reflected_power(double diameter_m, std::size_t i) const {
    OpenTwoPort port{};
    for (std::size_t n = 0; n < nodes; ++n) {
        double weight = 1;
        for (std::size_t k = 0; k < nodes; ++k) {
            if (k != n) {
                weight *= (diameter_m - diameter_m_.at(k)) / (diameter_m_.at(n) - diameter_m_.at(k));
            }
        }
        const OpenTwoPort& at = ports_.at(n).at(i);
        port.z11 += weight * at.z11;
        port.z12 += weight * at.z12;
        port.z22 += weight * at.z22;
    }
    const double f = frequencies_[i].value();
    return tuner_.reflected_power(port, tuner_.best_F(port, f, *own_[i]), f);
}

} // namespace loopwright::coupling::detail
