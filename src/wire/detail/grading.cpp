#include "wire/detail/grading.hpp"

#include <algorithm>
#include <cmath>

namespace loopwright::wire::detail {

namespace {

double size_at(const Grading& grading, double s_m) {
    double size = grading.base_m;
    for (const Focus& focus : grading.foci) {
        for (const double turn : {-1.0, 0.0, 1.0}) {
            if (turn != 0 && !grading.closed) {
                continue;
            }
            const double s = s_m + turn * grading.length_m;
            const double away = std::max({0.0, focus.from_m - s, s - focus.to_m});
            size = std::min(size, focus.size_m + grading.growth * away);
        }
    }
    return size;
}

// Elements that fit between two places, counted finely: the integral of ds / size.
std::vector<double> counted(const Grading& grading, double from_m, double to_m) {
    constexpr int steps = 256;
    const double ds = (to_m - from_m) / steps;
    std::vector<double> sum(steps + 1, 0.0);
    for (std::size_t i = 0; i < steps; ++i) {
        const double middle = from_m + (static_cast<double>(i) + 0.5) * ds;
        sum[i + 1] = sum[i] + ds / size_at(grading, middle);
    }
    return sum;
}

void append_interval(const Grading& grading, double from_m, double to_m, std::vector<double>& nodes) {
    const std::vector<double> sum = counted(grading, from_m, to_m);
    // A little more than a whole number does not cost an element.
    const int count = std::max(1, static_cast<int>(std::ceil(grading.refinement * sum.back() - 0.05)));
    std::size_t at = 0;
    for (int i = 1; i < count; ++i) {
        const double wanted = sum.back() * i / count;
        while (sum[at + 1] < wanted) {
            ++at;
        }
        const double share = static_cast<double>(at) + (wanted - sum[at]) / (sum[at + 1] - sum[at]);
        nodes.push_back(from_m + (to_m - from_m) * share / static_cast<double>(sum.size() - 1));
    }
    nodes.push_back(to_m);
}

} // namespace

std::vector<double> graded_nodes(const Grading& grading) {
    std::vector<double> breaks = grading.breaks_m;
    breaks.push_back(0);
    breaks.push_back(grading.length_m);
    std::sort(breaks.begin(), breaks.end());
    std::vector<double> nodes{0.0};
    const double least = 1e-7 * grading.length_m;
    for (const double place : breaks) {
        const bool last = place == breaks.back();
        if (place > nodes.back() + least && (last || place < grading.length_m - least)) {
            append_interval(grading, nodes.back(), place, nodes);
        }
    }
    return nodes;
}

} // namespace loopwright::wire::detail
