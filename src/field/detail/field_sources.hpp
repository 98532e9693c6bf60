#pragma once
// A solved loop as short pieces of current and charge where they stand, and the field each piece makes.
#include "field/loop_field.hpp"
#include "geometry/vector3.hpp"
#include "ground/half_space.hpp"

#include <array>
#include <complex>
#include <vector>

namespace loopwright::field::detail {

struct Source {
    std::array<double, 3> position_m;
    std::array<std::complex<double>, 3> moment_A_m; ///< I t dl
    std::complex<double> charge_current_A;          ///< dI/ds dl
};

/// Places on an element of Gauss's rule with four points, 0 to 1.
inline constexpr std::array<double, 4> gauss_places_of_four{0.06943184420297371, 0.33000947820757187,
                                                            0.66999052179242813, 0.93056815579702629};

/// points: of Gauss's rule on each element, 2, 4 or 8; order of the mesh's elements, their points together.
/// Throws base::ProgramError for another number.
[[nodiscard]] std::vector<Source> sources_of(const loop::SolvedLoop& loop, int points);

/// Over perfect ground every kernel is an image's: -g for horizontal currents and charges, +g for vertical.
[[nodiscard]] ground::FieldKernels image_kernels(double k_rad_m, double rho_m, double z_sum_m);

/// What the ground adds for one source, kernels at (rho, Z) of source and point.
void add_ground_part(Field& field, const Source& source, const std::array<double, 3>& point_m,
                     const ground::FieldKernels& kernels, double k_rad_m);

/// From the mesh's own coordinates to those of the site.
[[nodiscard]] geometry::Vector3 turned(const geometry::Frame& stand, const geometry::Vector3& v);

/// The free-space part at a point of the site, by the mesh's own quadrature (wire::near_field).
[[nodiscard]] Field free_space_part(const loop::SolvedLoop& loop, const std::array<double, 3>& point_m);

} // namespace loopwright::field::detail
