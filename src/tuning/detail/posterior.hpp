#pragma once
// A linear model with normal priors, where the size of the noise and of the smooth part are known only by a
// prior of their own: sums over a grid of both, each member in closed form. docs/theory/calibration.md,
// (D5) to (D9).
#include <Eigen/Core>
#include <vector>

namespace loopwright::tuning::detail {

/// A value that a size may have, with its prior share; shares of one grid sum to 1.
struct Node {
    double value = 0;
    double share = 0;
};

/// Sizes of the two parts of the parameters, together: standard deviations multiply both columns.
struct SizeNode {
    double hardware = 1; ///< of the first columns, whose prior is standard normal
    double smooth = 0;   ///< of the columns from `smooth_from` on
    double share = 0;
};

struct Sizes {
    std::vector<Node> noise;
    std::vector<SizeNode> parts;
    Eigen::Index smooth_from = 0;
};

/// One member of a mixture of normal distributions.
struct Member {
    double weight = 0;
    double mean = 0;
    double deviation = 0; ///< of the quantity without its noise
    double noise = 0;     ///< standard deviation of one reading
};
using Mixture = std::vector<Member>;

/// Of y = J theta + noise: sums over the points, so that points come and go cheaply.
struct Sums {
    explicit Sums(Eigen::Index parameters);
    void add(const Eigen::VectorXd& row, double y, double sign);
    Eigen::MatrixXd jj;
    Eigen::VectorXd jy;
    double yy = 0;
    int count = 0;
};

/// The parameters after the points. Immutable.
class Posterior {
public:
    Posterior(const Sums& sums, const Sizes& sizes);
    /// Natural logarithm of the probability density of the points, sizes summed over.
    [[nodiscard]] double log_evidence() const { return log_evidence_; }
    [[nodiscard]] Eigen::VectorXd mean() const;
    /// Of row . theta.
    [[nodiscard]] Mixture of(const Eigen::VectorXd& row) const;
    /// What the other points say of point (row, y), which is among the sums: exact, by reweighting.
    [[nodiscard]] Mixture without(const Eigen::VectorXd& row, double y) const;
    /// Variances of the rows of `wanted` (one a column) after readings at the columns of `taken` (may be
    /// none) and one more at a column of `candidates`, averaged over the sizes: a row for each wanted, a
    /// column for each candidate; without candidates one column, after `taken` alone.
    [[nodiscard]] Eigen::MatrixXd variances_after(const Eigen::MatrixXd& wanted, const Eigen::MatrixXd& taken,
                                                  const Eigen::MatrixXd& candidates) const;
    /// Share of the last of Sizes::parts.
    [[nodiscard]] double last_part() const;
    /// The sizes of noise with their weights now.
    [[nodiscard]] std::vector<Node> noise() const;

private:
    struct Part {
        double weight, noise;
        bool last; ///< of Sizes::parts
        Eigen::VectorXd mean;
        Eigen::MatrixXd half; ///< covariance = half half^T
    };
    std::vector<Part> parts_;
    double log_evidence_ = 0;
};

/// Probability that the mixture lies below x; with_noise: of one more reading.
[[nodiscard]] double below(const Mixture& mixture, double x, bool with_noise);
[[nodiscard]] double mean_of(const Mixture& mixture);
/// Where `below` is p, 0 < p < 1.
[[nodiscard]] double quantile(const Mixture& mixture, double p, bool with_noise);
/// Logarithm of the density of one more reading at x.
[[nodiscard]] double log_density(const Mixture& mixture, double x);
/// Members of one mixture into another, weights multiplied.
void append(Mixture& to, const Mixture& from, double weight);
/// Without members that weigh next to nothing, weights summing to 1.
[[nodiscard]] Mixture pruned(Mixture mixture);

} // namespace loopwright::tuning::detail
