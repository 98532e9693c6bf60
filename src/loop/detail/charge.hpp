#pragma once
// The charge on a loop's conductor at low frequency, and the current that feeds it.
#include "loop/detail/spans.hpp"

#include <vector>

namespace loopwright::loop::detail {

/// Static solution, one order in frequency above the uniform current. Equations (L.6) to (L.13).
struct ChargeSolution {
    std::vector<Span> spans;           ///< round the whole path
    std::vector<double> shape_at_ends; ///< u at the ends of the spans, spans.size() + 1 values
    double inductance_H = 0;           ///< external, uniform current
    double mixed_inductance_H = 0;     ///< of u with the uniform current
    double charge_inductance_H = 0;    ///< of u with itself
    double elastance_1_F = 0;          ///< of the charge of u with itself, per (C/A s)^2
    double self_capacitance_F = 0;     ///< int q phi ds / V^2
    double mean_shape = 0, mean_square_shape = 0;
};

/// inductance_H: the external inductance where known better; 0: the sum over the path.
[[nodiscard]] ChargeSolution solve_charge(const geometry::WirePath& path, double radius_m,
                                          double inductance_H);

} // namespace loopwright::loop::detail
