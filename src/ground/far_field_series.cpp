#include "ground/far_field_series.hpp"

#include "base/error.hpp"
#include "ground/imaginary_unit.hpp"
#include "ground/soil.hpp"
#include "units/constants.hpp"

#include <algorithm>
#include <boost/math/quadrature/gauss.hpp>
#include <cmath>

namespace loopwright::ground {

namespace {

using Complex = std::complex<double>;
using units::constants::free_space_impedance_ohm;
using units::constants::pi;
constexpr double remainder = 1e-7;
constexpr double longest_ka = 4.0;
constexpr int most = 24;

struct Box {
    std::array<double, 3> low{1e300, 1e300, 1e300}, high{-1e300, -1e300, -1e300};
    explicit Box(const std::vector<CurrentElement>& elements) {
        for (const CurrentElement& e : elements) {
            for (std::size_t i = 0; i < 3; ++i) {
                low[i] = std::min(low[i], e.position_m[i]);
                high[i] = std::max(high[i], e.position_m[i]);
            }
        }
    }
    [[nodiscard]] double half_diagonal() const {
        return 0.5 * std::hypot(high[0] - low[0], high[1] - low[1], high[2] - low[2]);
    }
};

std::array<double, most + 1> powers(double base, int order) {
    std::array<double, most + 1> p{};
    p[0] = 1;
    for (int i = 1; i <= order; ++i) {
        p[static_cast<std::size_t>(i)] = p[static_cast<std::size_t>(i - 1)] * base;
    }
    return p;
}

FarField components(const std::array<Complex, 3>& direct, const std::array<Complex, 3>& mirrored,
                    const Reflection& gamma, double k, double ct, double st, double cp, double sp) {
    const auto along = [&](const std::array<Complex, 3>& v) { return cp * v[0] + sp * v[1]; };
    const auto beside = [&](const std::array<Complex, 3>& v) { return -sp * v[0] + cp * v[1]; };
    const Complex theta =
        ct * (along(direct) - gamma.tm * along(mirrored)) - st * (direct[2] + gamma.tm * mirrored[2]);
    const Complex phi = beside(direct) + gamma.te * beside(mirrored);
    const Complex factor = -j * k * free_space_impedance_ohm / (4.0 * pi);
    return {factor * theta, factor * phi};
}

} // namespace

bool FarFieldSeries::reaches(const std::vector<CurrentElement>& elements, double wavenumber_rad_m) {
    return wavenumber_rad_m * Box(elements).half_diagonal() <= longest_ka;
}

FarFieldSeries::FarFieldSeries(const std::vector<CurrentElement>& elements, double wavenumber_rad_m)
    : k_(wavenumber_rad_m) {
    const Box box(elements);
    half_diagonal_m_ = box.half_diagonal();
    top_m_ = box.high[2];
    const double ka = k_ * half_diagonal_m_;
    if (elements.empty() || !(ka <= longest_ka)) {
        throw base::ProgramError("FarFieldSeries: no elements, or too large for a series");
    }
    for (std::size_t i = 0; i < 3; ++i) {
        centre_m_[i] = 0.5 * (box.low[i] + box.high[i]);
    }
    double left = ka;
    while (left > remainder && order_ < most) {
        ++order_;
        left *= ka / (order_ + 1);
    }
    // A flat system has no moments along its normal: leave those out.
    std::array<int, 3> highest{};
    for (std::size_t i = 0; i < 3; ++i) {
        highest[i] = box.high[i] - box.low[i] > 1e-12 * (half_diagonal_m_ + 1e-300) ? order_ : 0;
    }
    double factorial[most + 1] = {1};
    for (int n = 1; n <= most; ++n) {
        factorial[n] = factorial[n - 1] * n;
    }
    for (int a = 0; a <= highest[0]; ++a) {
        for (int b = 0; b <= std::min(highest[1], order_ - a); ++b) {
            for (int c = 0; c <= std::min(highest[2], order_ - a - b); ++c) {
                const Complex scale =
                    std::pow(j * k_, a + b + c) / (factorial[a] * factorial[b] * factorial[c]);
                terms_.push_back({a, b, c, {scale, scale, scale}});
            }
        }
    }
    std::vector<Vector> sums(terms_.size(), Vector{});
    for (const CurrentElement& e : elements) {
        const auto x = powers(e.position_m[0] - centre_m_[0], order_);
        const auto y = powers(e.position_m[1] - centre_m_[1], order_);
        const auto z = powers(e.position_m[2] - centre_m_[2], order_);
        for (std::size_t t = 0; t < terms_.size(); ++t) {
            const Term& term = terms_[t];
            const double w = x[static_cast<std::size_t>(term.x_power)] *
                             y[static_cast<std::size_t>(term.y_power)] *
                             z[static_cast<std::size_t>(term.z_power)];
            for (std::size_t i = 0; i < 3; ++i) {
                sums[t][i] += w * e.moment_A_m[i];
            }
        }
    }
    for (std::size_t t = 0; t < terms_.size(); ++t) {
        for (std::size_t i = 0; i < 3; ++i) {
            terms_[t].moment[i] *= sums[t][i];
        }
    }
}

FarFieldSeries::Pair FarFieldSeries::radiation_vectors(double x, double y, double z) const {
    const auto px = powers(x, order_);
    const auto py = powers(y, order_);
    const auto pz = powers(z, order_);
    Vector even{}, odd{}; // in z: the mirrored direction takes their difference
    for (const Term& term : terms_) {
        const double w = px[static_cast<std::size_t>(term.x_power)] *
                         py[static_cast<std::size_t>(term.y_power)] *
                         pz[static_cast<std::size_t>(term.z_power)];
        Vector& sum = term.z_power % 2 == 0 ? even : odd;
        for (std::size_t i = 0; i < 3; ++i) {
            sum[i] += w * term.moment[i];
        }
    }
    const Complex along = std::exp(j * (k_ * (x * centre_m_[0] + y * centre_m_[1])));
    const Complex up = std::exp(j * (k_ * z * centre_m_[2]));
    Pair pair;
    for (std::size_t i = 0; i < 3; ++i) {
        pair.direct[i] = along * up * (even[i] + odd[i]);
        pair.mirrored[i] = along * std::conj(up) * (even[i] - odd[i]);
    }
    return pair;
}

FarField FarFieldSeries::over_ground(Complex permittivity, double zenith_rad, double azimuth_rad) const {
    const double ct = std::cos(zenith_rad), st = std::sin(zenith_rad);
    const double cp = std::cos(azimuth_rad), sp = std::sin(azimuth_rad);
    const Pair pair = radiation_vectors(st * cp, st * sp, ct);
    return components(pair.direct, pair.mirrored, reflection(permittivity, ct), k_, ct, st, cp, sp);
}

FarField FarFieldSeries::free_space(double zenith_rad, double azimuth_rad) const {
    const double ct = std::cos(zenith_rad), st = std::sin(zenith_rad);
    const double cp = std::cos(azimuth_rad), sp = std::sin(azimuth_rad);
    const Vector direct = radiation_vectors(st * cp, st * sp, ct).direct;
    return components(direct, direct, {0.0, 0.0}, k_, ct, st, cp, sp);
}

double FarFieldSeries::sky_power_W(Complex permittivity) const {
    // The field holds azimuth harmonics up to about ka + 3, its square twice that; elevation also the
    // interference with the image, 2 k top. Panels of 8 Gauss points in cos(zenith), the lowest shortest:
    // grazing waves turn fast.
    const double ka = k_ * half_diagonal_m_;
    const int around = 2 * static_cast<int>(std::ceil(ka + 4.0));
    const int panels = 2 + static_cast<int>(std::ceil((2.0 * k_ * std::max(top_m_, 0.0) + ka) / 8.0));
    using Rule = boost::math::quadrature::gauss<double, 8>;
    double power = 0;
    for (int p = 0; p < panels; ++p) {
        const double a = std::pow(static_cast<double>(p) / panels, 2);
        const double b = std::pow((p + 1.0) / panels, 2);
        for (std::size_t n = 0; n < 2 * Rule::abscissa().size(); ++n) {
            const double x = (n % 2 == 0 ? 1.0 : -1.0) * Rule::abscissa()[n / 2];
            const double zenith = std::acos(0.5 * (a + b) + 0.5 * (b - a) * x);
            const double weight = 0.5 * (b - a) * Rule::weights()[n / 2] * 2.0 * pi / around;
            for (int i = 0; i < around; ++i) {
                const FarField f = over_ground(permittivity, zenith, 2.0 * pi * i / around);
                power += weight * (std::norm(f.e_theta_V) + std::norm(f.e_phi_V));
            }
        }
    }
    return power / free_space_impedance_ohm;
}

} // namespace loopwright::ground
