#include "numeric/bessel.hpp"

#include "base/error.hpp"

#include <array>
#include <cmath>
#include <numbers>

namespace loopwright::numeric {
namespace {

using Complex = std::complex<double>;

constexpr double asymptotic_from = 18.0; // Re z, where exp(-2 Re z), which the series does not hold, is 2e-16
constexpr double euler_gamma = std::numbers::egamma;

// Coefficients c_k of I0(z)/I1(z) = sum c_k z^-k: the quotient of the two series of A&S 9.7.1.
constexpr int asymptotic_terms = 18;
constexpr std::array<double, asymptotic_terms> quotient_coefficients() {
    std::array<double, asymptotic_terms> top{}, bottom{}, c{};
    top[0] = bottom[0] = 1.0;
    for (int k = 1; k < asymptotic_terms; ++k) {
        const double odd = (2.0 * k - 1.0) * (2.0 * k - 1.0);
        const auto i = static_cast<std::size_t>(k);
        top[i] = -top[i - 1] * (0.0 - odd) / (8.0 * k);
        bottom[i] = -bottom[i - 1] * (4.0 - odd) / (8.0 * k);
    }
    for (std::size_t k = 0; k < c.size(); ++k) {
        double sum = top[k];
        for (std::size_t m = 1; m <= k; ++m) {
            sum -= bottom[m] * c[k - m];
        }
        c[k] = sum;
    }
    return c;
}
constexpr auto quotient = quotient_coefficients();

// On the ray z = (1 + j) q the terms of z I0 / (2 I1) = sum c_k z^(1-k) / 2 are real numbers times q^(1-k),
// apart for real and imaginary part.
struct RayCoefficients {
    std::array<double, asymptotic_terms> real, imag;
};
constexpr RayCoefficients ray_coefficients() {
    RayCoefficients ray{};
    double re = 0.5, im = 0.5; // (1 + j)^(1-k) / 2
    for (std::size_t k = 0; k < quotient.size(); ++k) {
        ray.real[k] = quotient[k] * re;
        ray.imag[k] = quotient[k] * im;
        const double turned = 0.5 * (re + im); // times (1 - j)/2
        im = 0.5 * (im - re);
        re = turned;
    }
    return ray;
}
constexpr RayCoefficients ray_terms = ray_coefficients();

// z I0(z) / (2 I1(z)) on the ray, q >= asymptotic_from.
Complex asymptotic_on_ray(double q) {
    const double inverse = 1.0 / q;
    double re = 0.0, im = 0.0;
    for (std::size_t k = q > 150.0 ? 9 : asymptotic_terms; k-- > 0;) { // the tenth term is 1e-17 there
        re = re * inverse + ray_terms.real[k];
        im = im * inverse + ray_terms.imag[k];
    }
    return {q * re, q * im};
}

// I0(z)/I1(z) for Re z >= asymptotic_from.
Complex asymptotic_quotient(Complex z) {
    const Complex x = 1.0 / z;
    Complex sum = 0.0;
    for (std::size_t k = quotient.size(); k-- > 0;) {
        sum = sum * x + quotient[k];
    }
    return sum;
}

// I_order(z) / (z I_{order-1}(z)) = 1/(2 order + w/(2 order + 2 + ...)), started where the terms no longer
// matter.
Complex ratio_tail(Complex w, int order) {
    const int depth = 12 + static_cast<int>(1.6 * std::sqrt(std::abs(w)));
    Complex value = 2.0 * (order + depth);
    for (int k = depth - 1; k >= 0; --k) {
        value = 2.0 * (order + k) + w / value;
    }
    return 1.0 / value;
}

} // namespace

Complex half_z_i0_over_i1(Complex w) {
    if (w.real() == 0.0 && w.imag() >= 0.0) { // what conductors ask for
        const double q = std::sqrt(0.5 * w.imag());
        if (q >= asymptotic_from) {
            return asymptotic_on_ray(q);
        }
    } else {
        const Complex z = std::sqrt(w);
        if (z.real() >= asymptotic_from) {
            return 0.5 * z * asymptotic_quotient(z);
        }
    }
    return 1.0 + 0.5 * w * ratio_tail(w, 2);
}

void i_ratios_two_apart(Complex w, int count, Complex* out) {
    if (count < 1) {
        return;
    }
    // Downward from the highest order, the stable direction: I_{n+1}/I_{n-1} = w * tail(n+1) * tail(n).
    Complex upper = ratio_tail(w, count + 1);
    for (int n = count; n >= 1; --n) {
        const Complex lower = 1.0 / (2.0 * n + w * upper);
        out[n - 1] = w * upper * lower;
        upper = lower;
    }
}

namespace {

struct ScaledK {
    Complex k0, k1;
};

ScaledK series_k(Complex z) {
    const Complex q = 0.25 * z * z;
    const Complex log_term = std::log(0.5 * z) + euler_gamma;
    Complex term = 1.0, i0 = 0.0, extra0 = 0.0, i1_half = 0.0, extra1 = 0.0;
    double harmonic = 0.0;
    for (int k = 0; k < 24; ++k) {
        // term = q^k / (k!)^2; in order 1: q^k / (k! (k+1)!)
        const Complex term1 = term / (k + 1.0);
        i0 += term;
        extra0 += term * harmonic;
        i1_half += term1;
        extra1 += term1 * (2.0 * harmonic + 1.0 / (k + 1.0));
        harmonic += 1.0 / (k + 1.0);
        term = term * q / ((k + 1.0) * (k + 1.0));
    }
    const Complex scale = std::exp(z);
    const Complex k0 = extra0 - log_term * i0;
    const Complex k1 = 1.0 / z + log_term * 0.5 * z * i1_half - 0.25 * z * extra1;
    return {scale * k0, scale * k1};
}

// Steed's algorithm for the second continued fraction of order 0, after Temme, J. Comput. Phys. 19 (1975)
// 324.
ScaledK steed_k(Complex z) {
    Complex b = 2.0 * (1.0 + z);
    Complex d = 1.0 / b;
    Complex h = d, delta = d;
    Complex q1 = 0.0, q2 = 1.0;
    const double a1 = 0.25;
    Complex q = a1, c = a1;
    double a = -a1;
    Complex s = 1.0 + q * delta;
    for (int i = 2; i < 500; ++i) {
        a -= 2.0 * (i - 1);
        c = -a * c / static_cast<double>(i);
        const Complex q_new = (q1 - b * q2) / a;
        q1 = q2;
        q2 = q_new;
        q += c * q_new;
        b += 2.0;
        d = 1.0 / (b + a * d);
        delta = (b * d - 1.0) * delta;
        h += delta;
        const Complex ds = q * delta;
        s += ds;
        if (std::abs(ds) < 1e-17 * std::abs(s)) {
            break;
        }
    }
    const Complex k0 = std::sqrt(std::numbers::pi / (2.0 * z)) / s;
    return {k0, k0 * (z + 0.5 - a1 * h) / z};
}

} // namespace

ScaledBessel scaled_bessel(Complex z) {
    const double modulus = std::abs(z);
    if (!(modulus >= 1e-8 && modulus <= 1e6 && z.real() >= 0.49 * modulus)) {
        throw base::ProgramError("scaled_bessel: argument outside 1e-8..1e6 or |arg z| > pi/3");
    }
    const ScaledK k = modulus <= 2.0 ? series_k(z) : steed_k(z);
    const Complex ratio = z / (2.0 * half_z_i0_over_i1(z * z)); // I1 / I0
    const Complex i0 = 1.0 / (z * (k.k1 + ratio * k.k0));
    return {i0, ratio * i0, k.k0, k.k1};
}

} // namespace loopwright::numeric
