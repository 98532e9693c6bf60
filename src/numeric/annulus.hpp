#pragma once
// The field in a round tube's wall: the modified Bessel equation between two radii, with no current inside.
#include <complex>

namespace loopwright::numeric {

/// Internal impedance of a tube over its resistance to direct current [1], the return path outside.
/// With u'' + u'/r - g^2 u = 0 and u'(inner) = 0 it is g^2 u(b) (b^2 - a^2) / (2 b u'(b)), a and b the inner
/// and outer radius. In Bessel functions: u(b)/u'(b) = [I0(gb) K1(ga) + K0(gb) I1(ga)] / (g [I1(gb) K1(ga) -
/// K1(gb) I1(ga)]), which loses its digits for thin walls if evaluated as it stands. w = (g b)^2 with |arg g|
/// <= pi/3; wall_fraction = (b - a)/b in (0, 1], 1 being the solid wire. Method: Taylor series of the
/// differential equation from a to b; the asymptotic cross product (Abramowitz and Stegun 9.7.1, 9.7.2) for
/// large g a; the solid wire's ratio where the wall is thicker than 18/Re g. Accuracy: 1e-13 relative in each
/// part on arg g = pi/4. Throws base::ProgramError outside the range.
[[nodiscard]] std::complex<double> tube_ratio(std::complex<double> w, double wall_fraction);

} // namespace loopwright::numeric
