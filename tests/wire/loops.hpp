#pragma once
// Loops as the independent cases define them, and what is asked of a tuned one.
#include "support/cases.hpp"
#include "support/fullwave_cases.hpp"
#include "wire/port_matrix.hpp"
#include "wire/solver.hpp"

#include <complex>
#include <optional>

namespace loopwright::wire::testing {

using Complex = std::complex<double>;

/// A circle about `centre`, spanned by `right` and `up`, beginning at its point toward +up (or, from_below,
/// toward -up).
[[nodiscard]] Wire circle(const geometry::Vector3& centre, const geometry::Vector3& right,
                          const geometry::Vector3& up, double diameter_m, double radius_m,
                          bool from_below = false);
[[nodiscard]] Wire vertical_circle(double diameter_m, double radius_m);
/// Straight lines between the points, closed unless told otherwise.
[[nodiscard]] Wire polyline(const std::vector<geometry::Vector3>& points, double radius_m,
                            bool closed = true);
[[nodiscard]] Wire straight(const geometry::Vector3& from, const geometry::Vector3& to, double radius_m);

/// Ports: 0 where the reference current is (opposite the capacitor), 1 the capacitor, 2 the coupling loop's.
[[nodiscard]] WireModel model_of(const support::FullwaveCase& one);
[[nodiscard]] Loading loading_of(const support::FullwaveCase& one);

/// The loop tuned at port 1 by a capacitor of quality q and contact resistance; all ports from 2 on open.
struct Tuned {
    double capacitance_F = 0;
    Complex input_ohm;                                              ///< at port 0
    double radiation_ohm = 0, conductor_ohm = 0, capacitor_ohm = 0; ///< for the current at port 0
    double capacitor_V_per_A = 0, capacitor_A_per_A = 0;            ///< magnitudes
    Currents per_ampere;                                            ///< 1 A at port 0
    [[nodiscard]] double total_ohm() const { return radiation_ohm + conductor_ohm + capacitor_ohm; }
    [[nodiscard]] double efficiency() const { return radiation_ohm / total_ohm(); }
};
[[nodiscard]] Complex capacitor_S(double omega, double capacitance_F, double q, double contact_ohm);
[[nodiscard]] Tuned tune(const Solution& solution, double q, double contact_ohm = 0);

} // namespace loopwright::wire::testing
