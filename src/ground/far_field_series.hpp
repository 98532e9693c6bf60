#pragma once
// The far field of a compact set of current elements as a power series about its centre: many directions at
// the cost of a few multiplications each.
#include "ground/power_flux.hpp"

#include <array>
#include <complex>
#include <vector>

namespace loopwright::ground {

/// Moments of exp(j k r.(r' - c)), c the middle of the elements' box, up to the order at which the remainder
/// (k a)^(n+1)/(n+1)! is below 1e-7, a the half diagonal. Over ground the mirrored wave uses the same moments
/// with the direction's z reversed. Range: k a <= 4; larger systems: base::ProgramError (use far_field()).
class FarFieldSeries {
public:
    FarFieldSeries(const std::vector<CurrentElement>& elements, double wavenumber_rad_m);

    /// As far_field(): permittivity of the half-space below z = 0, zenith angle 0 to pi/2.
    [[nodiscard]] FarField over_ground(std::complex<double> permittivity, double zenith_rad,
                                       double azimuth_rad) const;
    /// Without ground; zenith angle 0 to pi.
    [[nodiscard]] FarField free_space(double zenith_rad, double azimuth_rad) const;

    /// Power into the upper half-space over ground [W], as sky_power_W(), points chosen from size and height.
    [[nodiscard]] double sky_power_W(std::complex<double> permittivity) const;

    [[nodiscard]] static bool reaches(const std::vector<CurrentElement>& elements, double wavenumber_rad_m);

private:
    using Vector = std::array<std::complex<double>, 3>;
    /// Integral of I dl exp(j k r.r') for a unit vector and for the same with its z reversed.
    struct Pair {
        Vector direct, mirrored;
    };
    [[nodiscard]] Pair radiation_vectors(double x, double y, double z) const;

    struct Term {
        int x_power, y_power, z_power;
        Vector moment;
    };
    double k_ = 0, half_diagonal_m_ = 0, top_m_ = 0;
    std::array<double, 3> centre_m_{};
    int order_ = 0;
    std::vector<Term> terms_;
};

} // namespace loopwright::ground
