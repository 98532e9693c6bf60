#include "moment_methods.hpp"

#include <Eigen/Dense>

#include <algorithm>
#include <array>
#include <cmath>

namespace loopwright::test {
namespace {

constexpr double vacuum_F_m = 8.8541878128e-12; // CODATA 2018
constexpr double pi = 3.141592653589793;

// Ends of pieces that crowd towards both ends of a side, 0 to 1.
double crowded(int i, int pieces) {
    return 0.5 * (1 - std::cos(pi * i / pieces));
}

// Charge on body 1 at 1 V against body 0, no charge on the whole: potentials[i][k] is that of a charge
// density 1 on piece k at the middle of piece i.
double against(const Eigen::MatrixXd& potentials, const std::vector<double>& sizes,
               const std::vector<int>& body) {
    const auto n = potentials.rows();
    Eigen::MatrixXd matrix = Eigen::MatrixXd::Zero(n + 1, n + 1);
    Eigen::VectorXd volts = Eigen::VectorXd::Zero(n + 1);
    matrix.topLeftCorner(n, n) = potentials;
    for (Eigen::Index i = 0; i < n; ++i) {
        matrix(i, n) = 1;
        matrix(n, i) = sizes[static_cast<std::size_t>(i)];
        volts(i) = body[static_cast<std::size_t>(i)];
    }
    const Eigen::VectorXd density = matrix.partialPivLu().solve(volts);
    double charge = 0;
    for (Eigen::Index i = 0; i < n; ++i) {
        charge += body[static_cast<std::size_t>(i)] * density(i) * sizes[static_cast<std::size_t>(i)];
    }
    return charge;
}

struct Segment {
    double x0, y0, x1, y1;
    int body;
    [[nodiscard]] double length() const { return std::hypot(x1 - x0, y1 - y0); }
};

void side(std::vector<Segment>& all, const Segment& whole, int pieces) {
    const double dx = whole.x1 - whole.x0, dy = whole.y1 - whole.y0;
    for (int i = 0; i < pieces; ++i) {
        const double a = crowded(i, pieces), b = crowded(i + 1, pieces);
        all.push_back(
            {whole.x0 + dx * a, whole.y0 + dy * a, whole.x0 + dx * b, whole.y0 + dy * b, whole.body});
    }
}

// Integral of -ln(distance) along a segment.
double log_potential(const Segment& s, double x, double y) {
    const double half = s.length() / 2;
    const double along =
        ((x - (s.x0 + s.x1) / 2) * (s.x1 - s.x0) + (y - (s.y0 + s.y1) / 2) * (s.y1 - s.y0)) / (2 * half);
    const double across =
        ((y - (s.y0 + s.y1) / 2) * (s.x1 - s.x0) - (x - (s.x0 + s.x1) / 2) * (s.y1 - s.y0)) / (2 * half);
    const auto part = [&](double u) {
        const double square = u * u + across * across;
        return square > 0 ? u / 2 * std::log(square) : 0.0;
    };
    const double angle =
        across != 0 ? across * (std::atan((along + half) / across) - std::atan((along - half) / across))
                    : 0.0;
    return -(part(along + half) - part(along - half) - 2 * half + angle);
}

// Integral of 1/distance over a rectangle; (x, y) from its corner, z above it.
double rectangle_part(double a, double b, double z) {
    const double r = std::sqrt(a * a + b * b + z * z);
    double value = z != 0 ? -z * std::atan2(a * b, z * r) : 0.0;
    value += std::abs(a) > 1e-15 ? a * std::log(std::max(b + r, 1e-300)) : 0.0;
    value += std::abs(b) > 1e-15 ? b * std::log(std::max(a + r, 1e-300)) : 0.0;
    return value;
}

struct Ring {
    double z0, z1, radius;
    int body;
};

constexpr std::array<double, 4> gauss_x{0.1834346424956498, 0.5255324099163290, 0.7966664774136267,
                                        0.9602898564975363};
constexpr std::array<double, 4> gauss_w{0.3626837833783620, 0.3137066458778873, 0.2223810344533745,
                                        0.1012285362903763};

template <class F>
double gauss(const F& f) { // 0 to 1
    double sum = 0;
    for (std::size_t i = 0; i < gauss_x.size(); ++i) {
        sum += gauss_w[i] / 2 * (f(0.5 * (1 - gauss_x[i])) + f(0.5 * (1 + gauss_x[i])));
    }
    return sum;
}

// Of a band of charge 1 per length, times 4 pi eps0: (2/pi) K(k)/sqrt((r + R)^2 + dz^2) along the band, its
// logarithm flattened where the point lies beside it.
double band_potential(const Ring& band, double r, double z) {
    const auto ring = [&](double at) {
        const double square = (r + band.radius) * (r + band.radius) + (z - at) * (z - at);
        const double k = std::sqrt(std::min(4 * r * band.radius / square, 1 - 1e-16));
        return 2 / pi * std::comp_ellint_1(k) / std::sqrt(square);
    };
    if (z <= band.z0 || z >= band.z1) {
        return (band.z1 - band.z0) * gauss([&](double t) { return ring(band.z0 + t * (band.z1 - band.z0)); });
    }
    const auto from_point = [&](double way) {
        return std::abs(way) * gauss([&](double t) { return 3 * t * t * ring(z + way * t * t * t); });
    };
    return from_point(band.z0 - z) + from_point(band.z1 - z);
}

} // namespace

double stack_2d(double length, double overlap, double spacing, double thickness, int plates, int pieces) {
    std::vector<Segment> all;
    for (int k = 0; k < plates; ++k) {
        const double x0 = k % 2 == 0 ? 0 : overlap - length, x1 = x0 + length;
        const double low = k * (spacing + thickness), high = low + thickness;
        const int body = k % 2;
        side(all, {x0, low, x1, low, body}, pieces);
        if (thickness > 0) {
            side(all, {x1, low, x1, high, body}, std::max(6, pieces / 8));
            side(all, {x1, high, x0, high, body}, pieces);
            side(all, {x0, high, x0, low, body}, std::max(6, pieces / 8));
        }
    }
    const auto n = static_cast<Eigen::Index>(all.size());
    Eigen::MatrixXd potentials(n, n);
    std::vector<double> sizes;
    std::vector<int> body;
    for (Eigen::Index i = 0; i < n; ++i) {
        const Segment& at = all[static_cast<std::size_t>(i)];
        sizes.push_back(at.length());
        body.push_back(at.body);
        for (Eigen::Index k = 0; k < n; ++k) {
            potentials(i, k) =
                log_potential(all[static_cast<std::size_t>(k)], (at.x0 + at.x1) / 2, (at.y0 + at.y1) / 2) /
                (2 * pi);
        }
    }
    return against(potentials, sizes, body);
}

double plates_3d_F(double width_m, double length_m, double overlap_m, double spacing_m, int pieces) {
    struct Patch {
        double x0, x1, y0, y1;
        int body;
    };
    std::vector<Patch> all;
    std::vector<double> sizes;
    std::vector<int> bodies;
    for (const int body : {0, 1}) {
        const double start = body == 0 ? 0 : overlap_m - length_m;
        for (int i = 0; i < pieces * pieces; ++i) {
            const int a = i / pieces, b = i % pieces;
            all.push_back({start + length_m * crowded(a, pieces), start + length_m * crowded(a + 1, pieces),
                           width_m * crowded(b, pieces), width_m * crowded(b + 1, pieces), body});
            sizes.push_back((all.back().x1 - all.back().x0) * (all.back().y1 - all.back().y0));
            bodies.push_back(body);
        }
    }
    const auto n = static_cast<Eigen::Index>(all.size());
    Eigen::MatrixXd potentials(n, n);
    for (Eigen::Index i = 0; i < n; ++i) {
        const Patch& at = all[static_cast<std::size_t>(i)];
        const double x = (at.x0 + at.x1) / 2, y = (at.y0 + at.y1) / 2;
        for (Eigen::Index k = 0; k < n; ++k) {
            const Patch& p = all[static_cast<std::size_t>(k)];
            const double z = p.body == at.body ? 0 : spacing_m;
            potentials(i, k) =
                (rectangle_part(p.x1 - x, p.y1 - y, z) - rectangle_part(p.x0 - x, p.y1 - y, z) -
                 rectangle_part(p.x1 - x, p.y0 - y, z) + rectangle_part(p.x0 - x, p.y0 - y, z)) /
                (4 * pi * vacuum_F_m);
        }
    }
    return against(potentials, sizes, bodies);
}

double tubes_F(double inner_radius_m, double outer_radius_m, double length_m, double overlap_m, int pieces) {
    std::vector<Ring> all;
    std::vector<double> sizes;
    std::vector<int> bodies;
    for (const int body : {0, 1}) {
        const double start = body == 0 ? 0 : overlap_m - length_m;
        for (int i = 0; i < pieces; ++i) {
            all.push_back({start + length_m * crowded(i, pieces), start + length_m * crowded(i + 1, pieces),
                           body == 0 ? outer_radius_m : inner_radius_m, body});
            sizes.push_back(all.back().z1 - all.back().z0);
            bodies.push_back(body);
        }
    }
    const auto n = static_cast<Eigen::Index>(all.size());
    Eigen::MatrixXd potentials(n, n);
    for (Eigen::Index i = 0; i < n; ++i) {
        const Ring& at = all[static_cast<std::size_t>(i)];
        for (Eigen::Index k = 0; k < n; ++k) {
            potentials(i, k) =
                band_potential(all[static_cast<std::size_t>(k)], at.radius, (at.z0 + at.z1) / 2) /
                (4 * pi * vacuum_F_m);
        }
    }
    return against(potentials, sizes, bodies);
}

} // namespace loopwright::test
