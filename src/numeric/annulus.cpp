#include "numeric/annulus.hpp"

#include "base/error.hpp"
#include "numeric/bessel.hpp"

#include <algorithm>
#include <array>
#include <cmath>

namespace loopwright::numeric {
namespace {

using Complex = std::complex<double>;

// u and v = u'/w; the radius is in units of the outer one.
struct State {
    Complex u = 1.0, v = 0.0;
};

// One step of length `step` from radius `start`: u' = w v, (r v)' = r u, both as Taylor series.
State taylor_step(const State& from, Complex w, double start, double step) {
    Complex c_before = 0.0, c = from.u, d = from.v;
    State sum = from;
    double power = 1.0;
    const double inverse = 1.0 / start;
    for (int n = 0; n < 80; ++n) {
        const double next = n + 1.0;
        const Complex c_next = w * d / next;
        const Complex d_next = (c + c_before * inverse) / next - d * inverse;
        c_before = c;
        c = c_next;
        d = d_next;
        power *= step;
        const Complex du = c * power, dv = d * power;
        sum.u += du;
        sum.v += dv;
        if (n > 5 && std::norm(du) < 1e-34 * std::norm(sum.u) && std::norm(dv) < 1e-34 * std::norm(sum.v)) {
            break;
        }
    }
    return sum;
}

Complex by_taylor(Complex w, double wall_fraction) {
    const double growth = std::sqrt(std::abs(w));
    State state;
    double travelled = 0.0;
    const double inner = 1.0 - wall_fraction;
    while (travelled < wall_fraction) {
        const double radius = inner + travelled;
        double step = std::min(0.5 * radius, 3.0 / growth);
        const double left = wall_fraction - travelled;
        if (step > 0.6 * left) {
            step = step >= left ? left : 0.5 * left; // no sliver at the end
        }
        state = taylor_step(state, w, radius, step);
        travelled += step;
        if (step == left) {
            break;
        }
    }
    return 0.5 * wall_fraction * (2.0 - wall_fraction) * state.u / state.v;
}

// a_k(nu) of A&S 9.7.1-2: I_nu ~ sum (-1)^k a_k / z^k, K_nu ~ sum a_k / z^k.
constexpr std::size_t terms_kept = 20;
constexpr std::array<double, terms_kept> hankel_coefficients(double nu) {
    std::array<double, terms_kept> a{};
    a[0] = 1.0;
    for (std::size_t k = 1; k < a.size(); ++k) {
        const double odd = 2.0 * static_cast<double>(k) - 1.0;
        a[k] = a[k - 1] * (4.0 * nu * nu - odd * odd) / (8.0 * static_cast<double>(k));
    }
    return a;
}
constexpr auto order0 = hankel_coefficients(0.0);
constexpr auto order1 = hankel_coefficients(1.0);

struct Pair {
    Complex plus, minus; // the sums at x and at -x
};

Pair hankel_sums(const std::array<double, terms_kept>& a, Complex x, std::size_t terms) {
    const Complex square = x * x;
    Complex even = 0.0, odd = 0.0;
    for (std::size_t k = terms; k-- > 0;) {
        Complex& sum = k % 2 == 0 ? even : odd;
        sum = Complex(sum.real() * square.real() - sum.imag() * square.imag() + a[k],
                      sum.real() * square.imag() + sum.imag() * square.real());
    }
    odd *= x;
    return {even + odd, even - odd};
}

constexpr double large_modulus = 20.0;

Complex by_asymptotics(Complex g, double wall_fraction) {
    const double modulus = std::abs(g) * (1.0 - wall_fraction);
    std::size_t terms = terms_kept;
    if (modulus > 60.0) {
        terms = modulus > 400.0 ? 8 : 12;
    }
    const Complex outer = 1.0 / g;
    const Complex inner = outer / (1.0 - wall_fraction);
    const Pair zero_out = hankel_sums(order0, outer, terms);
    const Pair one_out = hankel_sums(order1, outer, terms);
    const Pair one_in = hankel_sums(order1, inner, terms);
    const Complex decay = std::exp(-2.0 * wall_fraction * g);
    const Complex top = zero_out.minus * one_in.plus + decay * zero_out.plus * one_in.minus;
    const Complex bottom = one_out.minus * one_in.plus - decay * one_out.plus * one_in.minus;
    return 0.5 * wall_fraction * (2.0 - wall_fraction) * g * top / bottom;
}

} // namespace

Complex tube_ratio(Complex w, double wall_fraction) {
    const bool finite = std::isfinite(w.real()) && std::isfinite(w.imag());
    if (!(wall_fraction > 0.0 && wall_fraction <= 1.0) || !finite) {
        throw base::ProgramError("tube_ratio: wall fraction outside (0, 1] or argument not finite");
    }
    const double on_ray = std::sqrt(0.5 * std::fmax(w.imag(), 0.0));
    const Complex g = w.real() == 0.0 && w.imag() >= 0.0 ? Complex(on_ray, on_ray) : std::sqrt(w);
    const bool no_hole = 1.0 - wall_fraction < 1e-8;
    if (no_hole || wall_fraction * g.real() > 18.0) {
        return wall_fraction * (2.0 - wall_fraction) * half_z_i0_over_i1(w);
    }
    if (w == 0.0) {
        return 1.0;
    }
    const double modulus = std::abs(g);
    if (modulus * (1.0 - wall_fraction) >= large_modulus && modulus * wall_fraction >= 2.5) {
        return by_asymptotics(g, wall_fraction);
    }
    return by_taylor(w, wall_fraction);
}

} // namespace loopwright::numeric
