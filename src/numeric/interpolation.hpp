#pragma once
// Smooth curves through tables: cubic Hermite pieces.
#include <cstddef>
#include <vector>

namespace loopwright::numeric {

/// A curve through (x, y), x strictly rising, at least three points: cubic Hermite pieces with the slopes of
/// the parabola through each point and its neighbours (at the ends: of the nearest parabola). Continuous
/// slope; error of third order in the spacing; may overshoot where the table is rough. Throws
/// base::ProgramError for a table that is too short, not rising or not finite.
class HermiteCurve {
public:
    HermiteCurve(std::vector<double> x, std::vector<double> y);
    /// Outside the table: the value at the nearer end.
    [[nodiscard]] double operator()(double x) const;

private:
    std::vector<double> x_, y_, slope_;
};

} // namespace loopwright::numeric
