// The outline from the side: level rows, close together where the outline itself runs level.
#include "exposure/outlines.hpp"

#include <algorithm>
#include <array>
#include <cmath>
#include <functional>

namespace loopwright::exposure {

namespace {

constexpr double least_row_step_m = 0.1, rows_to_reach = 40.0;
constexpr double end_m = 0.005;                                // of a piece, in height
constexpr double step_u = 0.12, axis_step_m = 0.3;             // places along a row: x = 0.3 m sinh(u)
constexpr double bisect_m = 0.005, bisect_share = 0.01;        // a crossing on a row
constexpr std::array<double, 4> near_end{0.44, 0.75, 0.94, 1}; // even steps along a round end

struct Span {
    double left_m = 0, right_m = 0;
};

using Exceeds = std::function<bool(double along_m, double height_m)>;

/// The outermost exceeded place of a row, coming in from the side of `sign`; nothing where there is none.
std::optional<double> outermost(const Exceeds& exceeds, double height_m, double reach_m, double sign) {
    const double u_end = std::asinh(reach_m / axis_step_m);
    const int steps = static_cast<int>(std::ceil(2 * u_end / step_u));
    double outside = sign * reach_m;
    for (int i = 0; i <= steps; ++i) {
        const double at = sign * axis_step_m * std::sinh(u_end - 2 * u_end * i / steps);
        if (!exceeds(at, height_m)) {
            outside = at;
            continue;
        }
        double inside = at;
        while (std::abs(outside - inside) > std::max(bisect_m, bisect_share * std::abs(inside))) {
            const double middle = 0.5 * (inside + outside);
            (exceeds(middle, height_m) ? inside : outside) = middle;
        }
        return 0.5 * (inside + outside);
    }
    return std::nullopt;
}

std::optional<Span> span_of(const Exceeds& exceeds, double height_m, double reach_m) {
    const auto right = outermost(exceeds, height_m, reach_m, 1.0);
    if (!right) {
        return std::nullopt;
    }
    const auto left = outermost(exceeds, height_m, reach_m, -1.0);
    return Span{left.value_or(*right), *right};
}

SideRow row_of(double height_m, const Span& span) {
    return {units::metres(height_m), units::metres(span.left_m), units::metres(span.right_m)};
}

/// The rows from an exceeded height (left out) to the end of the piece, which lies before `outside_m`.
std::vector<SideRow> rows_to_end(const Exceeds& exceeds, double inside_m, double outside_m, double reach_m) {
    const double start_m = inside_m;
    std::optional<Span> last;
    while (std::abs(outside_m - inside_m) > end_m) {
        const double middle = 0.5 * (inside_m + outside_m);
        if (const auto span = span_of(exceeds, middle, reach_m)) {
            inside_m = middle;
            last = span;
        } else {
            outside_m = middle;
        }
    }
    std::vector<SideRow> rows;
    for (const double share : near_end) {
        const double height = start_m + share * (inside_m - start_m);
        const auto span = share < 1 ? span_of(exceeds, height, reach_m) : last;
        if (span) {
            rows.push_back(row_of(height, *span));
        }
    }
    return rows;
}

struct Rows {
    double low_m = 0, high_m = 0;
    int count = 2;
    [[nodiscard]] double height_m(int i) const { return low_m + (high_m - low_m) * i / (count - 1); }
};

SideOutline traced(const Exceeds& exceeds, const Rows& rows, double reach_m) {
    SideOutline outline;
    bool before = false;
    for (int i = 0; i < rows.count; ++i) {
        const double height = rows.height_m(i);
        const auto span = span_of(exceeds, height, reach_m);
        if (span && !before) {
            outline.pieces.emplace_back();
            if (i > 0) {
                outline.pieces.back() = rows_to_end(exceeds, height, rows.height_m(i - 1), reach_m);
                std::reverse(outline.pieces.back().begin(), outline.pieces.back().end());
            }
        }
        if (span) {
            outline.pieces.back().push_back(row_of(height, *span));
        } else if (before) {
            for (SideRow& row : rows_to_end(exceeds, rows.height_m(i - 1), height, reach_m)) {
                outline.pieces.back().push_back(row);
            }
        }
        before = span.has_value();
    }
    outline.cut_above = before;
    return outline;
}

bool touches(const SideOutline& outline, double reach_m) {
    return std::any_of(outline.pieces.begin(), outline.pieces.end(), [&](const auto& piece) {
        return std::any_of(piece.begin(), piece.end(), [&](const SideRow& row) {
            return std::max(-row.left.value(), row.right.value()) > (1 - bisect_share) * reach_m;
        });
    });
}

} // namespace

std::optional<SideOutline> outline_from_the_side(const std::vector<Held>& all, units::Angle azimuth) {
    double reach_m = 0, loop_low_m = 1e300, loop_high_m = -1e300, top_m = 1e300;
    bool free_space = false;
    for (const Held& held : all) {
        const Surroundings& around = *held.around;
        reach_m = std::max(reach_m, around.rough_reach_m(held.threshold));
        loop_low_m = std::min(loop_low_m, around.field().extent().lowest_m);
        loop_high_m = std::max(loop_high_m, around.field().extent().highest_m);
        free_space = around.field().free_space();
        top_m = free_space ? top_m : std::min(top_m, around.highest_m());
    }
    if (all.empty()) {
        return SideOutline{};
    }
    const double x = std::cos(azimuth.value()), y = std::sin(azimuth.value());
    const Exceeds exceeds = [&](double along_m, double height_m) {
        return std::any_of(all.begin(), all.end(), [&](const Held& held) {
            return held.around->exceeds(held.threshold, {along_m * x, along_m * y, height_m});
        });
    };
    for (; reach_m <= farthest_established_m; reach_m *= 1.5) {
        Rows rows{free_space ? loop_low_m - reach_m : std::max(0.0, loop_low_m - reach_m),
                  std::min(top_m, loop_high_m + reach_m)};
        const double step_m = std::max(least_row_step_m, reach_m / rows_to_reach);
        rows.count = 1 + static_cast<int>(std::ceil((rows.high_m - rows.low_m) / step_m));
        SideOutline outline = traced(exceeds, rows, reach_m);
        if (!touches(outline, reach_m)) {
            return outline;
        }
    }
    return std::nullopt;
}

} // namespace loopwright::exposure
