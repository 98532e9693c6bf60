#include "loop/detail/charge.hpp"

#include "units/constants.hpp"

#include <Eigen/Dense>
#include <algorithm>
#include <cmath>

namespace loopwright::loop::detail {
namespace {

using Eigen::MatrixXd;
using Eigen::VectorXd;
using units::constants::electric_constant_F_m;
using units::constants::magnetic_constant_H_m;
using units::constants::pi;

// Interactions of the spans. On a reversible path rows and columns are those of the first half: the scalar
// ones for charges that are opposite on the second half, the vector ones for currents that are equal there.
struct Interactions {
    MatrixXd scalar_m, vector_m;
};

Interactions interactions(const geometry::WirePath& path, const std::vector<Span>& spans, double radius_m) {
    const StaticInteraction pair(path, radius_m);
    const std::size_t whole = spans.size();
    const std::size_t count = path.reversible() ? whole / 2 : whole;
    const auto n = static_cast<Eigen::Index>(count);
    Interactions result{MatrixXd(n, n), MatrixXd(n, n)};
    for (std::size_t i = 0; i < count; ++i) {
        for (std::size_t j = i; j < count; ++j) {
            PairIntegral direct = pair(spans[i], spans[j]);
            if (path.reversible()) {
                const PairIntegral image = pair(spans[i], spans[whole - 1 - j]);
                direct.scalar_m -= image.scalar_m;
                direct.vector_m += image.vector_m;
            }
            const auto row = static_cast<Eigen::Index>(i);
            const auto column = static_cast<Eigen::Index>(j);
            result.scalar_m(row, column) = result.scalar_m(column, row) = direct.scalar_m;
            result.vector_m(row, column) = result.vector_m(column, row) = direct.vector_m;
        }
    }
    return result;
}

// Potential for 1 V at the gap, integrated over each span [m]: it rises evenly over the gap, by 1 in all, and
// falls along the whole path as the flux does, (L.7).
VectorXd potential(const std::vector<Span>& spans, const VectorXd& flux, double gap_m, double length_m) {
    const auto n = flux.size();
    VectorXd result(n);
    double level = 0;
    for (Eigen::Index i = 0; i < n; ++i) {
        const Span& span = spans[static_cast<std::size_t>(i)];
        const double half_gap = std::min(0.5 * gap_m, 0.25 * length_m);
        const bool in_gap = span.to_m < 1.001 * half_gap || span.from_m > length_m - 1.001 * half_gap;
        const double change = (in_gap ? span.length_m() / (2 * half_gap) : 0.0) - flux(i);
        result(i) = (level + 0.5 * change) * span.length_m();
        level += change;
    }
    return result;
}

// Charge per length and volt for the potential. Where both halves are unknown the sum of the charge is zero,
// and the potential is free by a constant.
VectorXd charge_density(const Interactions& terms, const std::vector<Span>& spans, const VectorXd& drive,
                        bool reversible) {
    const double factor = 4 * pi * electric_constant_F_m;
    if (reversible) {
        return factor * terms.scalar_m.llt().solve(drive);
    }
    const auto n = drive.size();
    VectorXd lengths(n);
    for (Eigen::Index i = 0; i < n; ++i) {
        lengths(i) = spans[static_cast<std::size_t>(i)].length_m();
    }
    const auto factors = terms.scalar_m.llt();
    const VectorXd driven = factors.solve(drive);
    const VectorXd constant = factors.solve(lengths);
    return factor * (driven - lengths.dot(driven) / lengths.dot(constant) * constant);
}

// Integral of the charge along the path with mean 0 over the gap, at the ends of the spans, (L.9).
std::vector<double> charge_current(const std::vector<Span>& spans, const VectorXd& density, double half_gap_m,
                                   bool reversible) {
    const std::size_t whole = spans.size();
    std::vector<double> ends(whole + 1, 0.0);
    double over_gap = 0;
    for (std::size_t i = 0; i < whole; ++i) {
        const std::size_t mirror = whole - 1 - i;
        const bool second = reversible && i >= whole / 2;
        const double q =
            second ? -density(static_cast<Eigen::Index>(mirror)) : density(static_cast<Eigen::Index>(i));
        const double length = spans[i].length_m();
        ends[i + 1] = ends[i] + q * length;
        const bool in_gap =
            spans[i].to_m < 1.001 * half_gap_m || spans[i].from_m > spans.back().to_m - 1.001 * half_gap_m;
        over_gap += in_gap ? 0.5 * (ends[i] + ends[i + 1]) * length : 0.0;
    }
    const double mean = over_gap / (2 * half_gap_m);
    for (double& end : ends) {
        end -= mean;
    }
    return ends;
}

double opposite_value(const std::vector<Span>& spans, const std::vector<double>& ends) {
    const double middle = 0.5 * spans.back().to_m;
    for (std::size_t i = 0; i < spans.size(); ++i) {
        if (spans[i].to_m >= middle * (1 - 1e-9)) {
            return ends[i + 1];
        }
    }
    return ends.back();
}

void shape_means(ChargeSolution& solution) {
    double sum = 0;
    double squares = 0;
    for (std::size_t i = 0; i < solution.spans.size(); ++i) {
        const double a = solution.shape_at_ends[i];
        const double b = solution.shape_at_ends[i + 1];
        sum += 0.5 * (a + b) * solution.spans[i].length_m();
        squares += (a * a + a * b + b * b) / 3 * solution.spans[i].length_m();
    }
    solution.mean_shape = sum / solution.spans.back().to_m;
    solution.mean_square_shape = squares / solution.spans.back().to_m;
}

double charge_inductance(const ChargeSolution& solution, const Interactions& terms, bool reversible) {
    const auto n = terms.vector_m.rows();
    VectorXd mean(n);
    for (Eigen::Index i = 0; i < n; ++i) {
        const auto at = static_cast<std::size_t>(i);
        mean(i) = 0.5 * (solution.shape_at_ends[at] + solution.shape_at_ends[at + 1]);
    }
    const double sum = mean.dot(terms.vector_m * mean) * (reversible ? 2.0 : 1.0);
    return magnetic_constant_H_m / (4 * pi) * sum;
}

} // namespace

ChargeSolution solve_charge(const geometry::WirePath& path, double radius_m, double inductance_H) {
    Cutting cutting;
    cutting.longest_m = path.length_m() / 24;
    ChargeSolution solution;
    solution.spans = cut(path, cutting);
    const bool reversible = path.reversible();
    const double twice = reversible ? 2.0 : 1.0;
    const Interactions terms = interactions(path, solution.spans, radius_m);
    VectorXd flux = terms.vector_m.rowwise().sum();
    const double sum_m = twice * flux.sum();
    flux /= sum_m;
    solution.inductance_H = inductance_H > 0 ? inductance_H : magnetic_constant_H_m / (4 * pi) * sum_m;

    const VectorXd drive = potential(solution.spans, flux, path.gap_m(), path.length_m());
    const VectorXd density = charge_density(terms, solution.spans, drive, reversible);
    solution.self_capacitance_F = twice * density.dot(drive);
    const double half_gap = std::min(0.5 * path.gap_m(), 0.25 * path.length_m());
    solution.shape_at_ends = charge_current(solution.spans, density, half_gap, reversible);
    const double opposite = opposite_value(solution.spans, solution.shape_at_ends);
    for (double& value : solution.shape_at_ends) {
        value /= opposite;
    }
    solution.elastance_1_F = solution.self_capacitance_F / (opposite * opposite);
    solution.mixed_inductance_H = solution.inductance_H * solution.self_capacitance_F / opposite;
    shape_means(solution);
    solution.charge_inductance_H = charge_inductance(solution, terms, reversible);
    return solution;
}

} // namespace loopwright::loop::detail
