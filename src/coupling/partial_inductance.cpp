#include "coupling/partial_inductance.hpp"

#include "units/constants.hpp"

#include <algorithm>
#include <array>
#include <cmath>

namespace loopwright::coupling {

namespace {

using geometry::Vector3;
constexpr double per_4pi_H_m = 1e-7; // mu0/(4 pi), to 1e-10

/// Antiderivative of asinh(x/d), twice integrated kernel of parallel filaments.
double twice_integrated(double x, double d) {
    return x * std::asinh(x / d) - std::hypot(x, d);
}

/// Two parallel pieces: one from 0 to l, the other from s to s + m along the same direction, d apart.
double parallel_m(double l, double s, double m, double d) {
    return twice_integrated(s + m, d) - twice_integrated(s + m - l, d) - twice_integrated(s, d) +
           twice_integrated(s - l, d);
}

/// Integral of 1/R over the piece from the origin along t, seen from p, no nearer than `floor_m`.
double potential(const Vector3& p, const Vector3& t, double length_m, double floor_m) {
    const double along = dot(p, t);
    const double across = norm(p - along * t);
    const double d = std::hypot(across, floor_m);
    return std::asinh((length_m - along) / d) + std::asinh(along / d);
}

// Gauss-Legendre, 6 points on [0, 1].
constexpr std::array<double, 3> gauss_x{0.11930959304159845, 0.33060469323313226, 0.46623475710157603};
constexpr std::array<double, 3> gauss_w{0.23395696728634552, 0.18038078652406930, 0.08566224618958517};

} // namespace

units::Inductance partial_inductance(const WirePiece& one, const WirePiece& other) {
    const Vector3 a = one.to - one.from, b = other.to - other.from;
    const double la = norm(a), lb = norm(b);
    const Vector3 ta = (1 / la) * a, tb = (1 / lb) * b;
    const double cosine = dot(ta, tb);
    if (std::abs(cosine) < 1e-12) {
        return units::henries(0);
    }
    const bool same = one.conductor == other.conductor;
    // Of two conductors the distance of the axes; no less than a hair where their axes meet.
    const double floor_m = same ? one.radius_m : 1e-3 * std::min(one.radius_m, other.radius_m);
    const Vector3 between = other.from - one.from;
    if (1 - std::abs(cosine) < 1e-12) {
        const double s = dot(between, ta);
        const double d = std::hypot(norm(between - s * ta), floor_m);
        const double begin = cosine > 0 ? s : s - lb;
        return units::henries(per_4pi_H_m * std::copysign(1.0, cosine) * parallel_m(la, begin, lb, d));
    }
    double sum = 0;
    for (std::size_t i = 0; i < gauss_x.size(); ++i) {
        for (const double x : {0.5 - gauss_x.at(i), 0.5 + gauss_x.at(i)}) {
            sum += gauss_w.at(i) * potential(between + (x * lb) * tb, ta, la, floor_m);
        }
    }
    return units::henries(per_4pi_H_m * cosine * lb * sum);
}

units::Inductance partial_inductance(const std::vector<WirePiece>& one, const std::vector<WirePiece>& other) {
    units::Inductance sum = units::henries(0);
    for (const WirePiece& a : one) {
        for (const WirePiece& b : other) {
            sum += partial_inductance(a, b);
        }
    }
    return sum;
}

} // namespace loopwright::coupling
