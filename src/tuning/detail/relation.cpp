#include "tuning/detail/relation.hpp"

#include "base/error.hpp"

#include <algorithm>
#include <array>
#include <cmath>
#include <utility>

namespace loopwright::tuning::detail {

using Eigen::Index;
using Eigen::VectorXd;

namespace {

// The smooth functions live on an interval wider than the dial by half a travel at each end, where they
// vanish: sines, as an expansion of a squared-exponential covariance (D4).
constexpr double margin = 0.5;
constexpr double interval = 1 + 2 * margin;

double inside(double position) {
    return std::clamp(position, -margin, 1 + margin);
}
double wave_number(Index k) {
    return static_cast<double>(k + 1) * M_PI / interval;
}
double amplitude(Index k, double length) {
    const double w = wave_number(k) * length;
    return std::sqrt(std::sqrt(2 * M_PI) * length * std::exp(-w * w / 2)) * std::sqrt(2 / interval);
}

// A normal distribution of the logarithm by nodes.
std::vector<Node> log_normal(double median, double factor, double step, double reach) {
    std::vector<Node> nodes;
    double sum = 0;
    for (double z = -reach; z <= reach + 1e-9; z += step) {
        nodes.push_back({median * std::pow(factor, z), std::exp(-z * z / 2)});
        sum += nodes.back().share;
    }
    for (Node& node : nodes) {
        node.share /= sum;
    }
    return nodes;
}

} // namespace

Relation::Relation(Hardware hardware) : hardware_(std::move(hardware)) {
    if (!std::isfinite(travel()) || travel() == 0 || !hardware_.needed || !hardware_.reading) {
        throw base::ProgramError("a dial without travel, or hardware without its law");
    }
}

std::optional<double> Relation::law_position(units::Frequency frequency, const VectorXd& theta) const {
    const auto asked = hardware_.needed(frequency);
    if (!asked) {
        return std::nullopt;
    }
    const HardwarePrior& prior = hardware_.prior;
    double rest_F = asked->value() * std::exp(-prior.inductance * theta[inductance_at]) -
                    hardware_.stray.value() - prior.stray.value() * theta[stray_at];
    double elastance = 0; // of those in series
    for (std::size_t i = 0; i < hardware_.fixed.size(); ++i) {
        const FixedCapacitor& fixed = hardware_.fixed[i];
        if (fixed.in_use && !fixed.in_use(frequency)) {
            continue;
        }
        const double value_F =
            fixed.capacitance.value() * std::exp(prior.added * theta[fixed_at + static_cast<Index>(i)]);
        if (fixed.in_series) {
            elastance += 1 / value_F;
        } else {
            rest_F -= value_F;
        }
    }
    constexpr double least_left = 0.02; // nearer to the series capacitor's own value no setting is told apart
    if (1 - rest_F * elastance < least_left) {
        return std::nullopt;
    }
    const double variable_F =
        rest_F / (1 - rest_F * elastance) * std::exp(-prior.capacitor * theta[capacitor_at]);
    return position_of(hardware_.reading(units::farads(variable_F)));
}

std::optional<double> Relation::position(units::Frequency frequency, const VectorXd& theta) const {
    const auto law = law_position(frequency, theta);
    if (!law) {
        return std::nullopt;
    }
    return *law + hardware_.prior.offset * theta[offset_at] + deviation(*law, theta);
}

// The physical parameters by central differences of the law, the others as they enter.
VectorXd Relation::row(units::Frequency frequency, const VectorXd& theta) const {
    constexpr double step = 1e-3;
    VectorXd row = VectorXd::Zero(parameters());
    VectorXd moved = theta;
    const double law = law_position(frequency, theta).value();
    const double stretch = 1 + deviation_slope(law, theta);
    for (Index k = 0; k < smooth_from(); ++k) {
        if (k == offset_at) {
            row[k] = hardware_.prior.offset;
            continue;
        }
        moved[k] = theta[k] + step;
        const double above = law_position(frequency, moved).value_or(law);
        moved[k] = theta[k] - step;
        const double below = law_position(frequency, moved).value_or(law);
        moved[k] = theta[k];
        row[k] = stretch * (above - below) / (2 * step);
    }
    row.tail(smooth_functions) = smooth(law, hardware_.prior.law_length);
    return row;
}

VectorXd Relation::smooth(double position, double length) {
    VectorXd values(smooth_functions);
    for (Index k = 0; k < smooth_functions; ++k) {
        values[k] = amplitude(k, length) * std::sin(wave_number(k) * (inside(position) + margin));
    }
    return values;
}

double Relation::deviation(double position, const VectorXd& theta) const {
    return smooth(position, hardware_.prior.law_length).dot(theta.tail(smooth_functions));
}

double Relation::deviation_slope(double position, const VectorXd& theta) const {
    if (inside(position) != position) {
        return 0;
    }
    double sum = 0;
    for (Index k = 0; k < smooth_functions; ++k) {
        sum += theta[smooth_from() + k] * amplitude(k, hardware_.prior.law_length) * wave_number(k) *
               std::cos(wave_number(k) * (position + margin));
    }
    return sum;
}

bool Relation::monotone(const VectorXd& theta) const {
    constexpr double least_slope = 0.05; // of the law's own
    constexpr int steps = 200;
    for (int i = 0; i <= steps; ++i) {
        if (1 + deviation_slope(-margin + interval * i / steps, theta) < least_slope) {
            return false;
        }
    }
    return true;
}

Sizes Relation::sizes() const {
    const HardwarePrior& prior = hardware_.prior;
    constexpr double factor = 2.5;
    constexpr double wide_law = 16; // times the median
    Sizes sizes;
    sizes.smooth_from = smooth_from();
    sizes.noise = log_normal(prior.reading_error, factor, 0.5, 3.5);
    for (const Node& node : log_normal(prior.law, factor, 1, 2)) {
        sizes.parts.push_back({1, node.value, node.share * (1 - prior.wide_share)});
    }
    if (prior.wide_share > 0) {
        sizes.parts.push_back({prior.wide, wide_law * prior.law, prior.wide_share});
    }
    return sizes;
}

} // namespace loopwright::tuning::detail
