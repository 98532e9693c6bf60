#include "exposure/detail/shells.hpp"

#include "units/constants.hpp"

#include <algorithm>
#include <cmath>
#include <complex>

namespace loopwright::exposure::detail {

namespace {

using Complex = std::complex<double>;
using units::constants::electric_constant_F_m;
using units::constants::free_space_impedance_ohm;
using units::constants::pi;

double magnitude(const std::array<Complex, 3>& v) {
    return std::sqrt(std::norm(v[0]) + std::norm(v[1]) + std::norm(v[2]));
}

} // namespace

double shell_distance_m(int index) {
    return index == 0 ? 0.0 : 0.1 * std::pow(1.15, index - 1);
}

// Weights by the cosine sums of the rule (W. M. Gentleman, Commun. ACM 15 (1972) 337).
HeightRule clenshaw_curtis(int count) {
    const int n = count - 1;
    HeightRule rule;
    rule.shares.reserve(static_cast<std::size_t>(count));
    rule.weights.reserve(static_cast<std::size_t>(count));
    for (int k = 0; k <= n; ++k) {
        rule.shares.push_back(0.5 - 0.5 * std::cos(pi * k / n));
        double weight = 1.0;
        for (int i = 1; i <= n / 2; ++i) {
            const double b = 2 * i == n ? 1.0 : 2.0;
            weight -= b / (4.0 * i * i - 1.0) * std::cos(2.0 * pi * i * k / n);
        }
        rule.weights.push_back(weight * (k == 0 || k == n ? 0.5 : 1.0) / n);
    }
    return rule;
}

Moments moments_of(const loop::SolvedLoop& loop) {
    const auto elements = loop.elements();
    std::array<double, 3> middle{};
    for (const auto& element : elements) {
        for (std::size_t i = 0; i < 3; ++i) {
            middle[i] += element.position_m[i] / static_cast<double>(elements.size());
        }
    }
    std::array<Complex, 3> sum{}, turning{};
    for (const auto& element : elements) {
        const auto& m = element.moment_A_m;
        std::array<double, 3> r{};
        for (std::size_t i = 0; i < 3; ++i) {
            r[i] = element.position_m[i] - middle[i];
            sum[i] += m[i];
        }
        for (std::size_t i = 0; i < 3; ++i) {
            const std::size_t b = (i + 1) % 3, c = (i + 2) % 3;
            turning[i] += 0.5 * (r[b] * m[c] - r[c] * m[b]);
        }
    }
    const double scale = 1 / std::sqrt(loop.total.value());
    const double omega = 2 * pi * loop.frequency.value();
    return {magnitude(sum) / omega * scale, magnitude(turning) * scale};
}

double rough_share(const Moments& moments, double k, double frequency_Hz, double distance_m,
                   const Threshold& threshold) {
    const double r = distance_m, kr = k * r;
    const double near = (1 + kr + kr * kr) / (r * r * r);
    const double crossed = (1 + kr) / (r * r);
    const double omega = 2 * pi * frequency_Hz;
    const double electric = 3 * (moments.electric_C_m * near / (2 * pi * electric_constant_F_m) +
                                 free_space_impedance_ohm * k * moments.magnetic_A_m2 * crossed / (4 * pi));
    const double magnetic =
        3 * (moments.magnetic_A_m2 * near / (2 * pi) + omega * moments.electric_C_m * crossed / (4 * pi));
    const double e = electric / threshold.electric_V_m, m = magnetic / threshold.magnetic_A_m;
    return std::max(e * e, m * m);
}

std::array<double, 3> capacitor_place(const loop::SolvedLoop& loop) {
    const wire::Mesh& mesh = loop.solution.mesh();
    const geometry::Vector3 p = mesh.point(mesh.elements().front(), 0.0);
    const geometry::Vector3 at =
        loop.stand.origin + p.x * loop.stand.right + p.y * loop.stand.rise + p.z * loop.stand.up;
    return {at.x, at.y, at.z};
}

} // namespace loopwright::exposure::detail
