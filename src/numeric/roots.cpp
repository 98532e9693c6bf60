#include "numeric/roots.hpp"

#include "base/error.hpp"

#include <boost/math/tools/toms748_solve.hpp>
#include <cmath>
#include <cstdint>

namespace loopwright::numeric {

double bracketed_root(const std::function<double(double)>& f, double low, double high, int bits) {
    const double at_low = f(low), at_high = f(high);
    if (at_low == 0.0) {
        return low;
    }
    if (at_high == 0.0) {
        return high;
    }
    if (!std::isfinite(at_low) || !std::isfinite(at_high) || (at_low > 0.0) == (at_high > 0.0)) {
        throw base::ProgramError("bracketed_root: no change of sign between the ends");
    }
    std::uintmax_t calls = 200;
    const auto ends = boost::math::tools::toms748_solve(
        f, low, high, at_low, at_high, boost::math::tools::eps_tolerance<double>(bits), calls);
    return 0.5 * (ends.first + ends.second);
}

} // namespace loopwright::numeric
