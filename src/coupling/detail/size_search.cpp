#include "coupling/detail/size_search.hpp"

#include "loop/full_wave.hpp"

#include <boost/math/tools/minima.hpp>

#include <algorithm>

namespace loopwright::coupling::detail {

Resonances resonances_of(const design::Design& design, const std::vector<units::Frequency>& frequencies,
                         const base::StopToken& stop) {
    const loop::FullWave alone(design);
    Resonances all;
    for (const units::Frequency& f : frequencies) {
        if (stop.stop_requested()) {
            break;
        }
        all.push_back(alone.at(f, units::watts(1), 2.0).resonance);
    }
    return all;
}

std::vector<std::size_t> counted(const Resonances& own) {
    std::vector<std::size_t> in_range, tunable;
    for (std::size_t i = 0; i < own.size(); ++i) {
        if (own[i]) {
            tunable.push_back(i);
            if (own[i]->in_capacitor_range) {
                in_range.push_back(i);
            }
        }
    }
    return in_range.empty() ? tunable : in_range;
}

double least_at(const std::function<double(double)>& function, double low, double high) {
    constexpr int looks = 60;
    const double step = (high - low) / looks;
    double best = low;
    double least = function(low);
    for (int i = 1; i <= looks; ++i) {
        const double x = low + step * i;
        if (const double now = function(x); now < least) {
            best = x;
            least = now;
        }
    }
    return boost::math::tools::brent_find_minima(function, std::max(low, best - step),
                                                 std::min(high, best + step), 16)
        .first;
}

} // namespace loopwright::coupling::detail
