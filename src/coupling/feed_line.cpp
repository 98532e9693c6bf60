#include "coupling/feed_line.hpp"

#include "base/error.hpp"
#include "coupling/mismatch.hpp"

#include <algorithm>
#include <cmath>
#include <string>

namespace loopwright::coupling {

namespace {

struct Law {
    double per_root_Hz = 0, per_Hz = 0; ///< dB/m
};

/// Least squares of (a sqrt(f) + b f)/loss against 1, both terms kept from going negative.
Law fit(const std::vector<LossPoint>& points) {
    double rr = 0, rf = 0, ff = 0, r1 = 0, f1 = 0;
    for (const LossPoint& p : points) {
        if (p.loss_dB_per_m <= 0) {
            continue;
        }
        const double root = std::sqrt(p.frequency.value()) / p.loss_dB_per_m;
        const double linear = p.frequency.value() / p.loss_dB_per_m;
        rr += root * root;
        rf += root * linear;
        ff += linear * linear;
        r1 += root;
        f1 += linear;
    }
    if (rr == 0) {
        return {};
    }
    const double determinant = rr * ff - rf * rf;
    if (determinant > 1e-9 * rr * ff) {
        const Law both{(r1 * ff - f1 * rf) / determinant, (f1 * rr - r1 * rf) / determinant};
        if (both.per_root_Hz >= 0 && both.per_Hz >= 0) {
            return both;
        }
        if (both.per_root_Hz < 0) {
            return {0, f1 / ff};
        }
    }
    return {r1 / rr, 0};
}

} // namespace

units::Decibel matched_loss(const FeedLine& line, units::Frequency frequency, base::Notices* notices) {
    if (!(line.length.value() >= 0) || !(frequency.value() > 0)) {
        throw base::InputError("feed_line.length", std::to_string(line.length.value()) + " m",
                               "a length of 0 m or more, at a frequency above 0");
    }
    double low = 1e300, high = 0;
    for (const LossPoint& p : line.loss) {
        if (!(p.loss_dB_per_m >= 0) || !(p.frequency.value() > 0)) {
            throw base::InputError("feed_line.loss", std::to_string(p.loss_dB_per_m) + " dB/m",
                                   "a loss of 0 dB/m or more at a frequency above 0");
        }
        low = std::min(low, p.frequency.value());
        high = std::max(high, p.frequency.value());
    }
    const double f = frequency.value();
    if (notices != nullptr && high > 0 && (f > 3.0 * high || f < low / 3.0)) {
        notices->add(
            {"feed_line_extrapolated", base::Severity::caution,
             "The feed line's loss is extrapolated more than a factor 3 beyond the frequencies it was given "
             "for.",
             std::max(f / high, low / f)});
    }
    const Law law = fit(line.loss);
    return {line.length.value() * (law.per_root_Hz * std::sqrt(f) + law.per_Hz * f)};
}

LineEnd line_end(units::Decibel matched_loss, double vswr_at_load) {
    const double a = std::pow(10.0, matched_loss.value / 10.0);
    const double at_load = reflection_magnitude(vswr_at_load);
    const double at_radio = at_load / a;
    const double total = 10.0 * std::log10((a * a - at_load * at_load) / (a * (1.0 - at_load * at_load)));
    return {(1.0 + at_radio) / (1.0 - at_radio), {total}};
}

} // namespace loopwright::coupling
