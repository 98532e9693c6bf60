#include "coupling/coupling_size.hpp"

#include "base/error.hpp"
#include "coupling/detail/coupling_wire.hpp"
#include "coupling/detail/size_search.hpp"
#include "coupling/detail/size_table.hpp"
#include "design/validation.hpp"
#include "design/winding.hpp"
#include "geometry/winding.hpp"
#include "loop/design_parts.hpp"
#include "loop/fitted_capacitor.hpp"
#include "units/text.hpp"

#include <algorithm>
#include <cmath>

namespace loopwright::coupling {

namespace {

using detail::Resonances;

design::Design with_diameter(design::Design design, units::Length diameter) {
    design.coupling->diameter = diameter;
    return design;
}

units::Length to_millimetres(double metres) {
    return units::millimetres(std::round(1000 * metres));
}

/// The answers solved anew at their diameters.
void confirm(CouplingSizes& sizes, const design::Design& design, const Resonances& own,
             const std::vector<double>& best_m, units::Resistance line, const base::StopToken& stop) {
    const CoupledLoop common(with_diameter(design, *sizes.common_diameter), line);
    for (std::size_t i = 0; i < own.size() && !stop.stop_requested(); ++i) {
        if (!own[i]) {
            continue;
        }
        CouplingRow& row = sizes.rows[i];
        row.common = common.match(row.frequency, *own[i]);
        const units::Length diameter = units::metres(best_m[i]);
        const CoupledLoop alone_best(with_diameter(design, diameter), line);
        row.best = CouplingChoice{diameter, alone_best.match(row.frequency, *own[i])};
    }
}

} // namespace

design::Coupling default_coupling(const design::Design& design) {
    design::Coupling coupling;
    const double radius_m = loop::conductor_of(design.conductor).equivalent_radius().value();
    const double clear_m = radius_m + 0.5 * coupling.conductor_diameter.value.value() + 0.010;
    if (clear_m > coupling.axis_offset.value.value()) {
        coupling.axis_offset = units::metres(clear_m);
    }
    coupling.diameter = units::metres(0.2 * detail::width_m(design.loop));
    return coupling;
}

design::Coupling coupling_of_kind(const design::Design& design, design::CouplingKind kind) {
    design::Design tried = design;
    tried.coupling = design.coupling.value_or(default_coupling(design));
    tried.coupling->kind = kind;
    if (design::refusals(tried).empty()) {
        return *tried.coupling;
    }
    design::Coupling usual = default_coupling(design);
    usual.kind = kind;
    if (kind == design::CouplingKind::tap) {
        constexpr double usual_share = 0.12, widest_share = 0.08; // of the conductor
        const double length_m = geometry::perimeter(design::as_winding(design.loop)).value();
        const double apart_m = std::max(usual.tap_spacing.value.value(), usual.axis_offset.value.value());
        usual.tap_length = to_millimetres(usual_share * length_m);
        usual.tap_spacing = to_millimetres(std::min(apart_m, widest_share * length_m));
    }
    return usual;
}

CouplingSizes coupling_sizes(const design::Design& asked, const std::vector<units::Frequency>& frequencies,
                             units::Resistance line, const base::StopToken& stop,
                             const base::Progress& progress) {
    design::Design design = asked;
    if (!design.coupling || design.coupling->kind != design::CouplingKind::loop) {
        design.coupling = default_coupling(asked);
    }
    CouplingSizes sizes;
    const Resonances own = detail::resonances_of(design, frequencies, stop);
    if (stop.stop_requested()) {
        return sizes;
    }
    for (std::size_t i = 0; i < own.size(); ++i) {
        sizes.rows.push_back({frequencies[i], own[i] && own[i]->in_capacitor_range, {}, {}});
    }
    const std::vector<std::size_t> together = detail::counted(own);
    if (together.empty()) {
        sizes.complete = true;
        return sizes;
    }
    const loop::FullWave alone(design);
    const detail::SizeTable table(detail::diameters(design), detail::coupling_loops(design, alone),
                                  {frequencies, own, {loop::FittedCapacitors(design), line.value()}}, stop,
                                  progress);
    if (!table.complete()) {
        return sizes;
    }
    std::vector<double> best_m(own.size(), 0);
    for (std::size_t i = 0; i < own.size(); ++i) {
        if (own[i] && !stop.stop_requested()) {
            best_m[i] = detail::least_at([&](double d) { return table.reflected_power(d, i); },
                                         table.range().low, table.range().high);
        }
    }
    const auto worst = [&](double diameter_m) {
        double most = 0;
        for (const std::size_t i : together) {
            most = std::max(most, table.reflected_power(diameter_m, i));
        }
        return most;
    };
    sizes.common_diameter = units::metres(detail::least_at(worst, table.range().low, table.range().high));
    confirm(sizes, design, own, best_m, line, stop);
    sizes.complete = !stop.stop_requested();
    for (const std::size_t i : together) {
        sizes.worst_vswr = std::max(sizes.worst_vswr, sizes.rows[i].common ? sizes.rows[i].common->vswr : 1);
    }
    if (sizes.complete && progress) {
        progress(1.0);
    }
    return sizes;
}

CouplingChoice best_coupling(const design::Design& design, units::Frequency frequency,
                             units::Resistance line) {
    const CouplingSizes sizes = coupling_sizes(design, {frequency}, line);
    if (!sizes.rows.front().best) {
        throw base::InputError("frequency", units::canonical(frequency),
                               "a frequency to which a capacitor can tune this loop");
    }
    return *sizes.rows.front().best;
}

CommonCoupling common_coupling(const design::Design& design, const std::vector<units::Frequency>& frequencies,
                               units::Resistance line, const base::StopToken& stop,
                               const base::Progress& progress) {
    if (frequencies.empty()) {
        throw base::ProgramError("a coupling for no frequency");
    }
    CommonCoupling common;
    const CouplingSizes sizes = coupling_sizes(design, frequencies, line, stop, progress);
    if (!sizes.complete) {
        return common;
    }
    for (const CouplingRow& row : sizes.rows) {
        if (!row.common) {
            throw base::InputError("frequency", units::canonical(row.frequency),
                                   "a frequency to which a capacitor can tune this loop");
        }
        common.matches.push_back(*row.common);
    }
    common.diameter = *sizes.common_diameter;
    common.complete = true;
    return common;
}

} // namespace loopwright::coupling
