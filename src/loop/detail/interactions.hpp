#pragma once
// Static interactions of all spans of a path.
#include "loop/detail/spans.hpp"

#include <Eigen/Core>

namespace loopwright::loop::detail {

/// Double integrals over pairs of spans [m]. On a reversible path rows and columns are those of the first
/// half: the scalar ones for charges that are opposite on the second half, the vector ones for currents that
/// are equal there.
struct Interactions {
    Eigen::MatrixXd scalar_m, vector_m;
};

/// What StaticInteraction gives pair by pair, to 1e-11 of the largest: pairs well apart are summed by rows.
[[nodiscard]] Interactions interactions(const geometry::WirePath& path, const std::vector<Span>& spans,
                                        double radius_m);

} // namespace loopwright::loop::detail
