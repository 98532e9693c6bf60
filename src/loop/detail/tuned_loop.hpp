#pragma once
// The loop as a circuit of its currents with the capacitor in it: resonance, the split of the resistance,
// the slope of the reactance.
#include "capacitor/capacitor.hpp"
#include "conductor/conductor.hpp"
#include "conductor/proximity.hpp"
#include "loop/detail/loop_series.hpp"

#include <complex>
#include <optional>

namespace loopwright::loop::detail {

/// What the conductor loses.
struct LoopLosses {
    const conductor::Conductor* conductor = nullptr;
    const conductor::ProximityLoss* proximity = nullptr;
    double share_of_turns = 1; ///< of the conductor's length that lies beside other turns
    double joints_ohm = 0;     ///< spread evenly along the conductor

    /// The conductor's resistance over that of the straight one alone.
    [[nodiscard]] double factor(double frequency_Hz) const {
        return 1 + share_of_turns * proximity->added(conductor->radius_over_skin_depth(frequency_Hz));
    }
};

/// Everything per ampere opposite the capacitor. Resistances in ohm, there.
struct TunedLoop {
    CurrentVector currents{};           ///< coefficients, c0 + c1 = 1, (L.15)
    double capacitor_reactance_ohm = 0; ///< 1/(omega C), > 0
    double radiation_ohm = 0, conductor_ohm = 0, joints_ohm = 0, capacitor_ohm = 0;
    double capacitor_low_ohm = 0, capacitor_high_ohm = 0; ///< where the capacitor's loss is a class value
    double internal_reactance_ohm_m = 0;                  ///< of the conductor, per metre
    double reactance_slope_ohm_s = 0;                     ///< dX/d omega opposite the capacitor, C fixed
    [[nodiscard]] double total_ohm() const noexcept {
        return radiation_ohm + conductor_ohm + joints_ohm + capacitor_ohm;
    }
};

/// Immutable once made; the referenced parts must outlive it.
class LoopCircuit {
public:
    LoopCircuit(const LoopSeries& series, LoopLosses losses, const capacitor::Capacitor& capacitor)
        : series_(series), losses_(losses), capacitor_(capacitor) {}

    /// The loop tuned to a frequency: X = 0 opposite the capacitor, (L.17). Nothing where no positive
    /// capacitance does it: the loop is resonant by itself below.
    [[nodiscard]] std::optional<TunedLoop> tune(double frequency_Hz) const;

    /// Impedance opposite the capacitor [ohm] with a capacitance that stays, (L.16).
    [[nodiscard]] std::complex<double> impedance(double frequency_Hz, double capacitance_F) const;

private:
    using Matrix = Symmetric<std::complex<double>>;
    [[nodiscard]] Matrix loop_matrix(double k_1_m, const Symmetric<double>& radiation_ohm,
                                     const std::complex<double>& wire_ohm_m) const;
    [[nodiscard]] std::complex<double> wire_ohm_m(double frequency_Hz) const;
    [[nodiscard]] double reactance_slope(double k_1_m, const TunedLoop& tuned,
                                         const std::complex<double>& internal_ohm_m) const;
    [[nodiscard]] double internal_slope_ohm_s_m(double omega_1_s,
                                                const std::complex<double>& internal_ohm_m) const;

    const LoopSeries& series_;
    LoopLosses losses_;
    const capacitor::Capacitor& capacitor_;
};

} // namespace loopwright::loop::detail
