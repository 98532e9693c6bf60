#pragma once
// Which points belong together: every point is mistaken with a stated probability, and a mistaken one may
// read anything on the dial. docs/theory/calibration.md, (D10) and (D11).
#include "tuning/detail/posterior.hpp"

#include <Eigen/Core>
#include <vector>

namespace loopwright::tuning::detail {

/// The points of a linearised relation: y = row . theta + noise, in travels.
struct Points {
    std::vector<Eigen::VectorXd> rows;
    std::vector<double> y;
};

/// A set of points that may be the right ones.
struct Hypothesis {
    std::vector<bool> used;
    double weight = 0;
    Posterior posterior;
};

struct SearchResult {
    std::vector<Hypothesis> hypotheses; ///< the best first; weights sum to 1
    std::vector<double> wrong;          ///< of each point: probability that it is mistaken
};

/// Climbs from the start given and from a robust fit (weights of Cauchy, iterated), by taking in or leaving
/// out one point at a time; keeps what is near the best. Leaves at least half of the points in (one alone may
/// go: then the model contradicts it). At least one point.
[[nodiscard]] SearchResult search(const Points& points, const Sizes& sizes, double wrong_share,
                                  const std::vector<bool>& start);

} // namespace loopwright::tuning::detail
