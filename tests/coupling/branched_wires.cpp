#include "coupling/branched_wires.hpp"

#include "units/constants.hpp"

#include <Eigen/Dense>

#include <cmath>
#include <utility>

namespace loopwright::coupling::testing {

namespace {

using Complex = std::complex<double>;
using units::constants::pi;
constexpr double mu0 = 1.25663706127e-6, speed = 299792458.0; // CODATA 2022
constexpr double epsilon0 = 1.0 / (mu0 * speed * speed);

Point between(const Point& a, const Point& b, double share) {
    return {a.x + share * (b.x - a.x), a.z + share * (b.z - a.z)};
}

/// A straight piece, for currents or for charges.
struct Bar {
    Point from, to;
    double radius_m = 0;
    [[nodiscard]] double length() const { return std::hypot(to.x - from.x, to.z - from.z); }
    [[nodiscard]] Point middle() const { return between(from, to, 0.5); }
};

/// Integral of 1/sqrt(R^2 + a^2) over a bar, seen from a point: the potential of a filament on the surface.
double inverse_distance(const Point& at, const Bar& bar, double a2) {
    const double l = bar.length();
    const double ux = (bar.to.x - bar.from.x) / l, uz = (bar.to.z - bar.from.z) / l;
    const double dx = at.x - bar.from.x, dz = at.z - bar.from.z;
    const double along = dx * ux + dz * uz, aside = dx * uz - dz * ux;
    const double h = std::sqrt(aside * aside + a2);
    return std::asinh((l - along) / h) - std::asinh(-along / h);
}

/// Mean of 1/R between two bars [1/m], radius of the one that is looked at where they share a conductor.
double static_mean(const Bar& one, const Bar& other) {
    static constexpr std::array<double, 4> x = {0.1834346424956498, 0.5255324099163290, 0.7966664774136267,
                                                0.9602898564975363};
    static constexpr std::array<double, 4> w = {0.3626837833783620, 0.3137066458778873, 0.2223810344533745,
                                                0.1012285362903763};
    const double radius_m = std::max(one.radius_m, other.radius_m), a2 = radius_m * radius_m;
    const Point p = one.middle(), q = other.middle();
    constexpr double far_lengths = 5; // the filament is then exact to (length/distance)^4 with its own length
    if (std::hypot(p.x - q.x, p.z - q.z) > far_lengths * std::max(one.length(), other.length())) {
        return inverse_distance(p, other, a2) / other.length();
    }
    double sum = 0;
    constexpr int parts = 4;
    for (int part = 0; part < parts; ++part) {
        for (std::size_t i = 0; i < x.size(); ++i) {
            for (const double side : {-1.0, 1.0}) {
                const double share = (part + 0.5 + 0.5 * side * x[i]) / parts;
                sum += 0.5 * w[i] / parts * inverse_distance(between(one.from, one.to, share), other, a2);
            }
        }
    }
    return sum / other.length();
}

/// Mean of exp(-jkR)/R: the smooth rest of it taken between the middles.
Complex mean_kernel(const Bar& one, const Bar& other, double k) {
    const Point p = one.middle(), q = other.middle();
    const double r = std::hypot(p.x - q.x, p.z - q.z);
    const Complex rest = r > 0 ? (std::polar(1.0, -k * r) - 1.0) / r : Complex(0, -k);
    return 0.5 * (static_mean(one, other) + static_mean(other, one)) + rest;
}

} // namespace

std::size_t BranchedWires::add_node(const Point& at) {
    nodes_.push_back(at);
    return nodes_.size() - 1;
}

std::size_t BranchedWires::add_wire(std::size_t from, std::size_t to, std::size_t segments, double radius_m,
                                    Complex ohm_per_m) {
    const std::size_t first = segments_.size();
    const Point a = nodes_.at(from), b = nodes_.at(to);
    std::size_t last = from;
    for (std::size_t i = 1; i <= segments; ++i) {
        const std::size_t next =
            i == segments ? to
                          : add_node(between(a, b, static_cast<double>(i) / static_cast<double>(segments)));
        segments_.push_back({last, next, radius_m, ohm_per_m});
        last = next;
    }
    return first;
}

std::array<Complex, 3> BranchedWires::open_impedances(double frequency_Hz, const Gap& gap1,
                                                      const Gap& gap2) const {
    const double omega = 2 * pi * frequency_Hz, k = omega / speed;
    const auto count = static_cast<Eigen::Index>(segments_.size());
    std::vector<Bar> bars;
    struct Half {
        Bar bar;
        std::size_t node;
    };
    std::vector<Half> halves; // a node's charge lies on the halves around it, by length
    std::vector<double> node_length(nodes_.size(), 0);
    for (const Segment& s : segments_) {
        const Bar bar{nodes_[s.from], nodes_[s.to], s.radius_m};
        bars.push_back(bar);
        halves.push_back({{bar.from, bar.middle(), s.radius_m}, s.from});
        halves.push_back({{bar.middle(), bar.to, s.radius_m}, s.to});
        node_length[s.from] += 0.5 * bar.length();
        node_length[s.to] += 0.5 * bar.length();
    }
    Eigen::MatrixXcd potential = Eigen::MatrixXcd::Zero(static_cast<Eigen::Index>(nodes_.size()),
                                                        static_cast<Eigen::Index>(nodes_.size()));
    for (const Half& p : halves) {
        for (const Half& q : halves) {
            const double share = p.bar.length() / node_length[p.node] * q.bar.length() / node_length[q.node];
            potential(static_cast<Eigen::Index>(p.node), static_cast<Eigen::Index>(q.node)) +=
                share * mean_kernel(p.bar, q.bar, k) / (4 * pi * epsilon0);
        }
    }
    Eigen::MatrixXcd z(count, count);
    const Complex j(0, 1);
    for (Eigen::Index m = 0; m < count; ++m) {
        const Segment& sm = segments_[static_cast<std::size_t>(m)];
        const Bar& bm = bars[static_cast<std::size_t>(m)];
        const auto mf = static_cast<Eigen::Index>(sm.from), mt = static_cast<Eigen::Index>(sm.to);
        for (Eigen::Index n = 0; n < count; ++n) {
            const Segment& sn = segments_[static_cast<std::size_t>(n)];
            const Bar& bn = bars[static_cast<std::size_t>(n)];
            const auto nf = static_cast<Eigen::Index>(sn.from), nt = static_cast<Eigen::Index>(sn.to);
            const double dot =
                (bm.to.x - bm.from.x) * (bn.to.x - bn.from.x) + (bm.to.z - bm.from.z) * (bn.to.z - bn.from.z);
            const Complex charge =
                potential(mt, nt) - potential(mt, nf) - potential(mf, nt) + potential(mf, nf);
            z(m, n) = j * omega * mu0 / (4 * pi) * dot * mean_kernel(bm, bn, k) + charge / (j * omega);
        }
    }
    for (Eigen::Index m = 0; m < count; ++m) {
        const auto i = static_cast<std::size_t>(m);
        z(m, m) += segments_[i].ohm_per_m * bars[i].length();
    }
    Eigen::MatrixXcd ports = Eigen::MatrixXcd::Zero(count, 2);
    for (const auto& [column, gap] : {std::pair(0, gap1), std::pair(1, gap2)}) {
        for (std::size_t i = 0; i < gap.count; ++i) {
            ports(static_cast<Eigen::Index>(gap.first + i), column) = 1.0 / static_cast<double>(gap.count);
        }
    }
    const Eigen::MatrixXcd y = ports.transpose() * z.partialPivLu().solve(ports);
    const Complex determinant = y(0, 0) * y(1, 1) - y(0, 1) * y(1, 0);
    return {y(1, 1) / determinant, -y(0, 1) / determinant, y(0, 0) / determinant};
}

} // namespace loopwright::coupling::testing
