#include "tuning/calibration.hpp"
#include "tuning/detail/fit.hpp"

#include <algorithm>
#include <cmath>

namespace loopwright::tuning {
namespace {

using Eigen::VectorXd;

struct WantedRow {
    units::Frequency frequency;
    double position;
    VectorXd row;
};

std::vector<WantedRow> reached(const detail::Relation& relation, const detail::State& state,
                               const std::vector<units::Frequency>& frequencies) {
    std::vector<WantedRow> rows;
    for (const units::Frequency& frequency : frequencies) {
        const auto position = relation.position(frequency, state.theta);
        if (position && *position >= 0 && *position <= 1) {
            rows.push_back({frequency, *position, relation.row(frequency, state.theta)});
        }
    }
    return rows;
}

Eigen::MatrixXd columns(const std::vector<WantedRow>& rows, Eigen::Index parameters) {
    Eigen::MatrixXd matrix(parameters, static_cast<Eigen::Index>(rows.size()));
    for (std::size_t i = 0; i < rows.size(); ++i) {
        matrix.col(static_cast<Eigen::Index>(i)) = rows[i].row;
    }
    return matrix;
}

/// The intervals now times the roots of the ratios of variances: the shape of the distribution is taken to
/// stay, (D13).
class Outlook {
public:
    Outlook(const detail::Relation& relation, const detail::State& state,
            const std::vector<units::Frequency>& candidates, const std::vector<units::Frequency>& wanted)
        : relation_(relation), posterior_(state.hypotheses.front().posterior),
          candidates_(reached(relation, state, candidates)) {
        const std::vector<WantedRow> targets = reached(relation, state, wanted);
        wanted_ = columns(targets, relation.parameters());
        for (const WantedRow& target : targets) {
            const detail::Mixture mixture = state.of(target.row);
            widths_.push_back(std::abs(relation.travel()) * (detail::quantile(mixture, 0.975, false) -
                                                             detail::quantile(mixture, 0.025, false)));
        }
        const Eigen::MatrixXd none(relation.parameters(), 0);
        now_ = posterior_.variances_after(wanted_, none, none);
    }

    /// Every candidate behind the points taken, in the order of the candidates.
    [[nodiscard]] std::vector<NextPoint> after(const std::vector<WantedRow>& taken) const {
        std::vector<NextPoint> points;
        if (widths_.empty() || candidates_.empty()) {
            return points;
        }
        const Eigen::Index parameters = relation_.parameters();
        const Eigen::MatrixXd variances =
            posterior_.variances_after(wanted_, columns(taken, parameters), columns(candidates_, parameters));
        for (std::size_t k = 0; k < candidates_.size(); ++k) {
            points.push_back({candidates_[k].frequency, relation_.reading_of(candidates_[k].position), 0, 0});
            for (std::size_t i = 0; i < widths_.size(); ++i) {
                const auto row = static_cast<Eigen::Index>(i);
                const double share = 1.0 / static_cast<double>(widths_.size());
                const double ratio =
                    now_(row, 0) > 0 ? variances(row, static_cast<Eigen::Index>(k)) / now_(row, 0) : 1;
                points.back().width_now += share * widths_[i];
                points.back().width_after += share * widths_[i] * std::sqrt(ratio);
            }
        }
        return points;
    }
    [[nodiscard]] const std::vector<WantedRow>& candidates() const { return candidates_; }

private:
    const detail::Relation& relation_;
    const detail::Posterior& posterior_;
    std::vector<WantedRow> candidates_;
    Eigen::MatrixXd wanted_, now_;
    std::vector<double> widths_;
};

bool narrower(const NextPoint& a, const NextPoint& b) {
    return a.width_after < b.width_after;
}

} // namespace

std::vector<NextPoint> CalibratedDial::next_points(const std::vector<units::Frequency>& candidates,
                                                   const std::vector<units::Frequency>& wanted) const {
    std::vector<NextPoint> points = Outlook(fit_->relation, fit_->after, candidates, wanted).after({});
    std::stable_sort(points.begin(), points.end(), narrower);
    return points;
}

std::vector<NextPoint> CalibratedDial::plan(const std::vector<units::Frequency>& candidates,
                                            const std::vector<units::Frequency>& wanted, int count) const {
    const Outlook outlook(fit_->relation, fit_->after, candidates, wanted);
    std::vector<NextPoint> plan;
    std::vector<WantedRow> taken;
    for (int i = 0; i < count; ++i) {
        const std::vector<NextPoint> points = outlook.after(taken);
        if (points.empty()) {
            break;
        }
        const auto best = std::min_element(points.begin(), points.end(), narrower);
        plan.push_back(*best);
        taken.push_back(outlook.candidates()[static_cast<std::size_t>(best - points.begin())]);
    }
    return plan;
}

} // namespace loopwright::tuning
