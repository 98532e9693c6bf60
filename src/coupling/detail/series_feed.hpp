#pragma once
// Feeds that put a voltage in series with the loop opposite the capacitor: the tap and the transformer.
#include "conductor/conductor.hpp"
#include "coupling/detail/fed_loop.hpp"
#include "coupling/partial_inductance.hpp"
#include "coupling/transformer.hpp"
#include "design/design.hpp"
#include "loop/full_wave.hpp"

#include <vector>

namespace loopwright::coupling::detail {

/// The feed's circuit with the loop's current taken out: V = zgg I + z12 J, and in the loop the voltage
/// -(z12 I + zs J), J the loop's current opposite the capacitor.
struct SeriesCircuit {
    Complex zgg, z12, zs;
};

/// A loop solved at its own resonance, whose admittances and current hold near it.
class SeriesFeed : public FedLoop {
public:
    explicit SeriesFeed(const loop::FullWave& alone) : alone_(alone) {}
    [[nodiscard]] OpenTwoPort at(units::Frequency frequency) const final;

protected:
    [[nodiscard]] virtual SeriesCircuit circuit(units::Frequency frequency,
                                                const loop::SolvedLoop& loop) const = 0;
    /// Throws base::InputError ("frequency") where no capacitor tunes the loop.
    [[nodiscard]] loop::SolvedLoop solved(units::Frequency frequency) const;
    [[nodiscard]] const loop::FullWave& alone() const { return alone_; }

private:
    const loop::FullWave& alone_;
};

/// The tapped match (docs/theory/coupling.md): rod, both links and the tapped part of the conductor are one
/// closed circuit beside the loop; its inductance and the mutual one by partial inductances, the latter with
/// the loop's current as it is along the conductor.
class TapFeed final : public SeriesFeed {
public:
    TapFeed(const design::Design& design, const design::Coupling& coupling, const loop::FullWave& alone);
    [[nodiscard]] double own_loss_share(units::Frequency frequency, const OpenTwoPort& port,
                                        Complex capacitor_ohm) const override;
    [[nodiscard]] base::Notices notices(units::Frequency frequency) const override;

protected:
    [[nodiscard]] SeriesCircuit circuit(units::Frequency frequency,
                                        const loop::SolvedLoop& loop) const override;

private:
    [[nodiscard]] double rod_ohm(units::Frequency frequency) const;

    conductor::Conductor rod_;
    double tap_length_m_, rod_length_m_, spacing_m_, radii_m_;
    double series_F_ = 0; ///< 0: none
    double self_H_ = 0;
    std::vector<double> place_m_;  ///< along the loop's conductor, middle of each of its pieces
    std::vector<double> mutual_H_; ///< of that piece with the tap's circuit
};

/// The transformer's circuit of coupling/transformer.hpp in series with the loop.
class TransformerFeed final : public SeriesFeed {
public:
    TransformerFeed(const design::Coupling& coupling, const loop::FullWave& alone, units::Resistance line);
    [[nodiscard]] double own_loss_share(units::Frequency frequency, const OpenTwoPort& port,
                                        Complex capacitor_ohm) const override;
    [[nodiscard]] base::Notices notices(units::Frequency frequency) const override;

protected:
    [[nodiscard]] SeriesCircuit circuit(units::Frequency frequency,
                                        const loop::SolvedLoop& loop) const override;

private:
    ToroidTransformer transformer_;
    units::Resistance line_;
};

} // namespace loopwright::coupling::detail
