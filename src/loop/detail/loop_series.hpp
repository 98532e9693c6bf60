#pragma once
// What a loop's path and conductor radius fix, frequency apart: the current its own charge asks for, and the
// power series in the wave number of the loop's impedances and far fields.
#include "geometry/wire_path.hpp"

#include <array>
#include <complex>
#include <vector>

namespace loopwright::loop::detail {

/// Coefficients of a polynomial in x = k^2.
struct EvenSeries {
    static constexpr std::size_t terms = 6;
    std::array<double, terms> c{};
    [[nodiscard]] double value(double x) const noexcept;
    [[nodiscard]] double slope(double x) const noexcept; ///< d/dx
};

/// Symmetric 2 x 2 matrix over the two currents.
template <class T>
struct Pair {
    T uniform{}, mixed{}, charge{};
};

/// The two currents that make up the loop's current: `uniform`, 1 all round, and `charge`, the shape u(s)
/// that the charge on the conductor asks for, mean 0 over the gap and 1 opposite the capacitor, (L.12). With
/// the coefficients (c0, c1) the capacitor carries c0 and the point opposite it c0 + c1.
struct LoopSeries {
    double length_m = 0;
    double inductance_H = 0;       ///< external, static
    double self_capacitance_F = 0; ///< static part, of the charge alone, (L.11)
    double mean_shape = 0;         ///< mean of u along the conductor
    double mean_square_shape = 0;

    // Radiation resistance = r(k^2) [ohm]; reactance = k x(k^2) - elastance / omega [ohm].
    Pair<EvenSeries> radiation, reactance;
    double elastance_1_F = 0; ///< of `charge` with itself

    [[nodiscard]] Pair<double> radiation_ohm(double k_1_m) const noexcept;
    [[nodiscard]] Pair<double> reactance_ohm(double k_1_m) const noexcept;
    /// Derivatives to k [ohm m].
    [[nodiscard]] Pair<double> radiation_slope(double k_1_m) const noexcept;
    [[nodiscard]] Pair<double> reactance_slope(double k_1_m) const noexcept;
};

/// Far field of the two currents in one direction: int f (s . e) exp(j k n.r) ds [m] for the polarisations e
/// along growing elevation and azimuth, as series in j k.
class FarDirection {
public:
    FarDirection(const geometry::Vector3& direction, const geometry::Vector3& centre);
    void add(const geometry::Vector3& point, const geometry::Vector3& tangent, double weight_m, double shape);
    /// |field|^2 [m^2] for currents c0, c1, both polarisations together.
    [[nodiscard]] double power(double k_1_m, std::complex<double> c0, std::complex<double> c1) const noexcept;
    [[nodiscard]] const geometry::Vector3& direction() const noexcept { return direction_; }

private:
    static constexpr std::size_t terms = 8;
    geometry::Vector3 direction_, up_, across_, centre_;
    // [polarisation][current][power of k]
    std::array<std::array<std::array<double, terms>, 2>, 2> moments_{};
};

struct PreparedLoop {
    LoopSeries series;
    std::vector<FarDirection> directions;
};

/// Solves the static charge problem and gathers the series. radius_m: of the round conductor. inductance_H:
/// the external inductance where it is known better than by the sum over the path; 0: take the sum.
[[nodiscard]] PreparedLoop prepare_loop(const geometry::WirePath& path, double radius_m, double inductance_H,
                                        const std::vector<geometry::Vector3>& directions,
                                        const geometry::Vector3& centre);

} // namespace loopwright::loop::detail
