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

double edge_factor(PlateEdges edges) {
    switch (edges) {
    case PlateEdges::rounded:
        return 0.8;
    case PlateEdges::plain:
        return 0.6;
    case PlateEdges::sharp:
        return 0.4;
    }
    return 0.4;
}

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
    require(x_cm >= 0.01 && x_cm <= 10.0, "spacing", gap.value() * 1e3, "mm",
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
    rating.edge_factor = edge_factor(edges);
    rating.safety_factor = safety_factor;
    rating.usable_peak =
        rating.uniform_breakdown * (rating.radio_frequency_factor * rating.edge_factor / safety_factor);
    rating.notices.add(
        {"rf_breakdown_uncertain", base::Severity::caution,
         "Breakdown on radio frequency is lower than at power frequency and the published data "
         "disagree; the factor for edges is an estimate. Dust, damp and dents lower it further.",
         0});
    return rating;
}

} // namespace loopwright::capacitor
