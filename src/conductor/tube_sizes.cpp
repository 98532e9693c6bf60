#include "conductor/tube_sizes.hpp"

#include <array>
#include <cstddef>
#include <cstdio>

namespace loopwright::conductor {
namespace {

// Walls in thousandths of an inch; 0: not made.
struct WaterTube {
    const char* nominal;
    int eighths; ///< of an inch
    std::array<int, 3> wall_mil;
};
// ASTM B88, types K, L, M. The 4 in row: K, M from memory, copies disagree about L (0.110 or 0.114 in).
const WaterTube water_tubes[] = {
    {"1/4", 2, {35, 30, 0}},     {"3/8", 3, {49, 35, 25}},    {"1/2", 4, {49, 40, 28}},
    {"5/8", 5, {49, 42, 0}},     {"3/4", 6, {65, 45, 32}},    {"1", 8, {65, 50, 35}},
    {"1 1/4", 10, {65, 55, 42}}, {"1 1/2", 12, {72, 60, 49}}, {"2", 16, {83, 70, 58}},
    {"2 1/2", 20, {95, 80, 65}}, {"3", 24, {109, 90, 72}},    {"4", 32, {134, 110, 95}},
};

// Tenths of a millimetre.
struct MetricTube {
    int diameter, wall;
};
const MetricTube metric_tubes[] = {
    {120, 6},  {120, 8},  {120, 10}, {150, 7},  {150, 10}, {180, 10},  {220, 9},
    {220, 10}, {220, 12}, {280, 9},  {280, 12}, {280, 15}, {350, 10},  {350, 12},
    {350, 15}, {350, 20}, {420, 10}, {420, 12}, {420, 15}, {540, 10},  {540, 12},
    {540, 20}, {667, 12}, {667, 20}, {761, 15}, {761, 20}, {1080, 15}, {1080, 25},
};

std::string text(const char* format, double value) {
    char buffer[32];
    std::snprintf(buffer, sizeof buffer, format, value);
    return buffer;
}

TubeSize us_size(const WaterTube& row, std::size_t type) {
    const double diameter_in = (row.eighths + 1) / 8.0;
    const double wall_in = row.wall_mil.at(type) / 1000.0;
    return {std::string(row.nominal) + " in type " + "KLM"[type],
            "ASTM B88",
            units::metres(diameter_in * 254 / 1e4),
            units::metres(wall_in * 254 / 1e4),
            text("%.3f in", diameter_in),
            text("%.3f in", wall_in),
            row.eighths < 32};
}

TubeSize metric_size(const MetricTube& row) {
    const std::string diameter = text("%g", row.diameter / 10.0);
    const std::string wall = text("%g", row.wall / 10.0);
    return {diameter + " x " + wall + " mm",
            "EN 1057",
            units::metres(row.diameter / 1e4),
            units::metres(row.wall / 1e4),
            diameter + " mm",
            wall + " mm",
            true};
}

std::vector<TubeSize> made() {
    std::vector<TubeSize> all;
    for (const MetricTube& row : metric_tubes) {
        all.push_back(metric_size(row));
    }
    for (const WaterTube& row : water_tubes) {
        for (std::size_t type = 0; type < row.wall_mil.size(); ++type) {
            if (row.wall_mil.at(type) > 0) {
                all.push_back(us_size(row, type));
            }
        }
    }
    return all;
}

} // namespace

const std::vector<TubeSize>& tube_sizes() {
    static const std::vector<TubeSize> all = made();
    return all;
}

std::optional<TubeSize> find_tube_size(std::string_view name) {
    for (const TubeSize& size : tube_sizes()) {
        if (size.name == name) {
            return size;
        }
    }
    return std::nullopt;
}

} // namespace loopwright::conductor
