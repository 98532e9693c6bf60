// Outlines of the space in which a threshold is exceeded, for maps: from above and from the side.
#include "exposure/detail/shells.hpp"
#include "exposure/surroundings.hpp"
#include "units/constants.hpp"

#include <algorithm>
#include <cmath>
#include <functional>

namespace loopwright::exposure {

namespace {

using units::constants::pi;
using Share = std::function<double(double distance_m)>;

/// Largest distance below `start_m` at which the share is 1, to half a centimetre or 1 %; 0 where nowhere.
/// Nothing where it is over 1 at the start.
std::optional<double> inward(double start_m, double step_factor, const Share& share) {
    if (share(start_m) >= 1) {
        return std::nullopt;
    }
    for (double outside = start_m; outside > 0.05;) {
        const double inside = outside / step_factor;
        if (share(inside) >= 1) {
            double low = inside, high = outside;
            while (high - low > std::max(0.005, 0.01 * low)) {
                const double middle = 0.5 * (low + high);
                (share(middle) >= 1 ? low : high) = middle;
            }
            return 0.5 * (low + high);
        }
        outside = inside;
    }
    return 0.0;
}

} // namespace

std::optional<std::vector<units::Length>> Surroundings::outline(const Threshold& threshold, int count) {
    const std::optional<Farthest> most = farthest(threshold);
    if (!most) {
        return std::nullopt;
    }
    std::vector<units::Length> distances;
    if (most->distance.value() <= 0) {
        return std::vector<units::Length>(static_cast<std::size_t>(count), units::metres(0));
    }
    distances.reserve(static_cast<std::size_t>(count));
    for (int i = 0; i < count; ++i) {
        const double azimuth = 2 * pi * i / count;
        const Share share = [&](double d) {
            double worst = 0;
            for (const double s : shares_) {
                worst = std::max(worst, squares(d, {azimuth, s}).over(threshold));
            }
            return worst;
        };
        const auto found = inward(1.02 * most->distance.value(), 1.12, share);
        distances.push_back(units::metres(found.value_or(1.02 * most->distance.value())));
    }
    return distances;
}

std::optional<std::vector<units::Length>>
Surroundings::side_outline(const Threshold& threshold, units::Angle azimuth,
                           const std::vector<units::Length>& heights) {
    const std::optional<Farthest> most = farthest(threshold);
    if (!most) {
        return std::nullopt;
    }
    const double a = azimuth.value();
    const double start = std::max(1.3 * most->distance.value(), 2.0 * field_.extent().horizontal_m + 0.5);
    std::vector<units::Length> distances;
    distances.reserve(heights.size());
    for (const units::Length& height : heights) {
        const Share share = [&](double d) {
            return squares_at({d * std::cos(a), d * std::sin(a), height.value()}).over(threshold);
        };
        double from = start;
        std::optional<double> found;
        while (!(found = inward(from, 1.12, share)) && from < farthest_established_m / 1.5) {
            from *= 1.5;
        }
        if (!found) {
            return std::nullopt;
        }
        distances.push_back(units::metres(*found));
    }
    return distances;
}

} // namespace loopwright::exposure
