#include "tuning/calibration.hpp"
#include "tuning/detail/fit.hpp"

#include <algorithm>
#include <cmath>

namespace loopwright::tuning {
namespace {

using Eigen::VectorXd;

struct Row {
    units::Frequency frequency;
    double position;
    VectorXd row;
};

std::vector<Row> reached(const detail::Relation& relation, const detail::State& state,
                         const std::vector<units::Frequency>& frequencies) {
    std::vector<Row> rows;
    for (const units::Frequency& frequency : frequencies) {
        const auto position = relation.position(frequency, state.theta);
        if (position && *position >= 0 && *position <= 1) {
            rows.push_back({frequency, *position, relation.row(frequency, state.theta)});
        }
    }
    return rows;
}

} // namespace

// The interval now times the root of the ratio of variances: the posterior's shape is kept, (D13).
std::vector<NextPoint> CalibratedDial::next_points(const std::vector<units::Frequency>& candidates,
                                                   const std::vector<units::Frequency>& wanted) const {
    const detail::Relation& relation = fit_->relation;
    const detail::State& state = fit_->after;
    const std::vector<Row> targets = reached(relation, state, wanted);
    if (targets.empty()) {
        return {};
    }
    std::vector<double> width;
    for (const Row& target : targets) {
        const detail::Mixture mixture = state.of(target.row);
        width.push_back(std::abs(relation.travel()) *
                        (detail::quantile(mixture, 0.975, false) - detail::quantile(mixture, 0.025, false)));
    }
    const detail::Posterior& posterior = state.hypotheses.front().posterior;
    std::vector<NextPoint> result;
    for (const Row& candidate : reached(relation, state, candidates)) {
        NextPoint next{candidate.frequency, relation.reading_of(candidate.position), 0, 0};
        for (std::size_t i = 0; i < targets.size(); ++i) {
            const auto narrowing = posterior.narrowing(candidate.row, targets[i].row);
            const double ratio = narrowing.now > 0 ? std::max(0.0, narrowing.after / narrowing.now) : 1;
            next.width_now += width[i] / static_cast<double>(targets.size());
            next.width_after += width[i] * std::sqrt(ratio) / static_cast<double>(targets.size());
        }
        result.push_back(next);
    }
    std::stable_sort(result.begin(), result.end(),
                     [](const NextPoint& a, const NextPoint& b) { return a.width_after < b.width_after; });
    return result;
}

} // namespace loopwright::tuning
