#include "capacitor/breakdown.hpp"

#include "base/error.hpp"

#include <algorithm>
#include <cmath>
#include <string>

namespace loopwright::capacitor {

namespace {

void require(bool holds, const char* field, double value, const char* unit, const char* accepted) {
    if (!holds) {
        throw base::InputError(std::string("capacitor.gap.") + field, std::to_string(value) + " " + unit,
                               accepted);
    }
}

struct EdgeFactor {
    double low, nominal, high;
};

EdgeFactor edge_factor(PlateEdges edges) {
    switch (edges) {
    case PlateEdges::rounded:
        return {0.7, 0.8, 0.95};
    case PlateEdges::plain:
        return {0.45, 0.6, 0.8};
    case PlateEdges::sharp:
        break;
    }
    return {0.3, 0.4, 0.6};
}

constexpr double uniform_error = 0.08;
constexpr double radio_frequency_low = 0.9;    // of Peek's factor
constexpr double least_m = 1e-4, most_m = 0.1; // of gap times density, where the data reach

double radio_frequency_factor(double gap_m) {
    constexpr double at_1_mm = 3.65 / 4.95;
    constexpr double at_10_mm = 28.0 / 31.8;
    const double share = std::clamp(std::log10(gap_m / 1e-3), 0.0, 1.0);
    return at_1_mm + share * (at_10_mm - at_1_mm);
}

} // namespace

double relative_air_density(units::Length altitude, units::Temperature temperature) {
    const double h_m = altitude.value();
    const double t_K = temperature.value();
    require(h_m >= -500 && h_m <= 11000, "altitude", h_m, "m", "-500 m to 11000 m");
    require(t_K >= 213.15 && t_K <= 333.15, "temperature", t_K - 273.15, "degC", "-60 degC to 60 degC");
    const double pressure_share = std::pow(1.0 - 2.25577e-5 * h_m, 5.25588);
    return pressure_share * 293.15 / t_K;
}

units::Voltage uniform_gap_breakdown(units::Length gap, double relative_density) {
    const double x_cm = relative_density * gap.value() * 100.0;
    require(x_cm >= 100 * least_m && x_cm <= 100 * most_m, "spacing", gap.value() * 1e3, "mm",
            "0.1 mm to 100 mm at the density of the air");
    return units::volts(1e3 * (24.22 * x_cm + 6.08 * std::sqrt(x_cm)));
}

GapRating gap_rating(units::Length gap, PlateEdges edges, units::Length altitude,
                     units::Temperature temperature, double safety_factor) {
    require(safety_factor >= 1 && safety_factor <= 10, "safety_factor", safety_factor, "",
            "a factor from 1 to 10");
    GapRating rating;
    rating.uniform_breakdown = uniform_gap_breakdown(gap, relative_air_density(altitude, temperature));
    rating.radio_frequency_factor = radio_frequency_factor(gap.value());
    const EdgeFactor edge = edge_factor(edges);
    rating.edge_factor = edge.nominal;
    rating.safety_factor = safety_factor;
    rating.usable_peak =
        rating.uniform_breakdown * (rating.radio_frequency_factor * rating.edge_factor / safety_factor);
    const double rf_low = rating.radio_frequency_factor * radio_frequency_low;
    rating.breakdown_range = {rating.uniform_breakdown * ((1 - uniform_error) * rf_low * edge.low),
                              rating.uniform_breakdown * ((1 + uniform_error) * edge.high)};
    rating.usable_peak_range = {std::min(rating.usable_peak, rating.breakdown_range.low),
                                rating.breakdown_range.high / safety_factor};
    rating.notices.add(
        {"rf_breakdown_uncertain", base::Severity::caution,
         "Breakdown on radio frequency is lower than at power frequency and the published data "
         "disagree; the factor for edges is an estimate. Dust, damp and dents lower it further.",
         0});
    return rating;
}

std::optional<units::Length> gap_for(units::Voltage usable_peak, PlateEdges edges, units::Length altitude,
                                     units::Temperature temperature, double safety_factor) {
    const double density = relative_air_density(altitude, temperature);
    const auto usable = [&](double gap_m) {
        return gap_rating(units::metres(gap_m), edges, altitude, temperature, safety_factor).usable_peak;
    };
    // A billionth inside the ends, which rounding must not leave.
    double low_m = least_m / density * (1 + 1e-9), high_m = most_m / density * (1 - 1e-9);
    if (usable(high_m) < usable_peak || usable(low_m) > usable_peak) {
        return std::nullopt;
    }
    while (high_m - low_m > 1e-7 * high_m) {
        const double middle_m = 0.5 * (low_m + high_m);
        (usable(middle_m) < usable_peak ? low_m : high_m) = middle_m;
    }
    return units::metres(high_m);
}

} // namespace loopwright::capacitor
