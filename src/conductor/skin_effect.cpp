#include "conductor/skin_effect.hpp"

#include "base/error.hpp"
#include "conductor/detail/round.hpp"
#include "units/constants.hpp"

#include <cmath>

namespace loopwright::conductor {
namespace {

using units::constants::magnetic_constant_H_m;
using units::constants::pi;

double require_positive(double value, const char* what) {
    if (!(value > 0.0 && std::isfinite(value))) {
        throw base::ProgramError(std::string("skin effect: ") + what + " must be positive");
    }
    return value;
}

double omega_mu_sigma(units::Conductivity conductivity, units::Frequency frequency) {
    const double f_Hz = frequency.value();
    if (!(f_Hz >= 0.0 && std::isfinite(f_Hz))) {
        throw base::ProgramError("skin effect: frequency must not be negative");
    }
    return 2.0 * pi * f_Hz * magnetic_constant_H_m * require_positive(conductivity.value(), "conductivity");
}

double checked_wall_fraction(units::Length outer_diameter, units::Length wall) {
    const double radius_m = 0.5 * require_positive(outer_diameter.value(), "diameter");
    const double fraction = require_positive(wall.value(), "wall") / radius_m;
    if (fraction > 1.0 + 1e-12) {
        throw base::ProgramError("skin effect: wall over half the diameter");
    }
    return std::fmin(fraction, 1.0);
}

} // namespace

units::Length skin_depth(units::Conductivity conductivity, units::Frequency frequency) {
    require_positive(frequency.value(), "frequency");
    return units::metres(std::sqrt(2.0 / omega_mu_sigma(conductivity, frequency)));
}

units::Resistance surface_resistance(units::Conductivity conductivity, units::Frequency frequency) {
    return units::ohms(1.0 / (conductivity.value() * skin_depth(conductivity, frequency).value()));
}

units::ResistancePerLength wire_dc_resistance(units::Length diameter, units::Conductivity conductivity) {
    return tube_dc_resistance(diameter, 0.5 * diameter, conductivity);
}

units::ResistancePerLength tube_dc_resistance(units::Length outer_diameter, units::Length wall,
                                              units::Conductivity conductivity) {
    const double fraction = checked_wall_fraction(outer_diameter, wall);
    const double radius_m = 0.5 * outer_diameter.value();
    return units::ohms_per_metre(detail::round_dc_ohm_per_m(
        radius_m, fraction, require_positive(conductivity.value(), "conductivity")));
}

units::ImpedancePerLength wire_internal_impedance(units::Length diameter, units::Conductivity conductivity,
                                                  units::Frequency frequency) {
    return tube_internal_impedance(diameter, 0.5 * diameter, conductivity, frequency);
}

units::ImpedancePerLength tube_internal_impedance(units::Length outer_diameter, units::Length wall,
                                                  units::Conductivity conductivity,
                                                  units::Frequency frequency) {
    const double fraction = checked_wall_fraction(outer_diameter, wall);
    const double radius_m = 0.5 * outer_diameter.value();
    const double k_per_m2 = omega_mu_sigma(conductivity, frequency);
    return units::ImpedancePerLength::from_value(
        detail::round_dc_ohm_per_m(radius_m, fraction, conductivity.value()) *
        detail::round_ratio(k_per_m2 * radius_m * radius_m, fraction));
}

} // namespace loopwright::conductor
