#include "conductor/conductor.hpp"

#include "base/error.hpp"
#include "conductor/detail/round.hpp"
#include "conductor/metals.hpp"
#include "conductor/strip.hpp"
#include "units/constants.hpp"

#include <cmath>
#include <string>

namespace loopwright::conductor {
namespace {

using units::constants::magnetic_constant_H_m;
using units::constants::pi;

// Thin-skin strip formula: high by 1.5 to 2.6 % for aspect >= 10 and t/delta 5 to 160, (C.14).
constexpr units::Interval<double> strip_formula_range{0.97, 1.0};

double size_m(units::Length length, const char* field) {
    const double value = length.value();
    if (!(value >= 1e-6 && value <= 1.0)) {
        throw base::InputError(std::string("conductor.") + field, std::to_string(value) + " m",
                               "a length from 1 um to 1 m");
    }
    return value;
}

double checked_factor(double factor, const char* field) {
    if (!(factor >= 1.0 && factor <= 20.0)) {
        throw base::InputError(std::string("conductor.") + field, std::to_string(factor),
                               "a number from 1 (smooth) to 20");
    }
    return factor;
}

double checked_conductivity(units::Conductivity conductivity, units::Temperature temperature,
                            units::PerKelvin coefficient) {
    const double value = conductivity.value();
    if (!(value >= 1e4 && value <= 1e9)) {
        throw base::InputError("conductor.metal.conductivity", std::to_string(value) + " S/m",
                               "a conductivity from 0.01 MS/m to 1000 MS/m");
    }
    const double alpha = coefficient.value();
    if (!(alpha >= -0.002 && alpha <= 0.008)) {
        throw base::InputError("conductor.metal.temperature_coefficient", std::to_string(alpha) + " /K",
                               "a coefficient from -0.002 /K to 0.008 /K");
    }
    return conductivity_at(conductivity, coefficient, temperature).value();
}

} // namespace

Conductor::Conductor(const ConductorSpec& spec)
    : form_(spec.form), conductivity_S_m_(checked_conductivity(spec.conductivity, spec.temperature,
                                                               spec.temperature_coefficient)) {
    conductivity_range_S_m_ = {conductivity_S_m_, conductivity_S_m_};
    if (spec.conductivity_range.low.value() > 0.0) {
        const double warm = conductivity_S_m_ / spec.conductivity.value();
        conductivity_range_S_m_ = {spec.conductivity_range.low.value() * warm,
                                   spec.conductivity_range.high.value() * warm};
    }
    if (form_ == Form::strip) {
        const units::Length width = units::metres(size_m(spec.width, "width"));
        const units::Length thickness = units::metres(size_m(spec.thickness, "thickness"));
        const StripShape shape = strip_shape(width, thickness);
        radius_m_ = shape.equivalent_radius.value();
        effective_perimeter_m_ = shape.effective_perimeter.value();
        thickness_m_ = std::fmin(width.value(), thickness.value());
        dc_ohm_per_m_ = 1.0 / (conductivity_S_m_ * width.value() * thickness.value());
        return;
    }
    radius_m_ = 0.5 * size_m(spec.diameter, "diameter");
    if (form_ == Form::tube) {
        wall_fraction_ = size_m(spec.wall, "wall") / radius_m_;
        if (wall_fraction_ > 1.0 + 1e-9) {
            throw base::InputError("conductor.wall", std::to_string(spec.wall.value() * 1e3) + " mm",
                                   "a wall of at most half the diameter");
        }
        wall_fraction_ = std::fmin(wall_fraction_, 1.0);
    } else if (form_ != Form::wire) {
        factor_ = checked_factor(spec.factor, form_ == Form::braid ? "braid_factor" : "stranded_factor");
    }
    dc_ohm_per_m_ = detail::round_dc_ohm_per_m(radius_m_, wall_fraction_, conductivity_S_m_);
}

std::complex<double> Conductor::strip_impedance(double conductivity_S_m, double frequency_Hz) const {
    const double delta_m = std::sqrt(1.0 / (pi * frequency_Hz * magnetic_constant_H_m * conductivity_S_m));
    const double thin_skin = 1.0 / (conductivity_S_m * delta_m * effective_perimeter_m_);
    return {std::fmax(thin_skin, dc_ohm_per_m_ * conductivity_S_m_ / conductivity_S_m), thin_skin};
}

std::complex<double> Conductor::impedance_at(double conductivity_S_m, double frequency_Hz) const {
    if (!(frequency_Hz >= 0.0 && std::isfinite(frequency_Hz))) {
        throw base::ProgramError("conductor: frequency must not be negative");
    }
    if (form_ == Form::strip) {
        return strip_impedance(conductivity_S_m, frequency_Hz);
    }
    const double x_squared =
        2.0 * pi * frequency_Hz * magnetic_constant_H_m * conductivity_S_m * radius_m_ * radius_m_;
    return factor_ * dc_ohm_per_m_ * (conductivity_S_m_ / conductivity_S_m) *
           detail::round_ratio(x_squared, wall_fraction_);
}

std::complex<double> Conductor::internal_impedance_ohm_per_m(double frequency_Hz) const {
    return impedance_at(conductivity_S_m_, frequency_Hz);
}

units::ImpedancePerLength Conductor::internal_impedance(units::Frequency frequency) const {
    return units::ImpedancePerLength::from_value(internal_impedance_ohm_per_m(frequency.value()));
}

units::ResistancePerLength Conductor::dc_resistance() const {
    return units::ohms_per_metre(factor_ * dc_ohm_per_m_);
}

units::Length Conductor::skin_depth(units::Frequency frequency) const {
    return units::metres(radius_m_ / radius_over_skin_depth(frequency.value()));
}

double Conductor::radius_over_skin_depth(double frequency_Hz) const {
    return radius_m_ * std::sqrt(pi * frequency_Hz * magnetic_constant_H_m * conductivity_S_m_);
}

units::Interval<double> Conductor::resistance_factor_range(units::Frequency frequency) const {
    const double nominal = impedance_at(conductivity_S_m_, frequency.value()).real();
    units::Interval<double> range{
        impedance_at(conductivity_range_S_m_.high, frequency.value()).real() / nominal,
        impedance_at(conductivity_range_S_m_.low, frequency.value()).real() / nominal};
    if (form_ == Form::strip) {
        range.low *= strip_formula_range.low;
        range.high *= strip_formula_range.high;
    }
    if (factor_ > 1.0) {
        range.low /= factor_;
        range.high *= (2.0 * factor_ - 1.0) / factor_;
    }
    return range;
}

base::Notices Conductor::notices(units::Frequency frequency) const {
    base::Notices notices;
    if (form_ == Form::strip && thickness_m_ < 3.0 * skin_depth(frequency).value()) {
        notices.add({"strip_thinner_than_skin", base::Severity::not_established,
                     "The strip is thinner than three skin depths; its resistance is not established.",
                     3.0 * skin_depth(frequency).value() / thickness_m_});
    }
    return notices;
}

} // namespace loopwright::conductor
