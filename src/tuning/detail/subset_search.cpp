#include "tuning/detail/subset_search.hpp"

#include <Eigen/Cholesky>
#include <algorithm>
#include <cmath>
#include <limits>
#include <numeric>
#include <utility>

namespace loopwright::tuning::detail {
namespace {

using Eigen::Index;
using Eigen::MatrixXd;
using Eigen::VectorXd;
using Set = std::vector<bool>;

constexpr std::size_t most_hypotheses = 6;
constexpr double negligible = 0.01; ///< of the best hypothesis

std::size_t size_of(const Set& used) {
    return static_cast<std::size_t>(std::count(used.begin(), used.end(), true));
}

/// At least half stay in; one alone is held against the model.
std::size_t fewest(std::size_t points) {
    return points <= 1 ? 0 : points - points / 2;
}

double median(std::vector<double> values) {
    const auto middle = values.begin() + static_cast<std::ptrdiff_t>(values.size() / 2);
    std::nth_element(values.begin(), middle, values.end());
    return *middle;
}

class Search {
public:
    Search(const Points& points, const Sizes& sizes, double wrong_share)
        : points_(points), sizes_(sizes), parameters_(points.rows.front().size()),
          log_odds_(std::log(wrong_share / (1 - wrong_share))) {}

    struct Candidate {
        Set used;
        double log_weight;
        Posterior posterior;
    };

    [[nodiscard]] Candidate weighed(Set used) const {
        Sums sums(parameters_);
        for (std::size_t i = 0; i < used.size(); ++i) {
            if (used[i]) {
                sums.add(points_.rows[i], points_.y[i], 1);
            }
        }
        Posterior posterior(sums, sizes_);
        const auto out = static_cast<double>(used.size() - size_of(used));
        const double log_weight = posterior.log_evidence() + out * log_odds_;
        return {std::move(used), log_weight, std::move(posterior)};
    }

    /// What changing the place of one point does to the logarithm of the weight.
    [[nodiscard]] double gain(const Candidate& from, std::size_t i) const {
        const auto& row = points_.rows[i];
        const double y = points_.y[i];
        if (!from.used[i]) {
            return log_density(from.posterior.of(row), y) - log_odds_;
        }
        if (size_of(from.used) <= fewest(points_.y.size())) {
            return std::numeric_limits<double>::lowest();
        }
        return log_odds_ - log_density(from.posterior.without(row, y), y);
    }

    [[nodiscard]] std::vector<double> gains(const Candidate& from) const {
        std::vector<double> all(points_.y.size());
        for (std::size_t i = 0; i < all.size(); ++i) {
            all[i] = gain(from, i);
        }
        return all;
    }

    [[nodiscard]] Candidate climbed(Set start) const {
        Candidate best = weighed(std::move(start));
        for (std::size_t step = 0; step < 2 * points_.y.size(); ++step) {
            const std::vector<double> all = gains(best);
            const auto most = std::max_element(all.begin(), all.end());
            if (most == all.end() || !(*most > 1e-9)) {
                break;
            }
            Set used = best.used;
            const auto i = static_cast<std::size_t>(most - all.begin());
            used[i] = !used[i];
            Candidate next = weighed(std::move(used));
            if (!(next.log_weight > best.log_weight)) {
                break;
            }
            best = std::move(next);
        }
        return best;
    }

