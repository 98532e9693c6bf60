#include "loop/detail/charge.hpp"

#include "loop/detail/interactions.hpp"
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

// The static problem of one path: charges that hold a potential, and the currents that feed them.
class ChargeProblem {
public:
    ChargeProblem(const geometry::WirePath& path, const std::vector<Span>& spans, double radius_m)
        : spans_(spans), reversible_(path.reversible()), gap_m_(path.gap_m()),
          terms_(interactions(path, spans, radius_m)), factors_(terms_.scalar_m.llt()) {}

    /// A current's static magnetic flux through each span, over mu0/(4 pi) [m]; shape at the ends of spans.
    [[nodiscard]] VectorXd flux(const Shape& shape) const { return terms_.vector_m * middle_values(shape); }
    /// Sum over the whole path of what is given for the (half of the) spans.
    [[nodiscard]] double around(const VectorXd& values) const { return (reversible_ ? 2 : 1) * values.sum(); }

    struct Answer {
        VectorXd drive;            ///< potential integrated over each span [m], for 1 V at the gap
        VectorXd density;          ///< charge per length and volt [F/m]
        std::vector<double> shape; ///< its integral [F], mean 0 over the gap
    };
    /// The charge that a current's flux asks for. flux: as above.
    [[nodiscard]] Answer answer(const VectorXd& flux) const {
        Answer result;
        result.drive = potential(spans_, flux / around(flux), gap_m_, spans_.back().to_m);
        result.density = density(result.drive);
        const double half_gap = std::min(0.5 * gap_m_, 0.25 * spans_.back().to_m);
        result.shape = charge_current(spans_, result.density, half_gap, reversible_);
        return result;
    }
    /// Elastance between two currents [1/F] that are given at the ends of the spans.
    [[nodiscard]] double elastance(const Shape& a, const Shape& b) const {
        const double sum = slopes(a).dot(terms_.scalar_m * slopes(b));
        return (reversible_ ? 2 : 1) * sum / (4 * pi * electric_constant_F_m);
    }
    /// Inductance between two currents [H].
    [[nodiscard]] double inductance(const Shape& a, const Shape& b) const {
        return magnetic_constant_H_m / (4 * pi) * (reversible_ ? 2 : 1) * middle_values(a).dot(flux(b));
    }

private:
    // Where both halves are unknown the sum of the charge is zero, and the potential is free by a constant.
    [[nodiscard]] VectorXd density(const VectorXd& drive) const {
        const double factor = 4 * pi * electric_constant_F_m;
        const VectorXd driven = factors_.solve(drive);
        if (reversible_) {
            return factor * driven;
        }
        VectorXd lengths(drive.size());
        for (Eigen::Index i = 0; i < drive.size(); ++i) {
            lengths(i) = spans_[static_cast<std::size_t>(i)].length_m();
        }
        const VectorXd constant = factors_.solve(lengths);
        return factor * (driven - lengths.dot(driven) / lengths.dot(constant) * constant);
    }
    [[nodiscard]] VectorXd middle_values(const Shape& shape) const {
        VectorXd values(terms_.vector_m.rows());
        for (Eigen::Index i = 0; i < values.size(); ++i) {
            values(i) = shape.mean(spans_, static_cast<std::size_t>(i));
        }
        return values;
    }
    [[nodiscard]] VectorXd slopes(const Shape& shape) const {
        VectorXd values(terms_.vector_m.rows());
        for (Eigen::Index i = 0; i < values.size(); ++i) {
            values(i) = shape.slope(spans_, static_cast<std::size_t>(i));
        }
        return values;
    }

    const std::vector<Span>& spans_;
    bool reversible_;
    double gap_m_;
    Interactions terms_;
    Eigen::LLT<MatrixXd> factors_;
};

double opposite_value(const std::vector<Span>& spans, const std::vector<double>& ends) {
    const double middle = 0.5 * spans.back().to_m;
    for (std::size_t i = 0; i < spans.size(); ++i) {
        if (spans[i].to_m >= middle * (1 - 1e-9)) {
            return ends[i + 1];
        }
    }
    return ends.back();
}

