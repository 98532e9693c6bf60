#include "loop/detail/loop_series.hpp"

#include "loop/detail/charge.hpp"
#include "units/constants.hpp"

#include <cmath>

namespace loopwright::loop::detail {
namespace {

using geometry::cross;
using geometry::dot;
using geometry::Vector3;
using units::constants::electric_constant_F_m;
using units::constants::free_space_impedance_ohm;
using units::constants::pi;
using units::constants::speed_of_light_m_s;

constexpr std::size_t powers = 9; // R^0 to R^8

// int int f f' R^p over the whole path for the current elements, and q q' R^p for the charges of `charge`.
struct Moments {
    std::array<double, powers> uniform{}, mixed{}, charge{}, density{};
};

struct Node {
    Vector3 point, current; // current: tangent times weight
    double shape = 0, charge = 0;
};

std::vector<Node> nodes_of(const std::vector<Span>& spans, const ChargeSolution& solution) {
    std::vector<Node> nodes;
    nodes.reserve(2 * spans.size());
    for (std::size_t i = 0; i < spans.size(); ++i) {
        const double slope =
            (solution.shape_at_ends[i + 1] - solution.shape_at_ends[i]) / spans[i].length_m();
        for (const Sample& sample : spans[i].samples) {
            nodes.push_back({sample.point, sample.weight_m * sample.tangent,
                             solution.shape_at_ends[i] + slope * (sample.s_m - spans[i].from_m),
                             slope * sample.weight_m});
        }
    }
    return nodes;
}

Moments moments_of(const std::vector<Node>& nodes, double radius_m, bool reversible) {
    Moments m;
    const std::size_t outer = reversible ? nodes.size() / 2 : nodes.size();
    const double twice = reversible ? 2.0 : 1.0;
    for (std::size_t i = 0; i < outer; ++i) {
        const Node& p = nodes[i];
        for (const Node& q : nodes) {
            const Vector3 between = p.point - q.point;
            const double distance = std::sqrt(dot(between, between) + 2 * radius_m * radius_m);
            double current = twice * dot(p.current, q.current);
            double density = twice * p.charge * q.charge;
            const double mixed = 0.5 * (p.shape + q.shape);
            const double both = p.shape * q.shape;
            for (std::size_t power = 0; power < powers; ++power) {
                m.uniform[power] += current;
                m.mixed[power] += current * mixed;
                m.charge[power] += current * both;
                m.density[power] += density;
                current *= distance;
                density *= distance;
            }
        }
    }
    // Exactly zero round a closed path.
    m.uniform[0] = m.mixed[0] = m.density[0] = 0;
    return m;
}

double sign_of(std::size_t half) {
    return half % 2 == 0 ? 1.0 : -1.0;
}

// exp(-jkR)/R = sum (-jk)^m R^(m-1) / m!. Odd m: resistance; even m from 2: reactance. Factors: j omega mu0 /
// (4 pi) for the currents, 1 / (j omega 4 pi eps0) for the charges.
void gather(const Moments& moments, LoopSeries& series) {
    const double factor = free_space_impedance_ohm / (4 * pi);
    double factorial = 1;
    for (std::size_t m = 1; m <= powers; ++m) {
        factorial *= double(m);
        const double currents = factor / factorial * sign_of(m / 2);
        const std::size_t power = m - 1;
        if (m % 2 == 1) {
            // k k^m: x^((m+1)/2); charges k^m / k: x^((m-1)/2).
            const std::size_t n = (m + 1) / 2;
            if (n < EvenSeries::terms) {
                series.radiation.uniform.c[n] += currents * moments.uniform[power];
                series.radiation.mixed.c[n] += currents * moments.mixed[power];
                series.radiation.charge.c[n] += currents * moments.charge[power];
            }
            series.radiation.charge.c[n - 1] -= currents * moments.density[power];
        } else {
            // k k^m = k x^(m/2); charges k^m / k = k x^(m/2 - 1).
            const std::size_t n = m / 2;
            series.reactance.uniform.c[n] += currents * moments.uniform[power];
            series.reactance.mixed.c[n] += currents * moments.mixed[power];
            series.reactance.charge.c[n] += currents * moments.charge[power];
            series.reactance.charge.c[n - 1] -= currents * moments.density[power];
        }
    }
}

} // namespace

double EvenSeries::value(double x) const noexcept {
    double sum = 0;
    for (std::size_t i = terms; i-- > 0;) {
        sum = sum * x + c[i];
    }
    return sum;
}

double EvenSeries::slope(double x) const noexcept {
    double sum = 0;
    for (std::size_t i = terms; i-- > 1;) {
        sum = sum * x + double(i) * c[i];
    }
    return sum;
}

Pair<double> LoopSeries::radiation_ohm(double k) const noexcept {
    const double x = k * k;
    return {radiation.uniform.value(x), radiation.mixed.value(x), radiation.charge.value(x)};
}

Pair<double> LoopSeries::reactance_ohm(double k) const noexcept {
    const double x = k * k;
    return {k * reactance.uniform.value(x), k * reactance.mixed.value(x),
            k * reactance.charge.value(x) - elastance_1_F / (k * speed_of_light_m_s)};
}

Pair<double> LoopSeries::radiation_slope(double k) const noexcept {
    const double x = k * k;
    return {2 * k * radiation.uniform.slope(x), 2 * k * radiation.mixed.slope(x),
            2 * k * radiation.charge.slope(x)};
}

Pair<double> LoopSeries::reactance_slope(double k) const noexcept {
    const double x = k * k;
    const auto slope = [x](const EvenSeries& s) { return s.value(x) + 2 * x * s.slope(x); };
    return {slope(reactance.uniform), slope(reactance.mixed),
            slope(reactance.charge) + elastance_1_F / (x * speed_of_light_m_s)};
}

FarDirection::FarDirection(const Vector3& direction, const Vector3& centre)
    : direction_(unit(direction)), centre_(centre) {
    const Vector3 helper = std::abs(direction_.z) < 0.999 ? Vector3{0, 0, 1} : Vector3{1, 0, 0};
    across_ = unit(cross(helper, direction_));
    up_ = cross(direction_, across_);
}

void FarDirection::add(const Vector3& point, const Vector3& tangent, double weight_m, double shape) {
    const double along = dot(direction_, point - centre_);
    const std::array<double, 2> parts{weight_m * dot(tangent, up_), weight_m * dot(tangent, across_)};
    for (std::size_t p = 0; p < 2; ++p) {
        double term = parts[p];
        for (std::size_t m = 0; m < terms; ++m) {
            moments_[p][0][m] += m == 0 ? 0 : term; // a closed path has no uniform moment of order 0
            moments_[p][1][m] += term * shape;
            term *= along / double(m + 1);
        }
    }
}

double FarDirection::power(double k, std::complex<double> c0, std::complex<double> c1) const noexcept {
    double sum = 0;
    for (const auto& polarisation : moments_) {
        std::complex<double> field = 0;
        std::array<std::array<double, 2>, 2> part{}; // [current][even, odd]
        for (std::size_t current = 0; current < 2; ++current) {
            double scale = 1;
            for (std::size_t m = 0; m < terms; ++m) {
                part[current][m % 2] += sign_of(m / 2) * scale * polarisation[current][m];
                scale *= k;
            }
        }
        field = c0 * std::complex<double>(part[0][0], part[0][1]) +
                c1 * std::complex<double>(part[1][0], part[1][1]);
        sum += std::norm(field);
    }
    return sum;
}

PreparedLoop prepare_loop(const geometry::WirePath& path, double radius_m, double inductance_H,
                          const std::vector<Vector3>& directions, const Vector3& centre) {
    const ChargeSolution solution = solve_charge(path, radius_m, inductance_H);
    PreparedLoop loop;
    LoopSeries& series = loop.series;
    series.length_m = path.length_m();
    series.inductance_H = solution.inductance_H;
    series.self_capacitance_F = solution.self_capacitance_F;
    series.mean_shape = solution.mean_shape;
    series.mean_square_shape = solution.mean_square_shape;
    series.elastance_1_F = solution.elastance_1_F;
    series.reactance.uniform.c[0] = solution.inductance_H * speed_of_light_m_s;
    series.reactance.mixed.c[0] = solution.mixed_inductance_H * speed_of_light_m_s;
    series.reactance.charge.c[0] = solution.charge_inductance_H * speed_of_light_m_s;
    const std::vector<Node> nodes = nodes_of(solution.spans, solution);
    gather(moments_of(nodes, radius_m, path.reversible()), series);
    for (const Vector3& direction : directions) {
        loop.directions.emplace_back(direction, centre);
        for (const Node& node : nodes) {
            loop.directions.back().add(node.point, node.current, 1.0, node.shape);
        }
    }
    return loop;
}

} // namespace loopwright::loop::detail
