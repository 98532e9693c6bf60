#include "numeric/monotone.hpp"

#include "base/error.hpp"

#include <algorithm>
#include <cmath>
#include <utility>

namespace loopwright::numeric {
namespace {

void check_one_way(const std::vector<double>& x, const std::vector<double>& y) {
    bool good = x.size() >= 2 && x.size() == y.size();
    for (std::size_t i = 0; good && i < x.size(); ++i) {
        good = std::isfinite(x[i]) && std::isfinite(y[i]);
        good = good && (i == 0 || (x[i] > x[i - 1] && (y[1] > y[0] ? y[i] > y[i - 1] : y[i] < y[i - 1])));
    }
    if (!good) {
        throw base::ProgramError("MonotoneCurve: needs two finite points or more, x rising, y one way");
    }
}

// Three-point slope at an end: the widths and secants of the end piece and of the next.
double end_slope(double width, double next_width, double secant, double next_secant) {
    const double slope = ((2 * width + next_width) * secant - width * next_secant) / (width + next_width);
    return std::clamp(slope / secant, 0.1, 3.0) * secant;
}

} // namespace

MonotoneCurve::MonotoneCurve(std::vector<double> x, std::vector<double> y)
    : x_(std::move(x)), y_(std::move(y)), slope_(x_.size()) {
    check_one_way(x_, y_);
    const std::size_t last = x_.size() - 1;
    const auto width = [&](std::size_t i) { return x_[i + 1] - x_[i]; };
    const auto secant = [&](std::size_t i) { return (y_[i + 1] - y_[i]) / width(i); };
    if (last == 1) {
        slope_ = {secant(0), secant(0)};
        return;
    }
    for (std::size_t i = 1; i < last; ++i) {
        const double before = 2 * width(i) + width(i - 1), after = width(i) + 2 * width(i - 1);
        slope_[i] = (before + after) / (before / secant(i - 1) + after / secant(i));
    }
    slope_[0] = end_slope(width(0), width(1), secant(0), secant(1));
    slope_[last] = end_slope(width(last - 1), width(last - 2), secant(last - 1), secant(last - 2));
}

std::size_t MonotoneCurve::piece(double x) const {
    const auto above = std::upper_bound(x_.begin() + 1, x_.end() - 1, x);
    return static_cast<std::size_t>(above - x_.begin()) - 1;
}

double MonotoneCurve::operator()(double x) const {
    if (!(x > x_.front())) {
        return y_.front();
    }
    if (x >= x_.back()) {
        return y_.back();
    }
    const std::size_t i = piece(x);
    const double width = x_[i + 1] - x_[i], t = (x - x_[i]) / width, s = 1 - t;
    return s * s * ((1 + 2 * t) * y_[i] + t * width * slope_[i]) +
           t * t * ((1 + 2 * s) * y_[i + 1] - s * width * slope_[i + 1]);
}

double MonotoneCurve::slope(double x) const {
    const double inside = std::clamp(x, x_.front(), x_.back());
    const std::size_t i = piece(inside);
    const double width = x_[i + 1] - x_[i], t = (inside - x_[i]) / width, s = 1 - t;
    return 6 * t * s * (y_[i + 1] - y_[i]) / width + s * (s - 2 * t) * slope_[i] +
           t * (t - 2 * s) * slope_[i + 1];
}

double MonotoneCurve::inverse(double y) const {
    const bool rises = y_.back() > y_.front();
    const auto before = [&](double a, double b) { return rises ? a < b : a > b; };
    if (!before(y_.front(), y)) {
        return x_.front();
    }
    if (!before(y, y_.back())) {
        return x_.back();
    }
    const auto above = std::upper_bound(y_.begin(), y_.end(), y, before);
    double high = x_[static_cast<std::size_t>(above - y_.begin())];
    double low = x_[static_cast<std::size_t>(above - y_.begin()) - 1];
    double x = (low + high) / 2;
    for (int i = 0; i < 100 && high - low > 1e-15 * (std::abs(low) + std::abs(high)); ++i) {
        const double error = (*this)(x)-y;
        (before(error, 0.0) ? low : high) = x;
        const double newton = x - error / slope(x); // inside, or the middle
        if (error == 0 || newton == x) {
            return x;
        }
        x = newton > low && newton < high ? newton : (low + high) / 2;
    }
    return x;
}

} // namespace loopwright::numeric
