#pragma once
// The tuned loop with its coupling in the full-wave model: what the feed line sees.
#include "base/notice.hpp"
#include "design/design.hpp"
#include "loop/full_wave.hpp"
#include "units/quantities.hpp"

#include <memory>
#include <optional>
#include <vector>

namespace loopwright::coupling {

/// The match at one frequency, the capacitor set for the least VSWR.
struct Match {
    units::Frequency frequency{};
    units::Capacitance
        tuning_capacitance{};  ///< of least VSWR; differs a little from the loop's own resonance
    units::Impedance input{};  ///< at the coupling's feed point
    double vswr = 1;           ///< on the line's impedance
    double own_loss_share = 0; ///< of the power accepted at the feed point: heat in the coupling's own parts
};

/// One point of the VSWR curve around the match: frequency moved, capacitor left.
struct MatchPoint {
    units::Frequency frequency{};
    units::Impedance input{};
    double vswr = 1;
};

/// The capacitor off its best setting by `offset`, the frequency left.
struct Mistuning {
    units::Capacitance offset{};
    units::Impedance input{};
    double vswr = 1;
    double accepted_share = 1;     ///< of the power available on the line, 0 to 1
    units::Decibel radiated_power; ///< against the best setting; same power available, at most about 0
};

/// Where the power goes, for the accepted power of one watt [shares, sum 1].
struct PowerShares {
    double field = 0; ///< leaves the wires: sky, over ground the ground too
    double loop_conductor = 0, coupling_conductor = 0, capacitor = 0;
};

/// A design's loop, capacitor and coupling over its ground. A coupling loop is meshed together with the loop:
/// in its plane, inside, opposite the capacitor, a circle of copper wire fed at its point nearest the
/// conductor. A tap and a transformer are circuits in series with the loop of the full-wave model
/// (docs/theory/coupling.md). Model, range and accuracy as loop::FullWave; the feed line itself and currents
/// on its outside are not in it (notice of the loop's model).
class CoupledLoop {
public:
    /// Throws base::InputError for a design without a coupling ("coupling"), or one that does not fit
    /// inside.
    explicit CoupledLoop(const design::Design& design, units::Resistance line = units::ohms(50));
    ~CoupledLoop();
    CoupledLoop(CoupledLoop&&) noexcept;
    CoupledLoop& operator=(CoupledLoop&&) noexcept;

    /// The loop without its coupling.
    [[nodiscard]] const loop::FullWave& alone() const noexcept;
    /// Least VSWR over the capacitance. Throws base::InputError where the loop cannot be tuned to the
    /// frequency.
    [[nodiscard]] Match match(units::Frequency frequency) const;
    /// The same where the loop's own resonance at the frequency is known already.
    [[nodiscard]] Match match(units::Frequency frequency, const loop::Resonance& own) const;
    /// Input impedance at a frequency for a capacitance (with stray).
    [[nodiscard]] units::Impedance input(units::Frequency frequency, units::Capacitance capacitance) const;
    /// `points` frequencies evenly over `span` centred on the match, the capacitor left as it is; points
    /// >= 2, span up to 60 % of the frequency (base::ProgramError).
    [[nodiscard]] std::vector<MatchPoint> curve(const Match& match, units::Frequency span, int points) const;
    /// Between the two frequencies beside the match where the VSWR reaches `limit`, the capacitor left.
    /// Absent where the match itself does not get below the limit, or where an edge lies more than 30 % away.
    [[nodiscard]] std::optional<units::Frequency> bandwidth(const Match& match, double limit) const;
    /// The capacitor moved by each offset; every resulting capacitance above 0.
    [[nodiscard]] std::vector<Mistuning> mistuning(const Match& match,
                                                   const std::vector<units::Capacitance>& offsets) const;
    /// From the currents of the solution with the capacitor at the match: quadratic forms, no differences.
    /// Absent for a kind of coupling that is a circuit model.
    [[nodiscard]] std::optional<PowerShares> powers(const Match& match) const;
    /// Limits of the coupling's model at a frequency.
    [[nodiscard]] base::Notices notices(units::Frequency frequency) const;

private:
    struct Parts;
    std::unique_ptr<const Parts> parts_;
};

} // namespace loopwright::coupling
