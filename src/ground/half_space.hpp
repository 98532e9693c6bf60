#pragma once
// Green functions of thin currents above a lossy half-space: what the ground adds to the free-space kernel.
//
// Mixed-potential form with one scalar potential for all charges, exp(+j omega t), source at z' > 0 and
// observer at z > 0, Z = z + z', rho the horizontal distance:
//   E = -j omega mu0 Int K_A . J  -  grad (1/eps0) Int K_phi q
//   K_A for the ground part:  K_xx = K_yy = horizontal, K_zz = vertical,
//                             K_zx = +cos(phi) mixed,  K_xz = -cos(phi) mixed,
//   phi the azimuth of the observer seen from the source (and likewise with sin(phi) for y).
// In the spectral domain, E = exp(-j kz1 Z), Ge = (kz2 - eps kz1)/(kz2 + eps kz1),
// Gh = (kz1 - kz2)/(kz1 + kz2), W = (Ge - Gh)/kr^2 = 2 (eps - 1)/[(kz2 + eps kz1)(kz1 + kz2)]:
//   horizontal  Gh E/(2j kz1),   scalar  (Ge - k0^2 W) E/(2j kz1),   vertical  (kz1^2 W - Ge) E/(2j kz1),
//   each (1/2pi) Int . J0(kr rho) kr dkr,   mixed  (1/4pi) Int W E J1(kr rho) kr^2 dkr.
// Formulation: K. A. Michalski and D. Zheng, IEEE Trans. Antennas Propag. 38 (1990) 335, formulation C, for
// one interface (read in secondary accounts; derived anew in docs/theory/ground.md). Range: Z > 0, half-space
// with |eps| >= 1. Perfect ground and free space are the limits.
#include <complex>
#include <vector>

namespace loopwright::ground {

/// Ground part of the potentials' kernels [1/m]; exp(-j k0 R)/(4 pi R) is the free-space kernel they add to.
struct PotentialKernels {
    std::complex<double> horizontal, vertical, mixed, scalar;
};

/// What near fields need besides: derivatives of the kernels by rho and z [1/m^2]. The magnetic field uses
/// the true vector potential of a vertical current, `vertical_true` (K_zz = -Ge E/(2j kz1), no K_xz).
struct FieldKernels {
    PotentialKernels potential;
    std::complex<double> scalar_drho, scalar_dz, horizontal_drho, horizontal_dz, vertical_true_drho,
        mixed_drho, mixed_over_rho;
};

/// Direct evaluation: Gauss panels along the real axis of kz, graded towards k0 and the soil's own wave
/// number. Nodes are made once for all points with rho <= rho_max_m and Z >= z_min_m.
class HalfSpace {
public:
    /// wavenumber_rad_m: free-space k0 > 0. permittivity: complex relative, Im <= 0.
    /// fineness 1: relative error below about 1e-9 of 1/(4 pi R); 2 halves the panels (used by tests).
    /// Throws base::ProgramError for z_min_m <= 0 or a negative rho_max_m.
    HalfSpace(double wavenumber_rad_m, std::complex<double> permittivity, double rho_max_m, double z_min_m,
              double fineness = 1);

    /// For points between two distances only, cheaper by far where rho_min is large against Z: waves of short
    /// period cancel there whatever Z is, so the integral ends early with a smooth window. Half the window's
    /// width s in kr is 9/rho_min: its transform falls as exp(-(s rho/2)^2), 2e-9 at rho_min.
    /// rho_min_m = 0: no window, the exponential ends the integral. Relative error of the kernels and of
    /// their derivatives below about 1e-5. Throws base::ProgramError as above and for rho_min >= rho_max.
    struct Ring {
        double rho_min_m = 0, rho_max_m = 0;
    };
    HalfSpace(double wavenumber_rad_m, std::complex<double> permittivity, Ring ring, double z_min_m);

    [[nodiscard]] PotentialKernels potentials(double rho_m, double z_sum_m) const;
    [[nodiscard]] FieldKernels fields(double rho_m, double z_sum_m) const;
    [[nodiscard]] double wavenumber_rad_m() const noexcept { return k0_; }
    [[nodiscard]] std::complex<double> permittivity() const noexcept { return eps_; }

    /// One node of the integral: kr and kz1, with the weights of the four integrands (all factors but the
    /// Bessel function and E). What tables are built from.
    struct Node {
        double kr = 0;
        double kr_weight = 0; ///< kr dkr, real and positive
        std::complex<double> kz;
        std::complex<double> horizontal, vertical, mixed, scalar, vertical_true;
    };
    [[nodiscard]] const std::vector<Node>& nodes() const noexcept { return nodes_; }

private:
    /// How finely and how far the integral is taken.
    struct Plan {
        double finest = 0, widest = 0;    ///< panels [rad/m]
        double kappa_end = 0;             ///< of the waves that decay
        double window_at = 0, window = 0; ///< centre and half width of the window; 0: none
        double fineness = 1;
    };
    void make_nodes(const Plan& plan);
    void add_node(std::complex<double> kz, double kr, std::complex<double> weight);
    [[nodiscard]] std::vector<double> decaying_edges(const Plan& plan) const;

    double k0_;
    std::complex<double> eps_;
    std::vector<Node> nodes_;
};

} // namespace loopwright::ground
