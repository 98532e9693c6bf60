#include "loop/detail/tube_kernel.hpp"

#include "units/constants.hpp"

#include <array>
#include <boost/math/quadrature/gauss.hpp>
#include <cstddef>

namespace loopwright::loop::detail {
namespace {

using units::constants::pi;

constexpr double table_end = 12.0;
constexpr std::size_t steps = 400;

// F and its slope at x_i = table_end (i / steps)^2: dense near 0, where F'' is logarithmic.
class Table {
public:
    Table() {
        using Rule = boost::math::quadrature::gauss<double, 15>;
        // Up to the first point: K(y) = ln(8/y)/pi to relative order y^2.
        const double x1 = node(1);
        slope_[1] = x1 * (std::log(8 / x1) + 1) / pi;
        value_[1] = x1 * x1 * (0.5 * std::log(8 / x1) + 0.75) / pi;
        for (std::size_t i = 2; i <= steps; ++i) {
            const double from = node(i - 1);
            const double to = node(i);
            const auto kernel = [](double y) { return tube_kernel(y, 1.0); };
            const auto moment = [to](double y) { return (to - y) * tube_kernel(y, 1.0); };
            slope_[i] = slope_[i - 1] + Rule::integrate(kernel, from, to);
            value_[i] = value_[i - 1] + (to - from) * slope_[i - 1] + Rule::integrate(moment, from, to);
        }
    }
    [[nodiscard]] double at(double x) const noexcept {
        auto i = static_cast<std::size_t>(double(steps) * std::sqrt(x / table_end));
        i = i < steps ? i : steps - 1;
        const double width = node(i + 1) - node(i);
        const double t = (x - node(i)) / width;
        const double s = 1 - t;
        return s * s * ((1 + 2 * t) * value_[i] + t * width * slope_[i]) +
               t * t * ((1 + 2 * s) * value_[i + 1] - s * width * slope_[i + 1]);
    }

private:
    [[nodiscard]] static double node(std::size_t i) noexcept {
        const double share = double(i) / double(steps);
        return table_end * share * share;
    }
    std::array<double, steps + 1> value_{}, slope_{};
};

// The averaged powers of the distance across two unit circles are the central binomials: K = 1/x - 1/x^3 +
// 9/4 x^-5 - 25/4 x^-7 + ..., integrated twice; 4/pi is the mean distance, the mean logarithm is 0.
double far_double_integral(double x) noexcept {
    const double v = 1 / (x * x);
    return x * (std::log(2 * x) - 1) + 4 / pi -
           (1 / x) * (0.5 - v * (0.1875 - v * (5.0 / 24.0 - v * (19.140625 / 56.0))));
}

} // namespace

double tube_double_integral(double x) noexcept {
    static const Table table;
    const double distance = std::abs(x);
    return distance < table_end ? table.at(distance) : far_double_integral(distance);
}

double collinear_integral(double l1_m, double l2_m, double x_m, double radius_m) noexcept {
    const auto f = [radius_m](double distance_m) { return tube_double_integral(distance_m / radius_m); };
    const double sum = 0.5 * (l1_m + l2_m);
    const double difference = 0.5 * (l1_m - l2_m);
    return radius_m * (f(x_m + sum) + f(x_m - sum) - f(x_m + difference) - f(x_m - difference));
}

} // namespace loopwright::loop::detail
