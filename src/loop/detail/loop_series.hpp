#pragma once
// What a loop's path and conductor radius fix, frequency apart: the current its own charge asks for, and the
// power series in the wave number of the loop's impedances and far fields.
#include "geometry/wire_path.hpp"
#include "loop/detail/far_direction.hpp"
#include "loop/detail/spans.hpp"

#include <array>
#include <complex>
#include <vector>

namespace loopwright::loop::detail {

/// Coefficients of a polynomial in x = k^2.
struct EvenSeries {
    static constexpr std::size_t terms = 5;
    std::array<double, terms> c{};
    [[nodiscard]] double value(double x) const noexcept;
    [[nodiscard]] double slope(double x) const noexcept; ///< d/dx
};

/// The currents that make up the loop's current: 0, the uniform one, 1 all round; 1, the shape u(s) that the
/// charge on the conductor asks for, mean 0 over the gap and 1 opposite the capacitor, (L.9); 2, what the
/// magnetic field of u adds to that shape, mean 0 over the gap and 0 opposite, (L.10). With the coefficients
/// (c0, c1, c2) the capacitor carries c0 and the point opposite it c0 + c1.
struct LoopSeries {
    double length_m = 0;
    double inductance_H = 0;       ///< external, static
    double self_capacitance_F = 0; ///< static part, of the charge alone, (L.8)
    Symmetric<double> mean{};      ///< mean of f_i f_k along the conductor

    // Radiation resistance = r(k^2) [ohm]; reactance = k x(k^2) - elastance / omega [ohm].
    Symmetric<EvenSeries> radiation{}, reactance{};
    Symmetric<double> elastance_1_F{};

    [[nodiscard]] Symmetric<double> radiation_ohm(double k_1_m) const noexcept;
    [[nodiscard]] Symmetric<double> reactance_ohm(double k_1_m) const noexcept;
    /// Derivatives to k [ohm m].
    [[nodiscard]] Symmetric<double> radiation_slope(double k_1_m) const noexcept;
    [[nodiscard]] Symmetric<double> reactance_slope(double k_1_m) const noexcept;
};

struct PreparedLoop {
    LoopSeries series;
    std::vector<FarDirection> directions;
};

/// Solves the static charge problem and gathers the series. radius_m: of the round conductor. inductance_H:
/// the external inductance where it is known better than by the sum over the path; 0: take the sum.
[[nodiscard]] PreparedLoop prepare_loop(const geometry::WirePath& path, double radius_m, double inductance_H,
                                        const std::vector<geometry::Vector3>& directions,
                                        const geometry::Vector3& centre, const Cutting& cutting = {});

} // namespace loopwright::loop::detail
