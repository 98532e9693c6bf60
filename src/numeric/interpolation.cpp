#include "numeric/interpolation.hpp"

#include "base/error.hpp"

#include <algorithm>
#include <cmath>
#include <utility>

namespace loopwright::numeric {
namespace {

void check_table(const std::vector<double>& x, const std::vector<double>& y) {
    bool good = x.size() >= 3 && x.size() == y.size();
    for (std::size_t i = 0; good && i < x.size(); ++i) {
        good = std::isfinite(x[i]) && std::isfinite(y[i]) && (i == 0 || x[i] > x[i - 1]);
    }
    if (!good) {
        throw base::ProgramError("HermiteCurve: needs three finite points or more, x rising");
    }
}

} // namespace

HermiteCurve::HermiteCurve(std::vector<double> x, std::vector<double> y)
    : x_(std::move(x)), y_(std::move(y)), slope_(x_.size()) {
    check_table(x_, y_);
    const std::size_t last = x_.size() - 1;
    for (std::size_t i = 0; i <= last; ++i) {
        const std::size_t middle = std::clamp(i, std::size_t{1}, last - 1);
        const double before = x_[middle] - x_[middle - 1], after = x_[middle + 1] - x_[middle];
        const double left = (y_[middle] - y_[middle - 1]) / before,
                     right = (y_[middle + 1] - y_[middle]) / after;
        const double bend = (right - left) / (before + after); // half the second derivative
        slope_[i] = left + bend * (2.0 * x_[i] - x_[middle - 1] - x_[middle]);
    }
}

double HermiteCurve::operator()(double x) const {
    if (!(x > x_.front())) {
        return y_.front();
    }
    if (x >= x_.back()) {
        return y_.back();
    }
    const auto above = std::upper_bound(x_.begin(), x_.end(), x);
    const auto i = static_cast<std::size_t>(above - x_.begin()) - 1;
    const double width = x_[i + 1] - x_[i], t = (x - x_[i]) / width, s = 1.0 - t;
    return s * s * ((1.0 + 2.0 * t) * y_[i] + t * width * slope_[i]) +
           t * t * ((1.0 + 2.0 * s) * y_[i + 1] - s * width * slope_[i + 1]);
}

} // namespace loopwright::numeric
