#include "tuning/tuning_curve.hpp"

#include "band/band.hpp"
#include "base/error.hpp"
#include "numeric/roots.hpp"
#include "units/constants.hpp"

#include <algorithm>
#include <cmath>
#include <utility>
#include <vector>

namespace loopwright::tuning {
namespace {

using units::constants::pi;

double square(double x) {
    return x * x;
}

} // namespace

struct TuningCurve::Solved {
    std::vector<double> log_frequency, per_henry;
};

TuningCurve::Solved TuningCurve::solve(const loop::LoopModel& model, units::Interval<units::Frequency> range,
                                       int points) {
    const double from = std::log(range.low.value());
    const double to = std::log(range.high.value());
    if (!(to > from) || points < 5 || points > 1000) {
        throw base::ProgramError("a tuning curve needs a range of frequencies and 5 to 1000 points");
    }
    Solved solved;
    for (int i = 0; i < points; ++i) {
        const double x = from + (to - from) * i / (points - 1);
        const loop::OperatingPoint point = model.at(units::hertz(std::exp(x)), units::watts(1), 2.0);
        if (point.resonance) {
            solved.log_frequency.push_back(x);
            solved.per_henry.push_back(square(2 * pi * std::exp(x)) *
                                       point.resonance->tuning_capacitance.value());
        } else if (!solved.log_frequency.empty()) {
            break; // self-resonance, or the end of the model's range
        }
    }
    if (solved.log_frequency.size() < 3) {
        throw base::InputError::sentence(
            "loop", "no capacitor tunes this loop at the frequencies asked for: the model stands behind "
                    "fewer than three of them");
    }
    return solved;
}

TuningCurve::TuningCurve(const loop::LoopModel& model, units::Interval<units::Frequency> range, int points)
    : TuningCurve(solve(model, range, points)) {}

TuningCurve::TuningCurve(Solved solved)
    : range_{units::hertz(std::exp(solved.log_frequency.front())),
             units::hertz(std::exp(solved.log_frequency.back()))},
      per_henry_(std::move(solved.log_frequency), std::move(solved.per_henry)) {}

std::optional<units::Capacitance> TuningCurve::needed(units::Frequency frequency) const {
    const double f = frequency.value();
    const double slack = 1e-9 * f; // of exp(log())
    if (!(f >= range_.low.value() - slack && f <= range_.high.value() + slack)) {
        return std::nullopt;
    }
    return units::farads(per_henry_(std::log(f)) / square(2 * pi * f));
}

std::optional<double> TuningCurve::steepness(units::Frequency frequency) const {
    const double f = frequency.value();
    const double low = std::max(f * (1 - 1e-4), range_.low.value());
    const double high = std::min(f * (1 + 1e-4), range_.high.value());
    if (!needed(frequency) || !(high > low)) {
        return std::nullopt;
    }
    const double below = needed(units::hertz(low))->value();
    const double above = needed(units::hertz(high))->value();
    return std::log(above / below) / std::log(high / low);
}

std::optional<units::Frequency> TuningCurve::resonance(units::Capacitance whole) const {
    const auto excess = [&](double log_f) {
        return per_henry_(log_f) / square(2 * pi * std::exp(log_f)) - whole.value();
    };
    const double low = std::log(range_.low.value());
    const double high = std::log(range_.high.value());
    if (excess(low) < 0 || excess(high) > 0) {
        return std::nullopt;
    }
    return units::hertz(std::exp(numeric::bracketed_root(excess, low, high)));
}

units::Interval<units::Frequency> dial_frequencies(const design::Design& design) {
    const auto& all = band::bands_of(design.station.region);
    units::Interval<units::Frequency> hull{};
    const auto take = [&](units::Frequency low, units::Frequency high) {
        const bool first = hull.high.value() == 0;
        hull.low = first ? low : std::min(hull.low, low);
        hull.high = first ? high : std::max(hull.high, high);
    };
    for (const band::Band& band : all) {
        const auto& names = design.station.bands;
        if (names.empty() || std::find(names.begin(), names.end(), band.name) != names.end()) {
            take(band.low, band.high);
        }
    }
    for (const design::WorkingFrequency& own : design.station.working_frequencies) {
        take(own.frequency.value, own.frequency.value);
    }
    if (design.calibration) {
        for (const design::CalibrationPoint& point : design.calibration->points) {
            take(point.frequency.value, point.frequency.value);
        }
    }
    if (hull.high.value() == 0) {
        take(all.front().low, all.back().high);
    }
    return {hull.low * 0.9, hull.high * 1.1};
}

} // namespace loopwright::tuning
