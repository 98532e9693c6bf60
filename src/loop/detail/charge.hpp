#pragma once
// The charge on a loop's conductor at low frequency, and the current that feeds it.
#include "loop/detail/loop_series.hpp"
#include "loop/detail/spans.hpp"

#include <vector>

namespace loopwright::loop::detail {

/// A current along the path: its values at the ends of the spans (one more than spans), between which it is
/// a parabola whose second derivative is that of its neighbours' slopes.
struct Shape {
    std::vector<double> ends;
    std::vector<double> bend_1_m2; ///< second derivative in each span

    Shape() = default;
    Shape(const std::vector<Span>& spans, std::vector<double> values_at_ends);
    [[nodiscard]] double slope(const std::vector<Span>& spans, std::size_t span) const;
    [[nodiscard]] double value(const std::vector<Span>& spans, std::size_t span, double s_m) const;
    [[nodiscard]] double mean(const std::vector<Span>& spans, std::size_t span) const;
};

/// Static solution. Equations (L.6) to (L.11).
struct ChargeSolution {
    std::vector<Span> spans; ///< round the whole path
    /// The currents of LoopSeries.
    std::array<Shape, currents> shape;
    double inductance_H = 0;            ///< external, uniform current
    Symmetric<double> inductances_H{};  ///< static, between the currents
    Symmetric<double> elastances_1_F{}; ///< between their charges; 0 with the uniform current
    double self_capacitance_F = 0;      ///< int q phi ds / V^2
    Symmetric<double> mean{};           ///< of f_i f_k along the conductor
};

/// inductance_H: the external inductance where known better; 0: the sum over the path.
[[nodiscard]] ChargeSolution solve_charge(const geometry::WirePath& path, double radius_m,
                                          double inductance_H, const Cutting& cutting);

} // namespace loopwright::loop::detail
