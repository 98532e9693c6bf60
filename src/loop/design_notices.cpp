#include "loop/design_notices.hpp"

#include "design/made.hpp"
#include "units/text.hpp"

namespace loopwright::loop {
namespace {

using base::Severity;

void of_conductor(base::Notices& notices, const design::Conductor& design,
                  const conductor::Conductor& conductor) {
    const auto range = conductor.resistance_factor_range(units::megahertz(10));
    switch (design.form) {
    case design::ConductorForm::braid:
        notices.add({"braid_factor_interval", Severity::caution,
                     "No theory gives the resistance of a braid: the factor over a smooth tube is an input, "
                     "and the ranges run from no excess to twice the excess.",
                     range.high - range.low});
        break;
    case design::ConductorForm::stranded:
        notices.add({"stranded_factor_interval", Severity::caution,
                     "No theory gives the resistance of bare strands: the factor over a solid wire is an "
                     "input, and the ranges run from no excess to twice the excess.",
                     range.high - range.low});
        break;
    case design::ConductorForm::strip:
        notices.add(
            {"strip_approximation", Severity::information,
             "The strip's resistance is that of a straight strip with sharp corners, within 1 %, and the "
             "loop is computed as if it were a round conductor with the same outer field.",
             range.high - range.low});
        break;
    case design::ConductorForm::wire:
    case design::ConductorForm::tube:
        if (range.high - range.low > 0.01) {
            notices.add({"metal_conductivity_interval", Severity::information,
                         "Published conductivities of this metal disagree; the ranges cover them.",
                         range.high - range.low});
        }
        break;
    }
}

// Where a bound of the range is nothing but the dimensions' word.
void of_made_capacitor(base::Notices& notices, const design::Capacitor& c) {
    if (!design::minimum_follows(c) && !design::maximum_follows(c)) {
        return;
    }
    const auto least = design::made_capacitance(*c.made, c.made->least_overlap.value);
    const auto most = design::made_capacitance(*c.made, c.made->most_overlap.value);
    notices.add({"made_capacitor_computed", Severity::caution,
                 "The capacitor's range is computed from its dimensions: it begins between " +
                     units::shown(least.range.low) + " and " + units::shown(least.range.high) +
                     ", and ends between " + units::shown(most.range.low) + " and " +
                     units::shown(most.range.high) +
                     (least.established && most.established
                          ? ""
                          : "; sizes like these lie outside what the formulas hold for") +
                     ". Frame and leads are not in it. Measure it.",
                 0});
}

} // namespace

base::Notices design_notices(const design::Design& design, const conductor::Conductor& conductor,
                             const capacitor::Capacitor& capacitor, double proximity_factor,
                             double curvature_factor) {
    base::Notices notices;
    notices.merge(capacitor.notices());
    of_made_capacitor(notices, design.capacitor);
    of_conductor(notices, design.conductor, conductor);
    if (design.loop.turns > 1) {
        notices.add({"proximity_close_turns",
                     proximity_factor > 1.3 ? Severity::caution : Severity::information,
                     "Between turns the current crowds: the added loss is that of straight parallel wires, "
                     "and the capacitance between the turns is less certain.",
                     proximity_factor - 1});
    }
    if (curvature_factor > 1.005) {
        notices.add({"thick_conductor", Severity::information,
                     "The conductor is thick for so small a loop: the current crowds to its inner side. The "
                     "upper end of the resistance covers it.",
                     curvature_factor - 1});
    }
    if (!design.joints.empty()) {
        notices.add({"joints_spread", Severity::information,
                     "Where the joints sit is not known: their resistance is spread along the conductor.",
                     0});
    }
    return notices;
}

} // namespace loopwright::loop
