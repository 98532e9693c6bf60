#pragma once
// A root between two points: a thin wrapper of Boost.Math's bracketing solver (Alefeld, Potra and Shi,
// algorithm 748).
#include <functional>

namespace loopwright::numeric {

/// Where f changes sign between low and high, to a relative width of 2^(1-bits). f is called about ten times
/// for a smooth function. Throws base::ProgramError where f(low) and f(high) have one sign, or f is not
/// finite there.
[[nodiscard]] double bracketed_root(const std::function<double(double)>& f, double low, double high,
                                    int bits = 50);

} // namespace loopwright::numeric
