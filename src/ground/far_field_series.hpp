#pragma once
// The far field of a compact set of current elements as a power series about its centre: many directions at
// the cost of a few multiplications each.
#include "ground/power_flux.hpp"

#include <array>
#include <complex>
#include <cstddef>
#include <span>
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

    /// Azimuths that are asked for at several zenith angles: what depends on them alone, computed once.
    class Azimuths {
        friend class FarFieldSeries;
        std::vector<double> cosine_, sine_;
        std::vector<double> weights_; ///< [azimuth][group]: cos^a sin^b
    };
    [[nodiscard]] Azimuths azimuths(std::span<const double> azimuths_rad) const;
    /// Of so many, evenly around from 0.
    [[nodiscard]] Azimuths evenly_around(int count) const;
    /// As over_ground() at each of the azimuths (permittivity 1: as free_space()), without the phase of the
    /// centre's distance from the origin along the ground: intensities are right, and so are products of the
    /// fields of two currents on the same pieces. fields: as many as azimuths.
    void ring(std::complex<double> permittivity, double zenith_rad, const Azimuths& azimuths,
              std::vector<FarField>& fields) const;

    /// Power into the upper half-space over ground [W], as sky_power_W(), points chosen from size and height.
    [[nodiscard]] double sky_power_W(std::complex<double> permittivity) const;

    [[nodiscard]] static bool reaches(const std::vector<CurrentElement>& elements, double wavenumber_rad_m);

private:
    using Vector = std::array<std::complex<double>, 3>;
    /// Terms with the same powers of x and y, those of z from 0 up.
    struct Group {
        int x_power, y_power;
        std::size_t first, terms;
    };
    [[nodiscard]] std::vector<double> of_zenith(std::complex<double> permittivity, double zenith_rad) const;
    [[nodiscard]] FarField one(std::complex<double> permittivity, double zenith_rad,
                               double azimuth_rad) const;

    double k_ = 0, half_diagonal_m_ = 0, top_m_ = 0;
    std::array<double, 3> centre_m_{};
    int order_ = 0;
    std::vector<Group> groups_;
    std::vector<Vector> moments_; ///< of the terms, with (j k)^n and the factorials
};

} // namespace loopwright::ground
