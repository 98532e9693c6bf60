#include "ground/far_field_series.hpp"

#include "base/error.hpp"
#include "ground/imaginary_unit.hpp"
#include "ground/soil.hpp"
#include "numeric/lanes.hpp"
#include "units/constants.hpp"

#include <algorithm>
#include <boost/math/quadrature/gauss.hpp>
#include <cmath>
#include <cstring>

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

// Real and imaginary parts of each group at one zenith angle: theta's along x, y and z, phi's along x and y,
// and two zeros that fill the lanes.
constexpr std::size_t group_doubles = 12;

/// sums = sum over the groups of weight times parts.
LOOPWRIGHT_TWO_PROCESSORS void weighted_groups(const double* weights, const double* of_groups,
                                               std::size_t groups, double* sums) {
    numeric::Lanes a{}, b{}, c{}, x, y, z;
    for (std::size_t g = 0; g < groups; ++g, of_groups += group_doubles) {
        std::memcpy(&x, of_groups, sizeof x);
        std::memcpy(&y, of_groups + 4, sizeof y);
        std::memcpy(&z, of_groups + 8, sizeof z);
        a += weights[g] * x;
        b += weights[g] * y;
        c += weights[g] * z;
    }
    std::memcpy(sums, &a, sizeof a);
    std::memcpy(sums + 4, &b, sizeof b);
    std::memcpy(sums + 8, &c, sizeof c);
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
    Complex power[most + 1] = {1.0}; // of j k
    for (int n = 1; n <= most; ++n) {
        factorial[n] = factorial[n - 1] * n;
        power[n] = power[n - 1] * j * k_;
    }
    std::vector<Complex> scales;
    for (int a = 0; a <= highest[0]; ++a) {
        for (int b = 0; b <= std::min(highest[1], order_ - a); ++b) {
            const int most_c = std::min(highest[2], order_ - a - b);
            groups_.push_back({a, b, scales.size(), static_cast<std::size_t>(most_c) + 1});
            for (int c = 0; c <= most_c; ++c) {
                scales.push_back(power[a + b + c] / (factorial[a] * factorial[b] * factorial[c]));
            }
        }
    }
    moments_.resize(scales.size());
    for (const CurrentElement& e : elements) {
        const auto x = powers(e.position_m[0] - centre_m_[0], order_);
        const auto y = powers(e.position_m[1] - centre_m_[1], order_);
        const auto z = powers(e.position_m[2] - centre_m_[2], order_);
        for (const Group& group : groups_) {
            const double xy =
                x[static_cast<std::size_t>(group.x_power)] * y[static_cast<std::size_t>(group.y_power)];
            for (std::size_t c = 0; c < group.terms; ++c) {
                for (std::size_t i = 0; i < 3; ++i) {
                    moments_[group.first + c][i] += xy * z[c] * e.moment_A_m[i];
                }
            }
        }
    }
    for (std::size_t t = 0; t < moments_.size(); ++t) {
        for (Complex& moment : moments_[t]) {
            moment *= scales[t];
        }
    }
}

FarFieldSeries::Azimuths FarFieldSeries::azimuths(std::span<const double> azimuths_rad) const {
    Azimuths all;
    all.weights_.reserve(azimuths_rad.size() * groups_.size());
    for (const double azimuth : azimuths_rad) {
        const double c = std::cos(azimuth), s = std::sin(azimuth);
        all.cosine_.push_back(c);
        all.sine_.push_back(s);
        const auto pc = powers(c, order_), ps = powers(s, order_);
        for (const Group& group : groups_) {
            all.weights_.push_back(pc[static_cast<std::size_t>(group.x_power)] *
                                   ps[static_cast<std::size_t>(group.y_power)]);
        }
    }
    return all;
}

FarFieldSeries::Azimuths FarFieldSeries::evenly_around(int count) const {
    std::vector<double> all(static_cast<std::size_t>(count));
    for (int i = 0; i < count; ++i) {
        all[static_cast<std::size_t>(i)] = 2.0 * pi * i / count;
    }
    return azimuths(all);
}

