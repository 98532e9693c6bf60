#include "tuning/calibration.hpp"

#include "base/error.hpp"
#include "numeric/roots.hpp"
#include "tuning/detail/fit.hpp"
#include "units/text.hpp"

#include <algorithm>
#include <cmath>
#include <utility>

namespace loopwright::tuning {
namespace {

using detail::Mixture;
using detail::Points;
using detail::Relation;
using detail::Sizes;
using detail::State;
using Eigen::VectorXd;

constexpr std::size_t most_points = 1000;

void check(const std::vector<design::CalibrationPoint>& points) {
    if (points.size() > most_points) {
        throw base::InputError("calibration.points", std::to_string(points.size()), "at most 1000 points");
    }
    for (std::size_t i = 0; i < points.size(); ++i) {
        const double f = points[i].frequency.value.value();
        const std::string where = "calibration.points[" + std::to_string(i) + "]";
        if (!std::isfinite(points[i].reading)) {
            throw base::InputError(where + ".reading", "not a number", "a finite reading");
        }
        if (!(f > 0) || !std::isfinite(f)) {
            throw base::InputError(where + ".frequency", units::trimmed(points[i].frequency.text),
                                   "a frequency above 0");
        }
    }
}

/// The fit of the points that the model answers for: linearised, searched, linearised again (Gauss-Newton).
class Fitting {
public:
    Fitting(const Relation& relation, Sizes sizes, std::vector<design::CalibrationPoint> points)
        : relation_(relation), sizes_(std::move(sizes)), points_(std::move(points)) {}

    /// Nothing is left of the law's deviation where the dial would not rise otherwise.
    [[nodiscard]] bool run() {
        const std::vector<detail::SizeNode> all = sizes_.parts;
        bool held = false;
        iterate();
        while (!relation_.monotone(state_.theta) && !sizes_.parts.empty()) {
            held = true;
            const auto largest =
                std::max_element(sizes_.parts.begin(), sizes_.parts.end(),
                                 [](const auto& a, const auto& b) { return a.smooth < b.smooth; });
            if (sizes_.parts.size() > 1) {
                sizes_.parts.erase(largest);
            } else {
                largest->smooth = 0;
            }
            iterate();
        }
        return held;
    }
    [[nodiscard]] const State& state() const { return state_; }
    [[nodiscard]] const std::vector<double>& wrong() const { return wrong_; }
    [[nodiscard]] Mixture others(std::size_t i) const {
        const detail::Hypothesis& best = state_.hypotheses.front();
        return best.used[i] ? best.posterior.without(linear_.rows[i], linear_.y[i])
                            : best.posterior.of(linear_.rows[i]);
    }
    /// What a reading of others() is, as a position.
    [[nodiscard]] double shift(std::size_t i) const {
        return relation_.position_of(points_[i].reading) - linear_.y[i];
    }

private:
    void linearise() {
        linear_ = {};
        for (const design::CalibrationPoint& point : points_) {
            const units::Frequency f = point.frequency.value;
            const VectorXd row = relation_.row(f, state_.theta);
            const double here = relation_.position(f, state_.theta).value();
            linear_.y.push_back(relation_.position_of(point.reading) - here + row.dot(state_.theta));
            linear_.rows.push_back(row);
        }
    }
    void iterate() {
        state_.theta = VectorXd::Zero(relation_.parameters());
        std::vector<bool> start(points_.size(), true);
        constexpr int most_passes = 8;
        for (int pass = 0; pass < most_passes; ++pass) {
            linearise();
            detail::SearchResult found =
                detail::search(linear_, sizes_, relation_.hardware().prior.wrong_point, start);
            state_.hypotheses = std::move(found.hypotheses);
            wrong_ = std::move(found.wrong);
            start = state_.hypotheses.front().used;
            const VectorXd step = state_.mean() - state_.theta;
            if (!take(step)) {
                break;
            }
        }
    }
    /// Whether the step was worth another pass. Long steps are cut: the law may bend.
    [[nodiscard]] bool take(const VectorXd& step) {
        constexpr double longest = 4;   // prior deviations
        constexpr double enough = 1e-3; // likewise
        const double length = step.head(relation_.smooth_from()).cwiseAbs().maxCoeff();
        VectorXd next = state_.theta + std::min(1.0, longest / std::max(length, 1e-12)) * step;
        // A step that leaves what the capacitors can be set to is halved until every point has its reading.
        for (int half = 0; half < 20 && !answers(next); ++half) {
            next = (next + state_.theta) / 2;
        }
        if (answers(next)) {
            state_.theta = next;
        }
        return step.cwiseAbs().maxCoeff() > enough;
    }
    [[nodiscard]] bool answers(const VectorXd& theta) const {
        return std::all_of(points_.begin(), points_.end(), [&](const design::CalibrationPoint& point) {
            return relation_.position(point.frequency.value, theta).has_value();
        });
    }

