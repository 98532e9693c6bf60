#pragma once
// What the loop's currents send in one direction, frequency apart.
#include "geometry/vector3.hpp"
#include "loop/detail/currents.hpp"

#include <vector>

namespace loopwright::loop::detail {

/// The path as points with the current elements and charges that stand for its spans.
struct Nodes {
    std::vector<geometry::Vector3> point, current;           ///< current: tangent times length [m]
    std::array<std::vector<double>, currents> shape, charge; ///< charge: slope of the shape times length
};

/// Far field of the currents in one direction: int f (s . e) exp(j k n.r) ds [m] for two polarisations e, as
/// series in j k up to (k r)^5: 1e-4 of the field up to 0.4 wavelengths of conductor.
class FarDirection {
public:
    FarDirection(const geometry::Vector3& direction, const geometry::Vector3& centre, const Nodes& nodes);
    /// |field|^2 [m^2], both polarisations together.
    [[nodiscard]] double power(double k_1_m, const CurrentVector& coefficients) const noexcept;
    [[nodiscard]] const geometry::Vector3& direction() const noexcept { return direction_; }

private:
    static constexpr std::size_t terms = 6;
    geometry::Vector3 direction_;
    // [polarisation][power of k][current]
    std::array<std::array<std::array<double, currents>, terms>, 2> moments_{};
};

} // namespace loopwright::loop::detail
