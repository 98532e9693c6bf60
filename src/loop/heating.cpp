#include "loop/heating.hpp"

#include "base/error.hpp"
#include "capacitor/breakdown.hpp"
#include "loop/fitted_capacitor.hpp"
#include "units/constants.hpp"

#include <algorithm>
#include <cmath>

namespace loopwright::loop {
namespace {

using units::constants::pi;

constexpr double gravity_m_s2 = 9.80665;
constexpr double stefan_boltzmann_W_m2K4 = 5.670374419e-8; // CODATA 2018, exact digits as printed
constexpr double gas_constant_J_kgK = 287.05;              // of dry air
constexpr double sea_level_Pa = 101325;
constexpr double heat_capacity_J_kgK = 1007;
constexpr double convection_error = 0.25;
constexpr double least_rayleigh = 1e-5, most_rayleigh = 1e12;
constexpr double negligible_rise_K = 1e-3;

struct AirState {
    double conductivity_W_mK, kinematic_m2_s, prandtl;
};

// Sutherland's laws for dry air (constants as in F. M. White, Viscous Fluid Flow, from memory).
AirState air_at(double film_K, double pressure_Pa) {
    const double ratio = std::pow(film_K / 273.15, 1.5);
    const double viscosity = 1.716e-5 * ratio * (273.15 + 110.4) / (film_K + 110.4);
    const double conductivity = 0.0241 * ratio * (273.15 + 194) / (film_K + 194);
    const double density = pressure_Pa / (gas_constant_J_kgK * film_K);
    return {conductivity, viscosity / density, viscosity * heat_capacity_J_kgK / conductivity};
}

double pressure_Pa(units::Length altitude) {
    return sea_level_Pa * capacitor::relative_air_density(altitude, units::kelvin(293.15));
}

/// Not below 0.36, the value in air that does not move.
double nusselt(double rayleigh, double prandtl) {
    const double of_prandtl = std::pow(1 + std::pow(0.559 / prandtl, 9.0 / 16), 8.0 / 27);
    const double root = 0.60 + 0.387 * std::pow(rayleigh, 1.0 / 6) / of_prandtl;
    return root * root;
}

double total_W(const HotBody& body, const StillAir& air, double rise_K, double emissivity,
               double convection) {
    const GivenOff off = given_off(body, air, rise_K, emissivity, convection);
    return (off.convection + off.radiation).value();
}

/// Monotone in the rise, so halving finds it; highest_rise_K and more come back as they are.
double rise_for(double average_W, const HotBody& body, const StillAir& air, double emissivity,
                double convection) {
    double low = 0, high = 4 * highest_rise_K;
    while (high - low > 1e-6 * high + 1e-9) {
        const double middle = 0.5 * (low + high);
        (total_W(body, air, middle, emissivity, convection) < average_W ? low : high) = middle;
    }
    return high;
}

base::Notice hotter_than_the_model() {
    return {
        "heating_beyond_range", base::Severity::not_established,
        "How warm this becomes is not established: the model ends at a rise of 150 K. It would be too hot "
        "to use.",
        highest_rise_K};
}

HotBody body_of(const design::Conductor& conductor, units::Length length) {
    if (conductor.form == design::ConductorForm::strip) {
        // The cylinder with the same surface.
        return {(conductor.width.value + conductor.thickness.value) * (2 / pi), length};
    }
    return {conductor.diameter.value, length};
}

Heating widened(const Heating& nominal, const Heating& cool, const Heating& hot) {
    Heating result = nominal;
    if (!cool.rise_K || !hot.rise_K || !nominal.rise_K) {
        result.rise_K.reset();
        result.notices.add(hotter_than_the_model());
        return result;
    }
    result.rise_range_K = {cool.rise_range_K.low, hot.rise_range_K.high};
    return result;
}

Heating capacitor_heating(const design::Design& design, const OperatingPoint& point, double share,
                          const StillAir& air) {
    const Resonance& r = *point.resonance;
    const auto loss =
        capacitor_at(design, point.frequency).series_loss(r.tuning_capacitance, point.frequency);
    const double square = r.capacitor_current_rms.value() * r.capacitor_current_rms.value() * share;
    const auto at = [&](units::Resistance ohm, double diameter_mm, double length_mm) {
        return heating(units::watts(square * ohm.value()),
                       {units::millimetres(diameter_mm), units::millimetres(length_mm)}, air);
    };
    Heating result =
        widened(at(loss.total, 50, 60), at(loss.range.low, 80, 120), at(loss.range.high, 30, 30));
    result.notices.add(
        {"capacitor_body_assumed", base::Severity::caution,
         "How large the capacitor is, is not known: a body of 50 mm by 60 mm is assumed (30 by "
         "30 to 80 by 120), and heat evenly over it. Contacts are hotter.",
         0});
    return result;
}

} // namespace

GivenOff given_off(const HotBody& body, const StillAir& air, double rise_K, double emissivity,
                   double convection) {
    const double around_K = air.temperature.value();
    const double surface_K = around_K + rise_K;
    const double film_K = 0.5 * (around_K + surface_K);
    const AirState state = air_at(film_K, pressure_Pa(air.altitude));
    const double d = body.diameter.value();
    const double surface_m2 = pi * d * body.length.value();
    GivenOff off;
    // g beta dT d^3 / (nu alpha), alpha = nu / Pr
    off.rayleigh = gravity_m_s2 / film_K * rise_K * d * d * d * state.prandtl /
                   (state.kinematic_m2_s * state.kinematic_m2_s);
    const double film_W_m2K = convection * nusselt(off.rayleigh, state.prandtl) * state.conductivity_W_mK / d;
    off.convection = units::watts(film_W_m2K * surface_m2 * rise_K);
    off.radiation = units::watts(emissivity * stefan_boltzmann_W_m2K4 * surface_m2 *
                                 (std::pow(surface_K, 4) - std::pow(around_K, 4)));
    return off;
}

Heating heating(units::Power average, const HotBody& body, const StillAir& air) {
    if (!(average.value() >= 0 && body.diameter.value() > 0 && body.length.value() > 0)) {
        throw base::ProgramError("heating: power and sizes must not be negative");
    }
    Heating result;
    const double watt = average.value();
    const double nominal = watt > 0 ? rise_for(watt, body, air, body.emissivity, 1) : 0;
    const double hot =
        watt > 0 ? rise_for(watt, body, air, body.emissivity_range.low, 1 - convection_error) : 0;
    if (hot > highest_rise_K) {
        result.notices.add(hotter_than_the_model());
        return result;
    }
    const double rayleigh = watt > 0 ? given_off(body, air, nominal, body.emissivity).rayleigh : 1;
    if (nominal > negligible_rise_K && !(rayleigh > least_rayleigh && rayleigh < most_rayleigh)) {
        result.notices.add({"heating_outside_correlation", base::Severity::not_established,
                            "How warm this becomes is not established: its size lies outside the correlation "
                            "for still air.",
                            rayleigh});
        return result;
    }
    result.rise_K = nominal;
    result.rise_range_K = {
        watt > 0 ? rise_for(watt, body, air, body.emissivity_range.high, 1 + convection_error) : 0, hot};
    return result;
}

LoopHeating heating(const design::Design& design, const OperatingPoint& point, double average_over_peak) {
    if (!(average_over_peak >= 0 && average_over_peak <= 1)) {
        throw base::ProgramError("heating: a share of the power from 0 to 1");
    }
    LoopHeating result;
    if (!point.resonance) {
        result.conductor.notices = point.notices;
        result.capacitor.notices = point.notices;
        return result;
    }
    const Resonance& r = *point.resonance;
    const StillAir air{design.site.altitude.value, design.site.air_temperature.value};
    const double ampere = r.loop_current_rms.value();
    const double square = ampere * ampere * average_over_peak;
    const double ohm = (r.resistance.conductor + r.resistance.joints).value();
    result.conductor_average = units::watts(square * ohm);
    result.capacitor_average = units::watts(square * r.resistance.capacitor.value());
    // The current falls from the middle to the capacitor in a curve above the straight line between: its mean
    // square is at least (1 + q + q^2)/3 of that in the middle.
    const double q = std::min(1.0, (r.capacitor_current_rms / r.loop_current_rms).value());
    const double hottest_W = result.conductor_average.value() * 3 / (1 + q + q * q);
    const double length_m =
        point.perimeter_in_wavelengths * units::constants::speed_of_light_m_s / point.frequency.value();
    result.conductor =
        heating(units::watts(hottest_W), body_of(design.conductor, units::metres(length_m)), air);
    result.capacitor = capacitor_heating(design, point, average_over_peak, air);
    return result;
}

} // namespace loopwright::loop
