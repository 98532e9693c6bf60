#include "conductor/conductor.hpp"

#include "base/error.hpp"
#include "conductor/detail/round.hpp"
#include "conductor/metals.hpp"
#include "conductor/strip.hpp"
#include "units/constants.hpp"

#include <cmath>
#include <memory>
#include <string>

namespace loopwright::conductor {
namespace {

using units::constants::magnetic_constant_H_m;
using units::constants::pi;

// The strip's table is good to 1 %; edges that are not sharp take a little off (common practice, no source).
constexpr units::Interval<double> strip_formula_range{0.97, 1.01};

// Wires of braids and strands are 0.1 to 0.2 mm thick (common practice, no source).
constexpr double deepest_skin_m = 0.15e-3;

double size_m(units::Length length, const char* field) {
    const double value = length.value();
    if (!(value >= 1e-6 && value <= 1.0)) {
        throw base::InputError(std::string("conductor.") + field, std::to_string(value) + " m",
                               "a length from 1 um to 1 m");
    }
    return value;
}

void check_aspect(double aspect) {
    const double ratio = std::fmax(aspect, 1.0 / aspect);
    if (ratio > StripImpedance::largest_aspect) {
        throw base::InputError("conductor.thickness",
                               "1/" + std::to_string(static_cast<int>(ratio)) + " of the width",
                               "a strip up to 6000 times as wide as thick; thinner ones are not established");
    }
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
        check_aspect(width.value() / thickness.value());
        strip_ = std::make_shared<const StripImpedance>(width, thickness);
        radius_m_ = strip_->shape().equivalent_radius.value();
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

std::complex<double> Conductor::impedance_at(double conductivity_S_m, double frequency_Hz) const {
    if (!(frequency_Hz >= 0.0 && std::isfinite(frequency_Hz))) {
        throw base::ProgramError("conductor: frequency must not be negative");
    }
    const double half_k_per_m2 = pi * frequency_Hz * magnetic_constant_H_m * conductivity_S_m; // 1/delta^2
    if (strip_) {
        return frequency_Hz > 0.0 ? strip_->ohm_per_m(conductivity_S_m, 1.0 / std::sqrt(half_k_per_m2))
                                  : dc_ohm_per_m_ * (conductivity_S_m_ / conductivity_S_m);
    }
    const double x_squared = 2.0 * half_k_per_m2 * radius_m_ * radius_m_;
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
    if (form_ != Form::braid && form_ != Form::stranded) {
        return notices;
    }
    const double depth_m = radius_m_ / radius_over_skin_depth(frequency.value()); // infinite at 0 Hz
    if (!(depth_m <= deepest_skin_m)) {
        const bool braid = form_ == Form::braid;
        notices.add(
            {braid ? "braid_below_range" : "strands_below_range", base::Severity::not_established,
             braid ? "The skin is deeper than a braid is thick; its resistance is not established here."
                   : "The skin is deeper than a strand is thick; the resistance is not established here.",
             std::fmin(depth_m / deepest_skin_m, 1e6)});
    }
    return notices;
}

} // namespace loopwright::conductor
