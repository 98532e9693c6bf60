#pragma once
// The tuned loop with its coupling loop as a driven wire of the full-wave model: what the feed line sees.
#include "base/notice.hpp"
#include "design/design.hpp"
#include "units/quantities.hpp"

#include <complex>
#include <memory>
#include <vector>

namespace loopwright::coupling {

/// The match at one frequency, the capacitor set for the least VSWR.
struct Match {
    units::Frequency frequency{};
    units::Capacitance
        tuning_capacitance{}; ///< of least VSWR; differs a little from the loop's own resonance
    units::Impedance input{}; ///< at the coupling loop's gap
    double vswr = 1;          ///< on the line's impedance
};

/// One point of the VSWR curve around the match: frequency moved, capacitor left.
struct MatchPoint {
    units::Frequency frequency{};
    units::Impedance input{};
    double vswr = 1;
};

/// A design's loop, capacitor and coupling loop over its ground, meshed together; the coupling loop in the
/// loop's plane, inside, opposite the capacitor, a circle fed at its point nearest the conductor
/// (docs/reference/design-file.md). Its conductor is taken as copper wire. Model, range and accuracy as
/// loop::FullWave; the feed line itself and currents on its outside are not in it (notice of the loop's
/// model).
class CoupledLoop {
public:
    /// Throws base::InputError for a design without a coupling loop ("coupling"), or one that does not fit
    /// inside.
    explicit CoupledLoop(const design::Design& design, units::Resistance line = units::ohms(50));
    ~CoupledLoop();
    CoupledLoop(CoupledLoop&&) noexcept;
    CoupledLoop& operator=(CoupledLoop&&) noexcept;

    /// Least VSWR over the capacitance. Throws base::InputError where the loop cannot be tuned to the
    /// frequency.
    [[nodiscard]] Match match(units::Frequency frequency) const;
    /// Input impedance at a frequency for a capacitance (with stray).
    [[nodiscard]] units::Impedance input(units::Frequency frequency, units::Capacitance capacitance) const;
    /// `points` frequencies evenly over `span` centred on the match, the capacitor left as it is; points
    /// >= 2.
    [[nodiscard]] std::vector<MatchPoint> curve(const Match& match, units::Frequency span, int points) const;

private:
    struct Parts;
    std::unique_ptr<const Parts> parts_;
};

/// The diameter of coupling loop with the least VSWR at a frequency, wire and offset of the design kept (a
/// design without coupling: 4 mm wire, 30 mm offset). Searched from 5 % to 50 % of the loop's width.
struct CouplingChoice {
    units::Length diameter{};
    Match match;
};
[[nodiscard]] CouplingChoice best_coupling(const design::Design& design, units::Frequency frequency,
                                           units::Resistance line = units::ohms(50));

/// One diameter for all of them: the least of the worst VSWR, with the match at each.
struct CommonCoupling {
    units::Length diameter{};
    std::vector<Match> matches; ///< in the order asked
};
[[nodiscard]] CommonCoupling common_coupling(const design::Design& design,
                                             const std::vector<units::Frequency>& frequencies,
                                             units::Resistance line = units::ohms(50));

} // namespace loopwright::coupling
