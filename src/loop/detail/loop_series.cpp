#include "loop/detail/loop_series.hpp"

#include "loop/detail/charge.hpp"
#include "units/constants.hpp"

#include <cmath>

namespace loopwright::loop::detail {
namespace {

using geometry::cross;
using geometry::dot;
using geometry::Vector3;
using units::constants::free_space_impedance_ohm;
using units::constants::pi;
using units::constants::speed_of_light_m_s;

constexpr std::size_t powers = 7; // R^0 to R^6

// The path as points with the current elements and charges that stand for the spans.
struct Nodes {
    std::vector<Vector3> point, current;                     ///< current: tangent times weight
    std::array<std::vector<double>, currents> shape, charge; ///< charge: slope of the shape times weight
};

Nodes nodes_of(const ChargeSolution& solution) {
    Nodes nodes;
    for (std::size_t n = 0; n < solution.spans.size(); ++n) {
        const Span& span = solution.spans[n];
        for (const Sample& sample : span.samples) {
            nodes.point.push_back(sample.point);
            nodes.current.push_back(sample.weight_m * sample.tangent);
            for (std::size_t i = 0; i < currents; ++i) {
                const Shape& shape = solution.shape[i];
                nodes.shape[i].push_back(shape.value(solution.spans, n, sample.s_m));
                nodes.charge[i].push_back(sample.weight_m * shape.charge(solution.spans, n, sample.s_m));
            }
        }
    }
    return nodes;
}

// int int f f' R^p over the whole path for the currents' elements, and q q' R^p for their charges.
struct Moments {
    std::array<Symmetric<double>, powers> current{}, charge{};
};

Moments moments_of(const Nodes& nodes, double radius_m, bool reversible) {
    Moments m;
    const std::size_t count = nodes.point.size();
    const std::size_t outer = reversible ? count / 2 : count;
    const double twice = reversible ? 2.0 : 1.0;
    for (std::size_t p = 0; p < outer; ++p) {
        // Sums over the second point: of the current's part along the first, of the charge.
        std::array<std::array<double, currents>, powers> flux{}, potential{};
        for (std::size_t q = 0; q < count; ++q) {
            const Vector3 between = nodes.point[p] - nodes.point[q];
            const double distance = std::sqrt(dot(between, between) + 2 * radius_m * radius_m);
            double power = 1;
            const double element = dot(nodes.current[p], nodes.current[q]);
            for (std::size_t n = 0; n < powers; ++n) {
                for (std::size_t i = 0; i < currents; ++i) {
                    flux[n][i] += power * element * nodes.shape[i][q];
                    potential[n][i] += power * nodes.charge[i][q];
                }
                power *= distance;
            }
        }
        for (std::size_t n = 0; n < powers; ++n) {
            for (std::size_t i = 0; i < currents; ++i) {
                for (std::size_t k = i; k < currents; ++k) {
                    m.current[n][entry(i, k)] += twice * nodes.shape[i][p] * flux[n][k];
                    m.charge[n][entry(i, k)] += twice * nodes.charge[i][p] * potential[n][k];
                }
            }
        }
    }
    // Exactly zero round a closed path: the sum of the charges, the moment of the uniform current.
    m.charge[0] = {};
    for (std::size_t k = 0; k < currents; ++k) {
        m.current[0][entry(0, k)] = 0;
    }
    return m;
}

double sign_of(std::size_t half) {
    return half % 2 == 0 ? 1.0 : -1.0;
}

void add_to(EvenSeries& series, std::size_t power_of_x, double value) {
    if (power_of_x < EvenSeries::terms) {
        series.c[power_of_x] += value;
    }
}

// exp(-jkR)/R = sum (-jk)^m R^(m-1) / m!. Odd m: resistance; even m from 2: reactance. Factors: j omega mu0 /
// (4 pi) for the currents, 1 / (j omega 4 pi eps0) for the charges.
void gather(const Moments& moments, LoopSeries& series) {
    double factor = free_space_impedance_ohm / (4 * pi);
    for (std::size_t m = 1; m <= powers; ++m) {
        factor /= double(m);
        const double signed_factor = factor * sign_of(m / 2);
        for (std::size_t e = 0; e < series.mean.size(); ++e) {
            const double current = signed_factor * moments.current[m - 1][e];
            const double charge = signed_factor * moments.charge[m - 1][e];
            // Resistance: k k^m for the currents, k^m / k for the charges. Reactance: over k.
            auto& part = m % 2 == 1 ? series.radiation[e] : series.reactance[e];
            const std::size_t n = (m + 1) / 2;
            add_to(part, n, current);
            add_to(part, n - 1, -charge);
        }
    }
}

template <class Function>
Symmetric<double> each(const Function& function) {
    Symmetric<double> result{};
    for (std::size_t e = 0; e < result.size(); ++e) {
        result[e] = function(e);
    }
    return result;
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

Symmetric<double> LoopSeries::radiation_ohm(double k) const noexcept {
    return each([&](std::size_t e) { return radiation[e].value(k * k); });
}

Symmetric<double> LoopSeries::reactance_ohm(double k) const noexcept {
    return each([&](std::size_t e) {
        return k * reactance[e].value(k * k) - elastance_1_F[e] / (k * speed_of_light_m_s);
    });
}

Symmetric<double> LoopSeries::radiation_slope(double k) const noexcept {
    return each([&](std::size_t e) { return 2 * k * radiation[e].slope(k * k); });
}

Symmetric<double> LoopSeries::reactance_slope(double k) const noexcept {
    const double x = k * k;
    return each([&](std::size_t e) {
        return reactance[e].value(x) + 2 * x * reactance[e].slope(x) +
               elastance_1_F[e] / (x * speed_of_light_m_s);
    });
}

FarDirection::FarDirection(const Vector3& direction, const Vector3& centre)
    : direction_(unit(direction)), centre_(centre) {
    const Vector3 helper = std::abs(direction_.z) < 0.999 ? Vector3{0, 0, 1} : Vector3{1, 0, 0};
    across_ = unit(cross(helper, direction_));
    up_ = cross(direction_, across_);
}

void FarDirection::add(const Vector3& point, const Vector3& current_m,
                       const std::array<double, currents>& shape) {
    const double along = dot(direction_, point - centre_);
    const std::array<double, 2> parts{dot(current_m, up_), dot(current_m, across_)};
    for (std::size_t p = 0; p < 2; ++p) {
        double term = parts[p];
        for (std::size_t m = 0; m < terms; ++m) {
            for (std::size_t i = 0; i < currents; ++i) {
                // A closed path has no uniform moment of order 0.
                moments_[p][i][m] += m == 0 && i == 0 ? 0 : term * shape[i];
            }
            term *= along / double(m + 1);
        }
    }
}

double FarDirection::power(double k, const CurrentVector& coefficients) const noexcept {
    double sum = 0;
    for (const auto& polarisation : moments_) {
        std::complex<double> field = 0;
        for (std::size_t i = 0; i < currents; ++i) {
            double even = 0;
            double odd = 0;
            for (std::size_t m = terms; m-- > 0;) {
                // (jk)^m by Horner's rule on the pair: (even + j odd) -> term + j k (even + j odd).
                const double next = polarisation[i][m] - k * odd;
                odd = k * even;
                even = next;
            }
            field += coefficients[i] * std::complex<double>(even, odd);
        }
        sum += std::norm(field);
    }
    return sum;
}

PreparedLoop prepare_loop(const geometry::WirePath& path, double radius_m, double inductance_H,
                          const std::vector<Vector3>& directions, const Vector3& centre,
                          const Cutting& cutting) {
    const ChargeSolution solution = solve_charge(path, radius_m, inductance_H, cutting);
    PreparedLoop loop;
    LoopSeries& series = loop.series;
    series.length_m = path.length_m();
    series.inductance_H = solution.inductance_H;
    series.self_capacitance_F = solution.self_capacitance_F;
    series.mean = solution.mean;
    series.elastance_1_F = solution.elastances_1_F;
    const Nodes nodes = nodes_of(solution);
    gather(moments_of(nodes, radius_m, path.reversible()), series);
    for (std::size_t e = 0; e < series.mean.size(); ++e) {
        series.reactance[e].c[0] += solution.inductances_H[e] * speed_of_light_m_s;
    }
    for (const Vector3& direction : directions) {
        FarDirection far(direction, centre);
        for (std::size_t n = 0; n < nodes.point.size(); ++n) {
            far.add(nodes.point[n], nodes.current[n],
                    {nodes.shape[0][n], nodes.shape[1][n], nodes.shape[2][n]});
        }
        loop.directions.push_back(far);
    }
    return loop;
}

} // namespace loopwright::loop::detail