Symmetric<double> means(const ChargeSolution& solution) {
    Symmetric<double> result{};
    for (std::size_t n = 0; n < solution.spans.size(); ++n) {
        for (const Sample& sample : solution.spans[n].samples) {
            std::array<double, currents> f{};
            for (std::size_t i = 0; i < currents; ++i) {
                f[i] = solution.shape[i].value(solution.spans, n, sample.s_m);
            }
            for (std::size_t i = 0; i < currents; ++i) {
                for (std::size_t k = i; k < currents; ++k) {
                    result[entry(i, k)] += f[i] * f[k] * sample.weight_m / solution.spans.back().to_m;
                }
            }
        }
    }
    return result;
}

} // namespace

Shape::Shape(const std::vector<Span>& spans, std::vector<double> values_at_ends)
    : ends(std::move(values_at_ends)), bend_1_m2(spans.size(), 0.0) {
    for (std::size_t n = 1; n + 1 < spans.size(); ++n) {
        const double reach = 0.5 * (spans[n + 1].length_m() + spans[n - 1].length_m()) + spans[n].length_m();
        bend_1_m2[n] = (slope(spans, n + 1) - slope(spans, n - 1)) / reach;
    }
}

double Shape::slope(const std::vector<Span>& spans, std::size_t n) const {
    return (ends[n + 1] - ends[n]) / spans[n].length_m();
}

double Shape::value(const std::vector<Span>& spans, std::size_t n, double s_m) const {
    const double from = s_m - spans[n].from_m;
    return ends[n] + slope(spans, n) * from - 0.5 * bend_1_m2[n] * from * (spans[n].to_m - s_m);
}

double Shape::mean(const std::vector<Span>& spans, std::size_t n) const {
    const double length = spans[n].length_m();
    return 0.5 * (ends[n] + ends[n + 1]) - bend_1_m2[n] * length * length / 12;
}

ChargeSolution solve_charge(const geometry::WirePath& path, double radius_m, double inductance_H,
                            const Cutting& cutting) {
    ChargeSolution solution;
    solution.spans = cut(path, cutting);
    const std::size_t ends = solution.spans.size() + 1;
    const ChargeProblem problem(path, solution.spans, radius_m);

    solution.shape[0] = Shape(solution.spans, std::vector<double>(ends, 1.0));
    const VectorXd uniform_flux = problem.flux(solution.shape[0]);
    const double sum_H = magnetic_constant_H_m / (4 * pi) * problem.around(uniform_flux);
    solution.inductance_H = inductance_H > 0 ? inductance_H : sum_H;

    ChargeProblem::Answer first = problem.answer(uniform_flux);
    const double opposite = opposite_value(solution.spans, first.shape);
    solution.self_capacitance_F = problem.around(first.density.cwiseProduct(first.drive));
    for (double& value : first.shape) {
        value /= opposite;
    }
    solution.shape[1] = Shape(solution.spans, first.shape);
    ChargeProblem::Answer second = problem.answer(problem.flux(solution.shape[1]));
    const double second_opposite = opposite_value(solution.spans, second.shape);
    for (std::size_t i = 0; i < ends; ++i) {
        second.shape[i] = second.shape[i] / second_opposite - first.shape[i];
    }
    solution.shape[2] = Shape(solution.spans, second.shape);

    for (std::size_t i = 0; i < currents; ++i) {
        for (std::size_t k = i; k < currents; ++k) {
            solution.inductances_H[entry(i, k)] = problem.inductance(solution.shape[i], solution.shape[k]);
            if (i > 0) {
                solution.elastances_1_F[entry(i, k)] =
                    problem.elastance(solution.shape[i], solution.shape[k]);
            }
        }
    }
    // What is known better or follows exactly: the flux of the uniform current on the first shape.
    solution.inductances_H[entry(0, 0)] = solution.inductance_H;
    solution.inductances_H[entry(0, 1)] = solution.inductance_H * solution.self_capacitance_F / opposite;
    solution.mean = means(solution);
    return solution;
}

} // namespace loopwright::loop::detail
