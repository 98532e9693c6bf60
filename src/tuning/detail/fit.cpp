#include "tuning/detail/fit.hpp"

#include <algorithm>
#include <cmath>

namespace loopwright::tuning::detail {

using Eigen::Index;
using Eigen::VectorXd;

namespace {

/// Change of the position with frequency [1/Hz].
double slope(const Relation& relation, const State& state, units::Frequency frequency) {
    constexpr double step = 1e-5;
    const units::Interval<units::Frequency> range = relation.hardware().frequencies;
    const auto low = std::max(frequency * (1 - step), range.low);
    const auto high = std::min(frequency * (1 + step), range.high);
    const auto below = relation.position(low, state.theta);
    const auto above = relation.position(high, state.theta);
    return below && above && high > low ? (*above - *below) / (high - low).value() : 0.0;
}

} // namespace

Mixture State::of(const VectorXd& row) const {
    Mixture mixture;
    for (const Hypothesis& each : hypotheses) {
        append(mixture, each.posterior.of(row), each.weight);
    }
    return pruned(std::move(mixture));
}

VectorXd State::mean() const {
    VectorXd sum = VectorXd::Zero(theta.size());
    for (const Hypothesis& each : hypotheses) {
        sum += each.weight * each.posterior.mean();
    }
    return sum;
}

State state_without_points(const Relation& relation, const Sizes& sizes) {
    State state;
    state.theta = VectorXd::Zero(relation.parameters());
    state.hypotheses.push_back({{}, 1, Posterior(Sums(relation.parameters()), sizes)});
    return state;
}

std::optional<DialFigure> figure(const Relation& relation, const State& state, units::Frequency frequency) {
    const auto position = relation.position(frequency, state.theta);
    if (!position) {
        return std::nullopt;
    }
    const VectorXd row = relation.row(frequency, state.theta);
    const Mixture mixture = state.of(row);
    const double shift = *position - row.dot(state.theta);
    const double one = std::min(*position, shift + quantile(mixture, low_tail, false));
    const double other = std::max(*position, shift + quantile(mixture, high_tail, false));
    DialFigure result;
    result.reading = relation.reading_of(*position);
    const double a = relation.reading_of(one), b = relation.reading_of(other);
    result.range = {std::min(a, b), std::max(a, b)};
    const double per_Hz = slope(relation, state, frequency);
    result.reading_per_Hz = per_Hz * relation.travel();
    if (per_Hz != 0) {
        const double f = frequency.value();
        const double e1 = f - (other - *position) / per_Hz, e2 = f - (one - *position) / per_Hz;
        result.frequency_range = {units::hertz(std::max(0.0, std::min(e1, e2))),
                                  units::hertz(std::max(e1, e2))};
    }
    result.within_stops = *position >= 0 && *position <= 1;
    return result;
}

} // namespace loopwright::tuning::detail
