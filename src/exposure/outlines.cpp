#include "exposure/outlines.hpp"

#include "units/constants.hpp"

#include <algorithm>
#include <cmath>
#include <functional>

namespace loopwright::exposure {

namespace {

using units::constants::pi;

constexpr double beyond = 1.02, step_factor = 1.12; // from above

/// Largest distance below `start_m` that is exceeded, to half a centimetre or 1 %; start_m where it is over
/// at the start, 0 where nowhere.
double inward(double start_m, const std::function<bool(double distance_m)>& exceeds) {
    if (exceeds(start_m)) {
        return start_m;
    }
    for (double outside = start_m; outside > 0.05;) {
        const double inside = outside / step_factor;
        if (exceeds(inside)) {
            double low = inside, high = outside;
            while (high - low > std::max(0.005, 0.01 * low)) {
                const double middle = 0.5 * (low + high);
                (exceeds(middle) ? low : high) = middle;
            }
            return 0.5 * (low + high);
        }
        outside = inside;
    }
    return 0.0;
}

} // namespace

std::optional<std::vector<units::Length>> outline_from_above(const std::vector<Held>& all, int count) {
    std::vector<double> farthest_m(static_cast<std::size_t>(count), 0.0);
    for (const Held& held : all) {
        const std::optional<Farthest> most = held.around->farthest(held.threshold);
        if (!most) {
            return std::nullopt;
        }
        const double start_m = beyond * most->distance.value();
        for (std::size_t i = 0; i < farthest_m.size(); ++i) {
            if (start_m <= farthest_m[i]) {
                continue; // another frequency asks for more
            }
            const double azimuth = 2 * pi * static_cast<double>(i) / count;
            const double found = inward(start_m, [&](double d) {
                return held.around->exceeds_on_person(held.threshold, d, azimuth);
            });
            farthest_m[i] = std::max(farthest_m[i], found);
        }
    }
    std::vector<units::Length> distances;
    distances.reserve(farthest_m.size());
    for (const double d : farthest_m) {
        distances.push_back(units::metres(d));
    }
    return distances;
}

} // namespace loopwright::exposure
