#include "tuning/detail/fit.hpp"
#include "units/text.hpp"

#include <algorithm>
#include <array>
#include <cmath>
#include <cstdio>
#include <string>

namespace loopwright::tuning::detail {

using Eigen::Index;
using Eigen::VectorXd;

namespace {

const char* counted(std::size_t number) {
    static const std::array<const char*, 11> words{"no",  "one",   "two",   "three", "four", "five",
                                                   "six", "seven", "eight", "nine",  "ten"};
    return number < words.size() ? words.at(number) : nullptr;
}

std::string others_text(std::size_t other_points) {
    if (other_points == 0) {
        return "what the model alone says";
    }
    if (other_points == 1) {
        return "what the other point and the model say";
    }
    const char* word = counted(other_points);
    return "what the other " + (word != nullptr ? std::string(word) : std::to_string(other_points)) + " say";
}

std::string times_text(double times) {
    std::array<char, 32> text{};
    const int length = std::snprintf(text.data(), text.size(), times < 2.95 ? "%.1f" : "%.0f", times);
    return {text.data(), static_cast<std::size_t>(length)};
}

struct Wanted {
    PartKind kind;
    std::string key, name;
    Index place;
    double assumed;
    double per_unit;   ///< of the whitened parameter
    bool of_logarithm; ///< value = assumed exp(per_unit theta), else assumed + per_unit theta
};

FittedPart part_of(const Wanted& wanted, const State& before, const State& after) {
    const VectorXd row = VectorXd::Unit(after.theta.size(), wanted.place);
    const Mixture mixture = after.of(row);
    const Mixture prior = before.of(row);
    const auto value = [&](double theta) {
        return wanted.of_logarithm ? wanted.assumed * std::exp(wanted.per_unit * theta)
                                   : wanted.assumed + wanted.per_unit * theta;
    };
    const double low = quantile(mixture, low_tail, false), high = quantile(mixture, high_tail, false);
    FittedPart part{wanted.kind, wanted.key, wanted.name, wanted.assumed, value(mean_of(mixture)), {}, false};
    part.range = {std::min(value(low), value(high)), std::max(value(low), value(high))};
    part.told = high - low < 0.5 * (quantile(prior, high_tail, false) - quantile(prior, low_tail, false));
    return part;
}

/// The greatest deviation of the law, in readings.
FittedPart law_part(const Relation& relation, const State& before, const State& after) {
    double place = 0, most = -1;
    constexpr int steps = 50;
    for (int i = 0; i <= steps; ++i) {
        const double size = std::abs(relation.deviation(static_cast<double>(i) / steps, after.theta));
        if (size > most) {
            most = size;
            place = static_cast<double>(i) / steps;
        }
    }
    VectorXd row = VectorXd::Zero(after.theta.size());
    row.tail(smooth_functions) = Relation::smooth(place, relation.hardware().prior.law_length);
    const Mixture mixture = after.of(row);
    const Mixture prior = before.of(row);
    const double travel = relation.travel();
    const double low = quantile(mixture, low_tail, false), high = quantile(mixture, high_tail, false);
    FittedPart part{PartKind::law,
                    "law_deviation",
                    "Greatest deviation from the law, in readings",
                    0,
                    travel * mean_of(mixture),
                    {},
                    false};
    part.range = {std::min(travel * low, travel * high), std::max(travel * low, travel * high)};
    part.told = high - low < 0.5 * (quantile(prior, high_tail, false) - quantile(prior, low_tail, false));
    return part;
}

double share_place(const std::vector<Node>& nodes, double share) {
    double sum = 0;
    for (const Node& node : nodes) {
        sum += node.share;
        if (sum >= share) {
            return node.value;
        }
    }
    return nodes.back().value;
}

FittedPart error_part(const Relation& relation, const State& before, const State& after) {
    const double travel = std::abs(relation.travel());
    const auto now = after.hypotheses.front().posterior.noise();
    const auto prior = before.hypotheses.front().posterior.noise();
    double log_mean = 0, weights = 0;
    for (const Node& node : now) {
        log_mean += node.share * std::log(node.value);
        weights += node.share;
    }
    FittedPart part{PartKind::reading_error,
                    "reading_error",
                    "Scatter of one reading (standard deviation)",
                    travel * relation.hardware().prior.reading_error,
                    travel * std::exp(log_mean / weights),
                    {travel * share_place(now, low_tail), travel * share_place(now, high_tail * weights)},
                    false};
    const double before_ratio = share_place(prior, high_tail) / share_place(prior, low_tail);
    part.told = std::log(part.range.high / part.range.low) < 0.5 * std::log(before_ratio);
    return part;
}

} // namespace

std::vector<FittedPart> fitted_parts(const Relation& relation, const State& before, const State& after) {
    const Hardware& hardware = relation.hardware();
    const HardwarePrior& prior = hardware.prior;
    std::vector<Wanted> wanted{
        {PartKind::stray, "stray_F", "Stray capacitance", stray_at, hardware.stray.value(),
         prior.stray.value(), false},
        {PartKind::inductance, "inductance_factor", "Inductance of the loop, times the model's",
         inductance_at, 1, prior.inductance, true},
        {PartKind::capacitor, "capacitor_factor", "Variable capacitor, times what the file says",
         capacitor_at, 1, prior.capacitor, true},
        {PartKind::offset, "dial_offset", "The pointer sits off by, in readings", offset_at, 0,
         prior.offset * relation.travel(), false}};
    for (std::size_t i = 0; i < hardware.fixed.size(); ++i) {
        wanted.push_back({PartKind::fixed, "fixed_" + std::to_string(i + 1) + "_F", hardware.fixed[i].name,
                          fixed_at + static_cast<Index>(i), hardware.fixed[i].capacitance.value(),
                          prior.added, true});
    }
    std::vector<FittedPart> parts;
    parts.reserve(wanted.size() + 2);
    for (const Wanted& each : wanted) {
        parts.push_back(part_of(each, before, after));
    }
    parts.push_back(law_part(relation, before, after));
    parts.push_back(error_part(relation, before, after));
    return parts;
}

JudgedPoint judged(const Relation& relation, const State& state, const Mixture& others,
                   const design::CalibrationPoint& point, const Verdict& verdict, std::size_t other_points) {
    JudgedPoint result;
    result.point = point;
    result.used = verdict.used;
    result.wrong = verdict.wrong;
    const double read = relation.position_of(point.reading);
    const double expected = quantile(others, 0.5, true);
    const double scatter = (quantile(others, 0.8413, true) - quantile(others, 0.1587, true)) / 2;
    result.expected_reading = relation.reading_of(expected);
    result.times_scatter = std::abs(read - expected) / scatter;
    const auto here = figure(relation, state, point.frequency.value);
    if (here && here->reading_per_Hz != 0) {
        result.off = units::hertz(-(point.reading - result.expected_reading) / here->reading_per_Hz);
    }
    const std::string size = units::shown(std::abs(result.off.value()), units::Dimension::frequency, 2);
    const std::string times = times_text(result.times_scatter) + " times the scatter";
    if (!result.used) {
        result.reason = "left out: reads " + size + " from " + others_text(other_points) + ", " + times;
    } else if (result.doubtful()) {
        result.reason = "doubtful, so it counts for less: lies " + size + " from " +
                        others_text(other_points) + ", " + times + "; measure it again";
    } else {
        result.reason = "lies " + size + " from " + others_text(other_points) + ", " + times;
    }
    if (read < 0 || read > 1) { // a slip of the pen, or the dial of the file is not the one that was read
        result.reason += "; the reading lies beyond the dial's stops";
    }
    return result;
}

base::Notices calibration_notices(const std::vector<JudgedPoint>& points, bool held_monotone,
                                  double other_hardware) {
    base::Notices notices;
    std::size_t out = 0, unanswered = 0;
    for (const JudgedPoint& point : points) {
        out += !point.used && !point.outside_model ? 1 : 0;
        unanswered += point.outside_model ? 1 : 0;
    }
    if (points.empty()) {
        notices.add({"not_calibrated", base::Severity::caution,
                     "No point is measured: the dial follows the model and the capacitor's law alone, with "
                     "the interval that hardware usually strays by.",
                     0});
    }
    if (out > 0) {
        notices.add({"calibration_points_left_out", base::Severity::caution,
                     std::to_string(out) + (out == 1 ? " point contradicts" : " points contradict") +
                         " the others and the model and is left out of the curve; the list says why. Measure "
                         "again there.",
                     static_cast<double>(out)});
    }
    if (unanswered > 0) {
        notices.add({"calibration_points_unanswered", base::Severity::caution,
                     "The model gives no setting for " + std::to_string(unanswered) +
                         (unanswered == 1 ? " point" : " points") + ": not used.",
                     static_cast<double>(unanswered)});
    }
    if (held_monotone) {
        notices.add(
            {"calibration_not_monotone", base::Severity::caution,
             "A curve through the points would turn back on itself: it is held rising, and the points "
             "or the law of the dial are to be doubted.",
             1});
    }
    constexpr double likely = 0.5;
    if (other_hardware > likely) {
        notices.add(
            {"calibration_other_hardware", base::Severity::caution,
             "The points lie further from the file than hardware usually does: check the law of the dial, "
             "its stops and the capacitor's range. Until then the intervals are too narrow to rely on.",
             other_hardware});
    }
    return notices;
}

} // namespace loopwright::tuning::detail
