#pragma once
// The state of a calibration: what the figures are read from.
#include "tuning/calibration.hpp"
#include "tuning/detail/relation.hpp"
#include "tuning/detail/subset_search.hpp"

#include <utility>
#include <vector>

namespace loopwright::tuning {

namespace detail {

/// Ends of a 95 % interval, as probabilities.
inline constexpr double low_tail = 0.025;
inline constexpr double high_tail = 0.975;

/// Parameters as the figures are linearised about, and what is known of them.
struct State {
    Eigen::VectorXd theta;
    std::vector<Hypothesis> hypotheses;

    [[nodiscard]] Mixture of(const Eigen::VectorXd& row) const;
    [[nodiscard]] Eigen::VectorXd mean() const;
};

[[nodiscard]] State state_without_points(const Relation& relation, const Sizes& sizes);

/// The dial for a frequency in a state, (D12).
[[nodiscard]] std::optional<DialFigure> figure(const Relation& relation, const State& state,
                                               units::Frequency frequency);

[[nodiscard]] std::vector<FittedPart> fitted_parts(const Relation& relation, const State& before,
                                                   const State& after);

/// What the search made of a point: whether the best hypothesis has it, and how probably it is mistaken.
struct Verdict {
    bool used = true;
    double wrong = 0;
};

/// Verdict and sentence of a point the model answers for; other: what the others say of it.
[[nodiscard]] JudgedPoint judged(const Relation& relation, const State& state, const Mixture& others,
                                 const design::CalibrationPoint& point, const Verdict& verdict,
                                 std::size_t other_points);

/// other_hardware: share of the hypothesis that the hardware is far from its file.
[[nodiscard]] base::Notices calibration_notices(const std::vector<JudgedPoint>& points, bool held_monotone,
                                                double other_hardware);

} // namespace detail

struct CalibratedDial::Fit {
    explicit Fit(detail::Relation made) : relation(std::move(made)) {}
    detail::Relation relation;
    detail::State before, after;
    std::vector<JudgedPoint> points;
    std::vector<FittedPart> parts;
    base::Notices notices;
};

} // namespace loopwright::tuning
