#include "loop/detail/loop_series.hpp"

#include "loop/detail/charge.hpp"
#include "units/constants.hpp"

#include <Eigen/Core>
#include <cmath>
#include <tuple>
#include <utility>

namespace loopwright::loop::detail {
namespace {

using units::constants::free_space_impedance_ohm;
using units::constants::pi;
using units::constants::speed_of_light_m_s;

constexpr std::size_t powers = 7; // R^0 to R^6

using Cell = std::pair<std::size_t, std::size_t>; // first span, one past the last

// Neighbouring spans of one piece taken together, up to a twelfth of the path or 0.6 radians: what is no
// longer singular needs no finer grid. On a reversible path the second half mirrors the first.
std::vector<Cell> cells_of(const geometry::WirePath& path, const std::vector<Span>& spans) {
    std::vector<Cell> cells;
    const std::size_t half = path.reversible() ? spans.size() / 2 : spans.size();
    std::size_t from = 0;
    while (from < half) {
        const geometry::Piece& piece = path.pieces()[spans[from].piece];
        const double turning = std::abs(piece.turning_angle()) / piece.length_m();
        const double longest = turning > 0 ? 0.6 / turning : path.length_m() / 12;
        std::size_t to = from + 1;
        while (to < half && spans[to].piece == spans[from].piece &&
               spans[to].to_m - spans[from].from_m < longest) {
            ++to;
        }
        cells.emplace_back(from, to);
        from = to;
    }
    for (std::size_t i = cells.size(); path.reversible() && i-- > 0;) {
        cells.emplace_back(spans.size() - cells[i].second, spans.size() - cells[i].first);
    }
    return cells;
}

// Two points for each cell, which keep the integral and the first moment of every current and every charge.
Nodes nodes_of(const geometry::WirePath& path, const ChargeSolution& solution) {
    Nodes nodes;
    for (const auto& [from, to] : cells_of(path, solution.spans)) {
        const double begin = solution.spans[from].from_m;
        const double length = solution.spans[to - 1].to_m - begin;
        const double centre = begin + 0.5 * length;
        const geometry::Piece& piece = path.pieces()[solution.spans[from].piece];
        const double piece_begin = path.begin_m(solution.spans[from].piece);
        std::array<double, currents> mean{};
        std::array<double, currents> first{};
        for (std::size_t i = 0; i < currents; ++i) {
            for (std::size_t n = from; n < to; ++n) {
                for (const Sample& sample : solution.spans[n].samples) {
                    const double value = solution.shape[i].value(solution.spans, n, sample.s_m);
                    mean[i] += value * sample.weight_m / length;
                    first[i] += value * sample.weight_m * (sample.s_m - centre) / length;
                }
            }
        }
        for (const double side : {-1.0, 1.0}) {
            const double share = (centre + side * length / std::sqrt(12.0) - piece_begin) / piece.length_m();
            nodes.point.push_back(piece.point(share));
            nodes.current.push_back(0.5 * length * piece.tangent(share));
            for (std::size_t i = 0; i < currents; ++i) {
                const double lean = side * std::sqrt(12.0) / length;
                nodes.shape[i].push_back(mean[i] + lean * first[i]);
                // int f' ds = f(end) - f(begin); int f' (s - centre) ds = mean of the ends - mean of f.
                const double start = solution.shape[i].ends[from];
                const double end = solution.shape[i].ends[to];
                const double moment = 0.5 * (start + end) - mean[i];
                nodes.charge[i].push_back(0.5 * (end - start) + 0.5 * lean * length * moment);
            }
        }
    }
    return nodes;
}

// int int f f' R^p over the whole path for the currents' elements, and q q' R^p for their charges.
struct Moments {
    std::array<Symmetric<double>, powers> current{}, charge{};
};

using Values = Eigen::ArrayXd;
using Columns = Eigen::Array<double, Eigen::Dynamic, static_cast<int>(currents)>;

// The nodes as columns, for whole-array arithmetic.
struct Table {
    Values x, y, z, jx, jy, jz;
    Columns shape, charge;
    explicit Table(const Nodes& nodes) {
        const auto count = static_cast<Eigen::Index>(nodes.point.size());
        for (Values* column : {&x, &y, &z, &jx, &jy, &jz}) {
            column->resize(count);
        }
        shape.resize(count, Eigen::NoChange);
        charge.resize(count, Eigen::NoChange);
        for (Eigen::Index n = 0; n < count; ++n) {
            const auto at = static_cast<std::size_t>(n);
            std::tie(x(n), y(n), z(n)) = std::tie(nodes.point[at].x, nodes.point[at].y, nodes.point[at].z);
            std::tie(jx(n), jy(n), jz(n)) =
                std::tie(nodes.current[at].x, nodes.current[at].y, nodes.current[at].z);
            for (std::size_t i = 0; i < currents; ++i) {
                shape(n, static_cast<Eigen::Index>(i)) = nodes.shape[i][at];
                charge(n, static_cast<Eigen::Index>(i)) = nodes.charge[i][at];
            }
        }
    }
};

Moments moments_of(const Nodes& nodes, double radius_m, bool reversible) {
    Moments m;
    const Table t(nodes);
    const Eigen::Index count = t.x.size();
    const Eigen::Index outer = reversible ? count / 2 : count;
    const double twice = reversible ? 2.0 : 1.0;
    constexpr auto last = static_cast<Eigen::Index>(currents) - 1;
    Values distance(count), element(count), power(count);
    for (Eigen::Index p = 0; p < outer; ++p) {
        distance = ((t.x - t.x(p)).square() + (t.y - t.y(p)).square() + (t.z - t.z(p)).square() +
                    2 * radius_m * radius_m)
                       .sqrt();
        element = t.jx * t.jx(p) + t.jy * t.jy(p) + t.jz * t.jz(p);
        power.setOnes();
        for (std::size_t n = 0; n < powers; ++n) {
            // Sums over the second point: of the currents' parts along the first, and of the charges, of
            // which the uniform current has none.
            const Eigen::Matrix<double, 1, last + 1> flux =
                (element * power).matrix().transpose() * t.shape.matrix();
            const Eigen::Matrix<double, 1, last> potential =
                power.matrix().transpose() * t.charge.rightCols<last>().matrix();
            for (std::size_t i = 0; i < currents; ++i) {
                for (std::size_t k = i; k < currents; ++k) {
                    const auto row = static_cast<Eigen::Index>(i);
                    const auto column = static_cast<Eigen::Index>(k);
                    m.current[n][entry(i, k)] += twice * t.shape(p, row) * flux(column);
                    m.charge[n][entry(i, k)] +=
                        i == 0 ? 0.0 : twice * t.charge(p, row) * potential(column - 1);
                }
            }
            power *= distance;
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

PreparedLoop prepare_loop(const geometry::WirePath& path, double radius_m, double inductance_H,
                          const std::vector<geometry::Vector3>& directions, const geometry::Vector3& centre,
                          const Cutting& cutting) {
    const ChargeSolution solution = solve_charge(path, radius_m, inductance_H, cutting);
    PreparedLoop loop;
    LoopSeries& series = loop.series;
    series.length_m = path.length_m();
    series.inductance_H = solution.inductance_H;
    series.self_capacitance_F = solution.self_capacitance_F;
    series.mean = solution.mean;
    series.elastance_1_F = solution.elastances_1_F;
    const Nodes nodes = nodes_of(path, solution);
    gather(moments_of(nodes, radius_m, path.reversible()), series);
    for (std::size_t e = 0; e < series.mean.size(); ++e) {
        series.reactance[e].c[0] += solution.inductances_H[e] * speed_of_light_m_s;
    }
    for (const geometry::Vector3& direction : directions) {
        loop.directions.emplace_back(direction, centre, nodes);
    }
    return loop;
}

} // namespace loopwright::loop::detail