    const Relation& relation_;
    Sizes sizes_;
    std::vector<design::CalibrationPoint> points_;
    State state_;
    Points linear_;
    std::vector<double> wrong_;
};

JudgedPoint unanswered(const design::CalibrationPoint& point) {
    JudgedPoint judged;
    judged.point = point;
    judged.used = false;
    judged.outside_model = true;
    judged.reason = "not used: the model gives no setting of the capacitor for this frequency";
    return judged;
}

void fit_points(CalibratedDial::Fit& fit, const std::vector<design::CalibrationPoint>& points) {
    const Relation& relation = fit.relation;
    std::vector<design::CalibrationPoint> answered;
    for (const design::CalibrationPoint& point : points) {
        if (relation.position(point.frequency.value, fit.before.theta)) {
            answered.push_back(point);
        }
    }
    fit.after = fit.before;
    bool held = false;
    std::optional<Fitting> fitting;
    if (!answered.empty()) {
        fitting.emplace(relation, relation.sizes(), answered);
        held = fitting->run();
        fit.after = fitting->state();
    }
    std::size_t i = 0;
    for (const design::CalibrationPoint& point : points) {
        if (!relation.position(point.frequency.value, fit.before.theta)) {
            fit.points.push_back(unanswered(point));
            continue;
        }
        Mixture others = fitting->others(i);
        for (detail::Member& member : others) {
            member.mean += fitting->shift(i);
        }
        const auto& used = fit.after.hypotheses.front().used;
        const auto count = static_cast<std::size_t>(std::count(used.begin(), used.end(), true));
        fit.points.push_back(detail::judged(relation, fit.after, others, point,
                                            {used[i], fitting->wrong()[i]}, used[i] ? count - 1 : count));
        ++i;
    }
    const double wide =
        relation.hardware().prior.wide_share > 0 ? fit.after.hypotheses.front().posterior.last_part() : 0;
    fit.notices = detail::calibration_notices(fit.points, held, wide);
}

} // namespace

CalibratedDial::CalibratedDial(std::shared_ptr<const Fit> fit) : fit_(std::move(fit)) {}

CalibratedDial calibrate(const Hardware& hardware, const std::vector<design::CalibrationPoint>& points) {
    check(points);
    auto fit = std::make_shared<CalibratedDial::Fit>(Relation(hardware));
    fit->before = detail::state_without_points(fit->relation, fit->relation.sizes());
    fit_points(*fit, points);
    fit->parts = detail::fitted_parts(fit->relation, fit->before, fit->after);
    return CalibratedDial(std::move(fit));
}

std::optional<DialFigure> CalibratedDial::at(units::Frequency frequency) const {
    return detail::figure(fit_->relation, fit_->after, frequency);
}

std::optional<DialFigure> CalibratedDial::predicted(units::Frequency frequency) const {
    return detail::figure(fit_->relation, fit_->before, frequency);
}

std::optional<units::Frequency>
CalibratedDial::frequency_at(double reading, units::Interval<units::Frequency> between) const {
    const double low = std::max(between.low.value(), fit_->relation.hardware().frequencies.low.value());
    const double high = std::min(between.high.value(), fit_->relation.hardware().frequencies.high.value());
    const double wanted = fit_->relation.position_of(reading);
    const auto excess = [&](double f) {
        // Where no setting is found (beyond what a series capacitor leaves) the need is for more capacitance.
        return fit_->relation.position(units::hertz(f), fit_->after.theta).value_or(1e6) - wanted;
    };
    if (!(high > low) || excess(low) < 0 || excess(high) > 0) {
        return std::nullopt;
    }
    return units::hertz(numeric::bracketed_root(excess, low, high));
}

const std::vector<JudgedPoint>& CalibratedDial::points() const {
    return fit_->points;
}
std::size_t CalibratedDial::used_points() const {
    return static_cast<std::size_t>(std::count_if(fit_->points.begin(), fit_->points.end(),
                                                  [](const JudgedPoint& point) { return point.used; }));
}
const std::vector<FittedPart>& CalibratedDial::parts() const {
    return fit_->parts;
}
const base::Notices& CalibratedDial::notices() const {
    return fit_->notices;
}

} // namespace loopwright::tuning
