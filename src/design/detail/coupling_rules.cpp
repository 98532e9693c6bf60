// Rules of coupling and feed line.
#include "design/detail/refusals.hpp"

#include "design/winding.hpp"
#include "geometry/winding.hpp"

#include <cmath>

namespace loopwright::design::detail {
namespace {

using units::metres;
using units::millimetres;

double thickness_m(const Conductor& c) {
    return c.form == ConductorForm::strip ? c.thickness.value.value() : c.diameter.value.value();
}

/// Length of the one turn, or 0 where the outline has none.
double conductor_length_m(const LoopShape& loop) {
    try {
        return geometry::perimeter(as_winding(loop)).value();
    } catch (const base::InputError&) {
        return 0; // refused with the loop
    }
}

void check_tap(const Design& design, const Coupling& coupling, Refusals& refusals) {
    if (design.loop.turns != 1) {
        refusals.add("coupling.kind", "tap", "loop or transformer: a tap is computed for one turn only");
    }
    const bool sizes =
        refusals.range("coupling.tap_length", coupling.tap_length, millimetres(5), metres(100)) &
        refusals.range("coupling.tap_spacing", coupling.tap_spacing, millimetres(1), metres(10)) &
        refusals.range("coupling.conductor_diameter", coupling.conductor_diameter, millimetres(0.1),
                       metres(1));
    if (coupling.series_capacitor) {
        refusals.range("coupling.series_capacitor", *coupling.series_capacitor, units::picofarads(0.1),
                       units::picofarads(1e6));
    }
    const double length_m = conductor_length_m(design.loop);
    if (!sizes || !(length_m > 0)) {
        return;
    }
    if (!(coupling.tap_length.value.value() <= 0.4 * length_m)) {
        refusals.add("coupling.tap_length", as_typed(coupling.tap_length),
                     "at most two fifths of the conductor (" + units::shown(metres(0.4 * length_m)) + ")");
    }
    const double apart_m = (thickness_m(design.conductor) + coupling.conductor_diameter.value.value()) / 2;
    if (std::isfinite(apart_m) && !(coupling.tap_spacing.value.value() > apart_m)) {
        refusals.add("coupling.tap_spacing", as_typed(coupling.tap_spacing),
                     "more than " + units::shown(metres(apart_m)) + ": rod and conductor would touch");
    }
    if (!(coupling.tap_spacing.value.value() < 0.1 * length_m)) {
        refusals.add("coupling.tap_spacing", as_typed(coupling.tap_spacing),
                     "less than a tenth of the conductor's length (" + units::shown(metres(0.1 * length_m)) +
                         ")");
    }
}

void check_transformer(const Coupling& coupling, Refusals& refusals) {
    refusals.range("coupling.turns", coupling.turns, 1, 100);
    refusals.range("coupling.turn_inductance", coupling.turn_inductance, units::henries(1e-10),
                   units::henries(1e-3));
    refusals.range("coupling.core_q", coupling.core_q, 0.1, 1e6);
    refusals.range("coupling.leakage_share", coupling.leakage_share, 0.0, 0.49);
}

} // namespace

void check_coupling(const Design& design, Refusals& refusals) {
    if (!design.coupling) {
        return;
    }
    switch (design.coupling->kind) {
    case CouplingKind::loop:
        check_coupling_loop(design, refusals);
        break;
    case CouplingKind::tap:
        check_tap(design, *design.coupling, refusals);
        break;
    case CouplingKind::transformer:
        check_transformer(*design.coupling, refusals);
        break;
    }
}

void check_feed_line(const FeedLine& line, Refusals& refusals) {
    refusals.range("feed_line.length", line.length, metres(0), metres(1e4));
    refusals.range("feed_line.impedance", line.impedance, units::ohms(5), units::ohms(1000));
    for (std::size_t i = 0; i < line.loss.size(); ++i) {
        const std::string where = "feed_line.loss[" + std::to_string(i) + "].";
        const LineLoss& point = line.loss[i];
        refusals.range(where + "frequency", point.frequency, units::kilohertz(10), units::megahertz(1e4));
        refusals.range(where + "loss", point.loss, units::DecibelPerMetre{0}, units::DecibelPerMetre{100});
        for (std::size_t k = 0; k < i; ++k) {
            if (line.loss[k].frequency.value == point.frequency.value) {
                refusals.add(where + "frequency", as_typed(point.frequency), "each frequency once");
                break;
            }
        }
    }
}

} // namespace loopwright::design::detail
