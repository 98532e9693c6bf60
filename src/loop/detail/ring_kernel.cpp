#include "loop/detail/ring_kernel.hpp"

#include "numeric/bessel.hpp"
#include "units/constants.hpp"

#include <boost/math/special_functions/digamma.hpp>
#include <cmath>

namespace loopwright::loop::detail {
namespace {

using units::constants::pi;

constexpr double euler_gamma = 0.577215664901532860606512090082402431;

// f = I0 K0 and its slope by ln x, cubic between even steps of ln x: to 1e-8.
struct Product {
    double value, slope;
};

class ProductTable {
public:
    ProductTable() {
        for (std::size_t i = 0; i <= steps; ++i) {
            const double x = std::exp(first + double(i) * step);
            const numeric::ScaledBessel b = numeric::scaled_bessel(x);
            entries_[i] = {b.i0.real() * b.k0.real(),
                           x * (b.i1.real() * b.k0.real() - b.i0.real() * b.k1.real())};
        }
    }
    [[nodiscard]] Product at(double log_x) const noexcept {
        const double place = (log_x - first) / step;
        if (!(place >= 0)) { // ln(2/x) - gamma to x^2
            return {-log_x + std::log(2.0) - euler_gamma, -1};
        }
        if (place >= double(steps)) { // 1/(2 x) (1 + 1/(8 x^2))
            const double f = 0.5 * std::exp(-log_x);
            return {f + f * f * f, -f - 3 * f * f * f};
        }
        const auto i = static_cast<std::size_t>(place);
        const double t = place - double(i);
        const Product& from = entries_[i];
        const Product& to = entries_[i + 1];
        const double rise = to.value - from.value;
        const double out = step * from.slope - rise;
        const double in = rise - step * to.slope;
        const double s = 1 - t;
        const double bow = s * out + t * in;
        return {from.value + t * (rise + s * bow), (rise + (s - t) * bow + t * s * (in - out)) / step};
    }

private:
    static constexpr double first = -12, step = 1.0 / 32;
    static constexpr std::size_t steps = 672; // to x = e^9
    std::array<Product, steps + 1> entries_{};
};

const ProductTable& product_table() {
    static const ProductTable table;
    return table;
}

// Of whole orders: ln m, e = ln m - psi(n + 1/2) and what multiplies h, e (m^2/2 - 1/6).
struct LowOrders {
    std::array<double, RingKernel::low> log_order{}, rest{}, rest_by_h{};
    LowOrders() {
        for (std::size_t n = 0; n < RingKernel::low; ++n) {
            const double order = double(n);
            const double square = order * order + 1.0 / 12;
            log_order[n] = 0.5 * std::log(square);
            rest[n] = log_order[n] - boost::math::digamma(order + 0.5);
            rest_by_h[n] = rest[n] * (0.5 * square - 1.0 / 6);
        }
    }
};

const LowOrders& low_orders() {
    static const LowOrders orders;
    return orders;
}

// First and second complete elliptic integral of the complementary modulus k', by the arithmetic-geometric
// mean (A&S 17.6.3, 17.6.4).
struct Elliptic {
    double first, second;
};

Elliptic complete_elliptic(double complement) {
    double a = 1;
    double b = complement;
    double power = 0.5;
    double sum = 0.5 * (1 - complement * complement);
    while (a - b > 1e-8 * a) {
        const double half = 0.5 * (a - b);
        const double mean = 0.5 * (a + b);
        b = std::sqrt(a * b);
        a = mean;
        power *= 2;
        sum += power * half * half;
    }
    const double first = pi / (a + b);
    return {first, first * (1 - sum)};
}

} // namespace

RingKernel::RingKernel(double ratio) noexcept : log_ratio_(std::log(ratio)), sixth_of_h_(ratio * ratio / 6) {}

double RingKernel::of(std::size_t n) const noexcept {
    const LowOrders& orders = low_orders();
    const Product f = product_table().at(orders.log_order[n] + log_ratio_);
    return 2 * (f.value - sixth_of_h_ * (f.value + f.slope - 6 * orders.rest_by_h[n]) + orders.rest[n]);
}

double RingKernel::beyond(double order, double log_order) const noexcept {
    const Product f = product_table().at(log_order + 1 / (24 * order * order) + log_ratio_);
    return 2 * (f.value - sixth_of_h_ * (f.value + f.slope));
}

RingPowers<ring_power_orders> ring_powers(double h) noexcept {
    constexpr std::size_t orders = ring_power_orders;
    RingPowers<orders> t{};
    const double c = 1 + h;
    // (c - cos t) times a series in cos(n t); the last order has no neighbour and is given up each time.
    const auto raised = [&](std::size_t from, std::size_t count) {
        const auto& low = t[from];
        auto& high = t[from + 2];
        high[0] = c * low[0] - low[1];
        for (std::size_t n = 1; n + 1 < count; ++n) {
            high[n] = c * low[n] - 0.5 * (low[n - 1] + low[n + 1]);
        }
    };
    t[0][0] = 2 * pi;
    for (const std::size_t p : {0U, 2U, 4U}) {
        raised(p, 6);
    }
    // Powers -1/2 and 1/2, n = 0: complete elliptic integrals of m = 2/(c + 1).
    const Elliptic elliptic = complete_elliptic(std::sqrt(h / (2 + h)));
    const double root = std::sqrt(c + 1);
    const double inverse_0 = 4 / root * elliptic.first;
    const double inverse_1 = c * inverse_0 - 4 * root * elliptic.second;
    t[1][0] = 4 * root * elliptic.second;
    t[1][1] = (c * inverse_1 - inverse_0) / 3;
    for (std::size_t n = 1; n + 1 < orders; ++n) {
        const double order = double(n);
        t[1][n + 1] = (2 * order * c * t[1][n] - (order - 1.5) * t[1][n - 1]) / (order + 1.5);
    }
    raised(1, orders);
    raised(3, orders - 1);
    return t;
}

} // namespace loopwright::loop::detail
