#pragma once
// What the loop's currents send in one direction, frequency apart.
#include "geometry/vector3.hpp"
#include "loop/detail/currents.hpp"

#include <Eigen/Core>
#include <cstddef>

namespace loopwright::loop::detail {

/// The path as points with the current elements and charges that stand for its spans, as columns: see
/// NodeColumn. Elements: tangent times length [m]; charges: slope of the current times length. On a
/// reversible path the second half of the rows are the images of the first, in the same order.
struct Nodes {
    Eigen::ArrayXXd columns;
    bool images = false;
    [[nodiscard]] std::size_t size() const noexcept { return static_cast<std::size_t>(columns.rows()); }
};

/// Far field of the currents in one direction: int f (s . e) exp(j k n.r) ds [m] for two polarisations e, as
/// series in j k up to (k r)^5: 1e-4 of the field up to 0.4 wavelengths of conductor.
class FarDirection {
public:
    static constexpr std::size_t terms = 6;
    /// By polarisation, power of k, current; [m^(power + 1)].
    using Moments = std::array<double, 2 * terms * currents>;

    /// A unit vector, and what is known to be sent there.
    FarDirection(const geometry::Vector3& direction, const Moments& moments) noexcept
        : direction_(direction), moments_(moments) {}
    /// Places are measured from the origin of the nodes' coordinates.
    FarDirection(const geometry::Vector3& direction, const Nodes& nodes);
    /// |field|^2 [m^2], both polarisations together.
    [[nodiscard]] double power(double k_1_m, const CurrentVector& coefficients) const noexcept;
    [[nodiscard]] const geometry::Vector3& direction() const noexcept { return direction_; }

private:
    geometry::Vector3 direction_;
    Moments moments_{};
};

} // namespace loopwright::loop::detail
