#include "charts/scales.hpp"

#include <algorithm>
#include <array>
#include <cmath>

namespace loopwright::charts {

namespace {

constexpr double tiny = 1e-9;
constexpr double narrow_ratio = 4.0; ///< below it a logarithmic scale is divided like a linear one

/// 1, 2 or 5 times a power of ten, not below x.
double round_step(double x) {
    const double decade = std::pow(10.0, std::floor(std::log10(x)));
    for (const double factor : {1.0, 2.0, 5.0}) {
        if (factor * decade >= x * (1.0 - tiny)) {
            return factor * decade;
        }
    }
    return 10.0 * decade;
}

QString text_of(double value, double step) {
    const int decimals = std::max(0, static_cast<int>(-std::floor(std::log10(step) + tiny)));
    // Adding zero takes the sign of a rounded negative zero away.
    const double rounded = std::abs(value) < step * 1e-6 ? 0.0 : value;
    QString text = QString::number(rounded, 'f', decimals);
    return text.replace(QLatin1Char('-'), QStringLiteral("\u2212"));
}

QString text_of_decade(double value) {
    return text_of(value, value);
}

/// All of factors x decades inside the span.
std::vector<Tick> of_factors(Span span, const std::vector<double>& factors, int every) {
    std::vector<Tick> ticks;
    const int first = static_cast<int>(std::floor(std::log10(span.low) + tiny));
    const int last = static_cast<int>(std::ceil(std::log10(span.high) - tiny));
    for (int exponent = first; exponent <= last; ++exponent) {
        if (exponent % every != 0) {
            continue;
        }
        for (const double factor : factors) {
            const double value = factor * std::pow(10.0, exponent);
            if (value >= span.low * (1.0 - tiny) && value <= span.high * (1.0 + tiny)) {
                ticks.push_back({value, text_of_decade(value)});
            }
        }
    }
    return ticks;
}

/// The largest (downward) or smallest (upward) round number beside x.
double round_beside(double x, bool upward) {
    const double decade = std::pow(10.0, std::floor(std::log10(x) + tiny));
    constexpr std::array<double, 7> factors = {1.0, 1.5, 2.0, 3.0, 5.0, 7.0, 10.0};
    if (upward) {
        return decade * *std::find_if(factors.begin(), factors.end(),
                                      [&](double f) { return f * decade >= x * (1.0 - tiny); });
    }
    return decade * *std::find_if(factors.rbegin(), factors.rend(),
                                  [&](double f) { return f * decade <= x * (1.0 + tiny); });
}

double position(double value, bool logarithmic) {
    return logarithmic ? std::log10(value) : value;
}

bool worth_keeping(Span data, bool logarithmic, Span keep) {
    if (!(keep.high > keep.low) || (logarithmic && keep.low <= 0) || data.low < keep.low ||
        data.high > keep.high) {
        return false;
    }
    const double filled = position(data.high, logarithmic) - position(data.low, logarithmic);
    const double room = position(keep.high, logarithmic) - position(keep.low, logarithmic);
    return filled > 0.5 * room;
}

} // namespace

std::vector<Tick> linear_ticks(Span span, int most) {
    const double step = round_step((span.high - span.low) / std::max(most, 1));
    std::vector<Tick> ticks;
    for (double n = std::ceil(span.low / step - tiny); n * step <= span.high + step * tiny; n += 1.0) {
        ticks.push_back({n * step, text_of(n * step, step)});
    }
    return ticks;
}

std::vector<Tick> logarithmic_ticks(Span span, int most) {
    if (span.high / span.low < narrow_ratio) {
        return linear_ticks(span, most);
    }
    const auto fits = [most](const std::vector<Tick>& ticks) {
        return static_cast<int>(ticks.size()) <= std::max(most, 3);
    };
    for (const auto& factors :
         {std::vector<double>{1, 2, 3, 5, 7}, std::vector<double>{1, 2, 5}, std::vector<double>{1, 3}}) {
        if (auto ticks = of_factors(span, factors, 1); fits(ticks)) {
            return ticks;
        }
    }
    int every = 1;
    auto ticks = of_factors(span, {1}, every);
    while (!fits(ticks)) {
        ticks = of_factors(span, {1}, ++every);
    }
    return ticks;
}

Span round_span(Span data, bool logarithmic, Span keep) {
    if (worth_keeping(data, logarithmic, keep)) {
        return keep;
    }
    if (logarithmic && data.high / data.low >= narrow_ratio) {
        return {round_beside(data.low, false), round_beside(data.high, true)};
    }
    const double width = std::max(data.high - data.low, std::max(std::abs(data.high) * 0.05, 1e-12));
    const double step = round_step(width / 5.0);
    Span span{std::floor(data.low / step + tiny) * step, std::ceil(data.high / step - tiny) * step};
    if (!(span.high > span.low)) {
        span.high = span.low + step;
    }
    if (logarithmic && span.low <= 0) {
        span.low = round_beside(data.low, false);
    }
    return span;
}

Span clamped_span(Span wanted, Span whole) {
    if (wanted.low > wanted.high) {
        std::swap(wanted.low, wanted.high);
    }
    const double middle =
        std::clamp(std::sqrt(std::max(wanted.low, 1.0) * std::max(wanted.high, 1.0)), whole.low, whole.high);
    const double least = 0.01 * middle;
    if (wanted.high - wanted.low < least) {
        wanted = {middle - least / 2.0, middle + least / 2.0};
    }
    Span span{std::max(wanted.low, whole.low), std::min(wanted.high, whole.high)};
    if (span.high - span.low < least * (1.0 - tiny)) { // at an end of the whole
        span =
            span.low <= whole.low ? Span{whole.low, whole.low + least} : Span{whole.high - least, whole.high};
    }
    return span;
}

} // namespace loopwright::charts
