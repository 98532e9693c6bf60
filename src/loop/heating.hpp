#pragma once
// How warm conductor and capacitor become: a simple steady-state model, an upper bound for short sessions.
// docs/theory/heating.md, (H1) to (H7).
#include "base/notice.hpp"
#include "design/design.hpp"
#include "loop/operating_point.hpp"
#include "units/quantities.hpp"

#include <optional>

namespace loopwright::loop {

/// A horizontal cylinder in still air of its own surface temperature; its end faces are left out.
struct HotBody {
    units::Length diameter{};
    units::Length length{};
    double emissivity = 0.3;                             ///< of the surface, for heat
    units::Interval<double> emissivity_range{0.05, 0.9}; ///< polished metal to paint or oxide
};

struct StillAir {
    units::Length altitude{units::metres(0)};
    units::Temperature temperature{units::degrees_celsius(20)}; ///< and of all around
};

/// Rise over the air once it no longer changes [K]. Nothing where the model does not hold; a notice says why.
struct Heating {
    std::optional<double> rise_K;
    units::Interval<double> rise_range_K; ///< convection +-25 %, emissivity over its range
    base::Notices notices;
};

/// Highest rise the model answers for: above, solder softens and resistance and air change too much.
inline constexpr double highest_rise_K = 150;

/// Power a body gives off by natural convection and radiation [W], (H1) to (H4): Nu of S. W. Churchill and
/// H. H. S. Chu, Int. J. Heat Mass Transfer 18 (1975) 1049 (horizontal cylinder, 1e-5 < Ra < 1e12; equation
/// from memory, as textbooks print it), air at the mean of both temperatures. convection: a factor on Nu.
/// Also returns the Rayleigh number. rise_K > 0.
struct GivenOff {
    units::Power convection{}, radiation{};
    double rayleigh = 0;
};
[[nodiscard]] GivenOff given_off(const HotBody& body, const StillAir& air, double rise_K, double emissivity,
                                 double convection = 1);

/// The rise at which a body gives off that power. Sun, wind, insulation around the conductor and hot spots
/// (joints, contacts) are not in it. Throws base::ProgramError for sizes not above 0 or a negative power.
[[nodiscard]] Heating heating(units::Power average, const HotBody& body, const StillAir& air);

struct LoopHeating {
    Heating conductor; ///< at its hottest place, opposite the capacitor
    /// Of a body of 50 mm by 60 mm (30 by 30 to 80 by 120 in the interval): the design does not say how large
    /// the capacitor is, and the notice `capacitor_body_assumed` says so.
    Heating capacitor;
    units::Power conductor_average{}, capacitor_average{}; ///< lost as heat
};

/// Of a design at a point with a resonance (else nothing is established), for an average power that is this
/// share of the point's peak envelope power (0 to 1: exposure::long_term_average or the worst window's).
[[nodiscard]] LoopHeating heating(const design::Design& design, const OperatingPoint& point,
                                  double average_over_peak);

} // namespace loopwright::loop
