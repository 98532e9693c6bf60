#pragma once
// A curve through a table that never turns back, with its slope and its inverse.
#include <cstddef>
#include <vector>

namespace loopwright::numeric {

/// A curve through (x, y), x strictly rising, y strictly rising or strictly falling, two points or more:
/// cubic Hermite pieces that rise or fall all the way ("PCHIP"). Slopes inside: the weighted harmonic mean of
/// both neighbouring secants; at the ends: three points, kept between 0.1 and 3 times the end secant, so that
/// no end lies flat. Two points: a straight line. Source: F. N. Fritsch and J. Butland, SIAM J. Sci. Stat.
/// Comput. 5 (1984) 300 (from memory). Slope continuous, bend not. Throws base::ProgramError for another
/// table.
class MonotoneCurve {
public:
    MonotoneCurve(std::vector<double> x, std::vector<double> y);

    [[nodiscard]] double operator()(double x) const; ///< outside the table: the value at the nearer end
    [[nodiscard]] double slope(double x) const;      ///< outside the table: that of the nearer end
    /// The x of a value, to some 1e-12 of its piece; outside the table: the nearer end.
    [[nodiscard]] double inverse(double y) const;

private:
    [[nodiscard]] std::size_t piece(double x) const;

    std::vector<double> x_, y_, slope_;
};

} // namespace loopwright::numeric
