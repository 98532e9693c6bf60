#include "loop/detail/loop_series.hpp"

#include "loop/detail/array_kernels.hpp"
#include "loop/detail/charge.hpp"
#include "loop/detail/delay_series.hpp"
#include "units/constants.hpp"

#include <Eigen/Core>
#include <algorithm>
#include <cmath>
#include <utility>

namespace loopwright::loop::detail {
namespace {

using units::constants::speed_of_light_m_s;

using Cell = std::pair<std::size_t, std::size_t>; // first span, one past the last

// Neighbouring spans of one piece taken together, up to a twelfth of the path or 0.6 radians: what is no
// longer singular needs no finer grid. On a reversible path those of the first half.
std::vector<Cell> cells_of(const geometry::WirePath& path, const std::vector<Span>& spans) {
    std::vector<Cell> cells;
    const std::size_t half = path.reversible() ? spans.size() / 2 : spans.size();
    cells.reserve(half);
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
    return cells;
}

// Where a current of the spans of a cell has its weight: integral and first moment about the middle, over the
// length.
struct Weight {
    double mean = 0, first = 0;
};

Weight weight_of(const Shape& shape, const std::vector<Span>& spans, const Cell& cell) {
    Weight weight;
    const double begin = spans[cell.first].from_m;
    const double length = spans[cell.second - 1].to_m - begin;
    const double centre = begin + 0.5 * length;
    for (std::size_t n = cell.first; n < cell.second; ++n) {
        for (const Sample& sample : spans[n].samples) {
            const double part = shape.value(spans, n, sample.s_m) * sample.weight_m / length;
            weight.mean += part;
            weight.first += part * (sample.s_m - centre);
        }
    }
    return weight;
}

constexpr Eigen::Index column(std::size_t name, std::size_t i = 0) {
    return static_cast<Eigen::Index>(name + i);
}

void put(Nodes& nodes, Eigen::Index row, const geometry::Vector3& place, const geometry::Vector3& element) {
    nodes.columns.row(row).head<6>() << place.x, place.y, place.z, element.x, element.y, element.z;
}

// A half turn about the axis from the capacitor to the point opposite maps a reversible path on itself, run
// backwards.
void add_images(Nodes& nodes, const geometry::WirePath& path, const geometry::Vector3& centre) {
    const geometry::Vector3 start = path.capacitor_point() - centre;
    const geometry::Vector3 axis = unit(path.opposite_point() - path.capacitor_point());
    const Eigen::Index half = nodes.columns.rows() / 2;
    for (Eigen::Index n = 0; n < half; ++n) {
        const auto row = nodes.columns.row(n);
        const geometry::Vector3 from = geometry::Vector3{row(0), row(1), row(2)} - start;
        const geometry::Vector3 element{row(3), row(4), row(5)};
        put(nodes, n + half, start + 2 * dot(axis, from) * axis - from,
            element - 2 * dot(axis, element) * axis);
    }
    nodes.columns.block(half, column(shapes_of_node), half, 2) =
        nodes.columns.block(0, column(shapes_of_node), half, 2);
    nodes.columns.block(half, column(charges_of_node), half, 2) =
        -nodes.columns.block(0, column(charges_of_node), half, 2);
}

// Two points for each cell, which keep the integral and the first moment of every current and every charge.
Nodes nodes_of(const geometry::WirePath& path, const ChargeSolution& solution,
               const geometry::Vector3& centre) {
    const std::vector<Cell> cells = cells_of(path, solution.spans);
    const std::size_t rows = 2 * cells.size() * (path.reversible() ? 2 : 1);
    Nodes nodes{Eigen::ArrayXXd(static_cast<Eigen::Index>(rows), column(node_columns)), path.reversible()};
    Eigen::Index row = 0;
    for (const Cell& cell : cells) {
        const Span& span = solution.spans[cell.first];
        const double length = solution.spans[cell.second - 1].to_m - span.from_m;
        const double middle = span.from_m + 0.5 * length - path.begin_m(span.piece);
        const geometry::Piece& piece = path.pieces()[span.piece];
        for (const double side : {-1.0, 1.0}) {
            const Place at = place_on(piece, (middle + side * length / std::sqrt(12.0)) / piece.length_m());
            put(nodes, row, at.point - centre, 0.5 * length * at.tangent);
            ++row;
        }
        for (std::size_t i = 1; i < currents; ++i) {
            const Weight weight = weight_of(solution.shape[i], solution.spans, cell);
            // int f' ds = f(end) - f(begin); int f' (s - centre) ds = mean of the ends - mean of f.
            const double start = solution.shape[i].ends[cell.first];
            const double end = solution.shape[i].ends[cell.second];
            const double moment = 0.5 * (start + end) - weight.mean;
            const double lean = std::sqrt(12.0);
            for (const double side : {-1.0, 1.0}) {
                const Eigen::Index n = side < 0 ? row - 2 : row - 1;
                nodes.columns(n, column(shapes_of_node, i - 1)) =
                    weight.mean + side * lean / length * weight.first;
                nodes.columns(n, column(charges_of_node, i - 1)) =
                    0.5 * (end - start) + 0.5 * side * lean * moment;
            }
        }
    }
    if (nodes.images) {
        add_images(nodes, path, centre);
    }
    return nodes;
}

// Of the nodes, each pair once.
DelayMoments moments_of(const Nodes& nodes, double radius_m) {
    DelayMoments m;
    const std::size_t rows = nodes.size();
    const std::size_t half = nodes.images ? rows / 2 : rows;
    PairBlock block;
    const auto flush = [&] {
        sum_powers(block, nodes.images, DelayMoments::powers, m.current.data(), m.charge.data());
        block.size = 0;
    };
    for (std::size_t p = 0; p < half; ++p) {
        for (std::size_t from = p; from < half;) {
            const std::size_t to = std::min(half, from + PairBlock::capacity - block.size);
            add_pairs(block, nodes.columns.data(), rows, nodes.images ? half : 0, p, from, to,
                      2 * radius_m * radius_m);
            from = to;
            if (block.size == PairBlock::capacity) {
                flush();
            }
        }
    }
    flush();
    // Exactly zero round a closed path: the sum of the charges, the moment of the uniform current.
    std::fill_n(m.charge.begin(), PairBlock::charge_products, 0.0);
    for (std::size_t k = 0; k < currents; ++k) {
        m.current[entry(0, k)] = 0;
    }
    // The images' rows give as much again.
    if (nodes.images) {
        const auto twice = [](double value) { return 2 * value; };
        std::transform(m.current.begin(), m.current.end(), m.current.begin(), twice);
        std::transform(m.charge.begin(), m.charge.end(), m.charge.begin(), twice);
    }
    return m;
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
    const Nodes nodes = nodes_of(path, solution, centre);
    add_delays(moments_of(nodes, radius_m), series);
    for (std::size_t e = 0; e < series.mean.size(); ++e) {
        series.reactance[e].c[0] += solution.inductances_H[e] * speed_of_light_m_s;
    }
    loop.directions.reserve(directions.size());
    for (const geometry::Vector3& direction : directions) {
        loop.directions.emplace_back(direction, nodes);
    }
    return loop;
}

} // namespace loopwright::loop::detail