// The radiation vectors of the wave that leaves directly and of the mirrored one, direction's z reversed, are
// up (even + odd) and up* (even - odd), even and odd in z. Each group's are joined here as the far field
// wants them.
std::vector<double> FarFieldSeries::of_zenith(Complex permittivity, double zenith_rad) const {
    const double ct = std::cos(zenith_rad), st = std::sin(zenith_rad);
    const Reflection gamma = reflection(permittivity, ct);
    const Complex factor = -j * k_ * free_space_impedance_ohm / (4.0 * pi);
    const double rise = k_ * ct * centre_m_[2];
    const Complex up = factor * Complex(std::cos(rise), std::sin(rise));
    const Complex down = factor * Complex(std::cos(rise), -std::sin(rise));
    const Complex tm_less = up - gamma.tm * down, tm_more = up + gamma.tm * down;
    const Complex te_less = up - gamma.te * down, te_more = up + gamma.te * down;
    const auto pz = powers(ct, order_), ps = powers(st, order_);
    std::vector<double> all;
    all.reserve(groups_.size() * group_doubles);
    const auto add = [&all](const Complex& part) {
        all.push_back(part.real());
        all.push_back(part.imag());
    };
    for (const Group& group : groups_) {
        std::array<Vector, 2> sums{}; // even, odd
        for (std::size_t c = 0; c < group.terms; ++c) {
            for (std::size_t i = 0; i < 3; ++i) {
                sums[c % 2][i] += pz[c] * moments_[group.first + c][i];
            }
        }
        const auto& [even, odd] = sums;
        const double across =
            ps[static_cast<std::size_t>(group.x_power) + static_cast<std::size_t>(group.y_power)];
        add(across * ct * (tm_less * even[0] + tm_more * odd[0]));
        add(across * ct * (tm_less * even[1] + tm_more * odd[1]));
        add(-across * st * (tm_more * even[2] + tm_less * odd[2]));
        add(across * (te_more * even[0] + te_less * odd[0]));
        add(across * (te_more * even[1] + te_less * odd[1]));
        add(0.0);
    }
    return all;
}

void FarFieldSeries::ring(Complex permittivity, double zenith_rad, const Azimuths& azimuths,
                          std::vector<FarField>& fields) const {
    const std::vector<double> of_groups = of_zenith(permittivity, zenith_rad);
    fields.resize(azimuths.cosine_.size());
    std::array<double, group_doubles> sums{};
    for (std::size_t i = 0; i < fields.size(); ++i) {
        weighted_groups(&azimuths.weights_[i * groups_.size()], of_groups.data(), groups_.size(),
                        sums.data());
        const double cp = azimuths.cosine_[i], sp = azimuths.sine_[i];
        fields[i] = {{cp * sums[0] + sp * sums[2] + sums[4], cp * sums[1] + sp * sums[3] + sums[5]},
                     {cp * sums[8] - sp * sums[6], cp * sums[9] - sp * sums[7]}};
    }
}

FarField FarFieldSeries::one(Complex permittivity, double zenith_rad, double azimuth_rad) const {
    std::vector<FarField> field;
    ring(permittivity, zenith_rad, azimuths(std::span(&azimuth_rad, 1)), field);
    const double across = centre_m_[0] * std::cos(azimuth_rad) + centre_m_[1] * std::sin(azimuth_rad);
    const Complex along = std::exp(j * (k_ * std::sin(zenith_rad) * across));
    return {along * field.front().e_theta_V, along * field.front().e_phi_V};
}

FarField FarFieldSeries::over_ground(Complex permittivity, double zenith_rad, double azimuth_rad) const {
    return one(permittivity, zenith_rad, azimuth_rad);
}

FarField FarFieldSeries::free_space(double zenith_rad, double azimuth_rad) const {
    return one(1.0, zenith_rad, azimuth_rad);
}

double FarFieldSeries::sky_power_W(Complex permittivity) const {
    // The field holds azimuth harmonics up to about ka + 3, its square twice that; elevation also the
    // interference with the image, 2 k top. Panels of 8 Gauss points in cos(zenith), the lowest shortest:
    // grazing waves turn fast.
    const double ka = k_ * half_diagonal_m_;
    const int around = 2 * static_cast<int>(std::ceil(ka + 4.0));
    const Azimuths azimuths = evenly_around(around);
    std::vector<FarField> fields;
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
            ring(permittivity, zenith, azimuths, fields);
            for (const FarField& f : fields) {
                power += weight * (std::norm(f.e_theta_V) + std::norm(f.e_phi_V));
            }
        }
    }
    return power / free_space_impedance_ohm;
}

} // namespace loopwright::ground
