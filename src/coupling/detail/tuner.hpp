#pragma once
// The setting of the capacitor with the least reflection.
#include "coupling/detail/fed_loop.hpp"
#include "loop/fitted_capacitor.hpp"
#include "loop/operating_point.hpp"

namespace loopwright::coupling::detail {

struct Tuner {
    loop::FittedCapacitors capacitors;
    double line_ohm = 50;

    /// With the fixed capacitors that are in at `tuned_Hz`.
    [[nodiscard]] Complex capacitor_ohm(double capacitance_F, double frequency_Hz, double tuned_Hz) const;
    /// Of the power on the line.
    [[nodiscard]] double reflected_power(Complex z) const {
        return std::norm((z - line_ohm) / (z + line_ohm));
    }
    [[nodiscard]] double reflected_power(const OpenTwoPort& port, double capacitance_F,
                                         double frequency_Hz) const {
        return reflected_power(port.input(capacitor_ohm(capacitance_F, frequency_Hz, frequency_Hz)));
    }
    /// The capacitance of least reflection [F], looked for within 30 half widths of the loop's own resonance.
    [[nodiscard]] double best_F(const OpenTwoPort& port, double frequency_Hz,
                                const loop::Resonance& own) const;
};

} // namespace loopwright::coupling::detail
