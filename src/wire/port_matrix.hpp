#pragma once
// What is connected at a wire's gaps, after one solution: every capacitance, load or open end then costs a
// few operations.
#include <complex>
#include <cstddef>
#include <functional>
#include <optional>
#include <vector>

namespace loopwright::wire {

/// Short-circuit admittances between ports [S], symmetric, row by row.
struct PortMatrix {
    std::size_t ports = 0;
    std::vector<std::complex<double>> y;
    [[nodiscard]] std::complex<double> at(std::size_t i, std::size_t k) const { return y.at(i * ports + k); }

    /// With an admittance across port p (0: open) that port drops out: y_ik - y_ip y_pk / (y_pp + load).
    [[nodiscard]] PortMatrix terminated(std::size_t p, std::complex<double> load) const;
    /// Voltage across the terminated port p when the others have the voltages of port_V (its own entry is not
    /// read): -Sum y_pk V_k / (y_pp + load).
    [[nodiscard]] std::complex<double> terminated_voltage(const std::vector<std::complex<double>>& port_V,
                                                          std::size_t p, std::complex<double> load) const;
};

/// Two ports: 1 where the loop is looked into, 2 the capacitor's gap.
struct TwoPort {
    std::complex<double> y11, y12, y22;

    /// Seen at port 1 with `load` across port 2: (y22 + load) / (y11 (y22 + load) - y12^2) [ohm]. It is also
    /// the voltage at port 1 that drives 1 A.
    [[nodiscard]] std::complex<double> input_impedance(std::complex<double> load) const;
    /// Voltage across port 2 for one across port 1, with the signs of Solution::currents.
    [[nodiscard]] std::complex<double> second_voltage(std::complex<double> first_V,
                                                      std::complex<double> load) const;
};
/// Of a matrix of two ports, in their order. Throws base::ProgramError for another number.
[[nodiscard]] TwoPort two_port(const PortMatrix& matrix);

/// The capacitance [F] that makes the reactance at port 1 zero, at the resonance where the current is large
/// there. load_S(C): admittance of the lossy capacitor [S]. Absent where no positive capacitance resonates
/// the wire (its own first resonance lies below the frequency). Exact for the given loss: the quadratic in
/// the susceptance, repeated until the capacitance agrees to 1e-14.
[[nodiscard]] std::optional<double>
resonating_capacitance_F(const TwoPort& port, double omega_rad_s,
                         const std::function<std::complex<double>(double capacitance_F)>& load_S);

} // namespace loopwright::wire