    [[nodiscard]] Set robust_start() const;

private:
    const Points& points_;
    const Sizes& sizes_;
    Index parameters_;
    double log_odds_;
};

// A fit in which a far point weighs little (Cauchy's weights), with middling sizes.
Set Search::robust_start() const {
    const std::size_t n = points_.y.size();
    const Index parameters = points_.rows.front().size();
    const SizeNode& part = sizes_.parts[sizes_.parts.size() / 2];
    const double least_scatter = sizes_.noise[sizes_.noise.size() / 2].value;
    VectorXd precision = VectorXd::Constant(parameters, 1 / (part.hardware * part.hardware));
    precision.tail(parameters - sizes_.smooth_from)
        .setConstant(1 / std::max(part.smooth * part.smooth, 1e-12));
    std::vector<double> weight(n, 1), misfit(n);
    double scatter = least_scatter;
    for (int pass = 0; pass < 8; ++pass) {
        MatrixXd normal = precision.asDiagonal();
        VectorXd right = VectorXd::Zero(parameters);
        for (std::size_t i = 0; i < n; ++i) {
            const double w = weight[i] / (scatter * scatter);
            normal.noalias() += w * points_.rows[i] * points_.rows[i].transpose();
            right += w * points_.y[i] * points_.rows[i];
        }
        const VectorXd theta = normal.ldlt().solve(right);
        for (std::size_t i = 0; i < n; ++i) {
            misfit[i] = std::abs(points_.y[i] - points_.rows[i].dot(theta));
        }
        scatter = std::max(least_scatter, 1.4826 * median(misfit)); // of a normal distribution
        for (std::size_t i = 0; i < n; ++i) {
            const double z = misfit[i] / (2.385 * scatter); // Cauchy's weight, 95 % efficient
            weight[i] = 1 / (1 + z * z);
        }
    }
    std::vector<std::size_t> order(n);
    std::iota(order.begin(), order.end(), std::size_t{0});
    std::sort(order.begin(), order.end(), [&](auto a, auto b) { return misfit[a] < misfit[b]; });
    Set used(n, false);
    for (std::size_t k = 0; k < n; ++k) {
        used[order[k]] = k < fewest(n) || misfit[order[k]] < 4 * scatter;
    }
    return used;
}

/// What lies near the best: one point moved, and from the likeliest of those another.
class Neighbourhood {
public:
    Neighbourhood(const Search& search, Search::Candidate best) : search_(search) {
        seen_.emplace_back(best.used, best.log_weight);
        top_ = best.log_weight;
        candidates_.push_back(std::move(best));
        for (std::size_t k = 0; k < candidates_.size(); ++k) {
            look_around(k);
        }
    }
    [[nodiscard]] SearchResult result() &&;

private:
    void look_around(std::size_t k);
    const Search& search_;
    double top_ = 0;
    std::vector<Search::Candidate> candidates_;
    std::vector<std::pair<Set, double>> seen_;
};

void Neighbourhood::look_around(std::size_t k) {
    constexpr double forgotten = 30; // of a logarithm: adds nothing to any share
    const std::vector<double> gains = search_.gains(candidates_[k]);
    std::vector<std::pair<double, Set>> further;
    for (std::size_t i = 0; i < gains.size(); ++i) {
        const double log_weight = candidates_[k].log_weight + gains[i];
        if (!(log_weight > top_ - forgotten)) {
            continue;
        }
        Set used = candidates_[k].used;
        used[i] = !used[i];
        if (std::any_of(seen_.begin(), seen_.end(), [&](const auto& each) { return each.first == used; })) {
            continue;
        }
        seen_.emplace_back(used, log_weight);
        if (log_weight > top_ + std::log(negligible)) {
            further.emplace_back(log_weight, std::move(used));
        }
    }
    std::sort(further.begin(), further.end(), [](const auto& a, const auto& b) { return a.first > b.first; });
    for (auto& each : further) {
        if (candidates_.size() < most_hypotheses) {
            candidates_.push_back(search_.weighed(std::move(each.second)));
        }
    }
}

SearchResult Neighbourhood::result() && {
    SearchResult result;
    result.wrong.assign(candidates_.front().used.size(), 0);
    double total = 0;
    for (const auto& [used, log_weight] : seen_) {
        const double weight = std::exp(log_weight - top_);
        total += weight;
        for (std::size_t i = 0; i < used.size(); ++i) {
            result.wrong[i] += used[i] ? 0 : weight;
        }
    }
    for (double& each : result.wrong) {
        each /= total;
    }
    double kept = 0;
    for (const auto& each : candidates_) {
        kept += std::exp(each.log_weight - top_);
    }
    for (auto& each : candidates_) {
        const double weight = std::exp(each.log_weight - top_) / kept;
        result.hypotheses.push_back({std::move(each.used), weight, std::move(each.posterior)});
    }
    return result;
}

} // namespace

SearchResult search(const Points& points, const Sizes& sizes, double wrong_share, const Set& start) {
    const Search all(points, sizes, wrong_share);
    Search::Candidate best = all.climbed(start);
    if (points.y.size() > 2) {
        if (Set robust = all.robust_start(); robust != start && robust != best.used) {
            Search::Candidate other = all.climbed(std::move(robust));
            if (other.log_weight > best.log_weight) {
                best = std::move(other);
            }
        }
    }
    return Neighbourhood(all, std::move(best)).result();
}

} // namespace loopwright::tuning::detail
