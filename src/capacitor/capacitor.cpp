#include "capacitor/capacitor.hpp"

#include "base/error.hpp"
#include "units/constants.hpp"

#include <cmath>
#include <cstdio>
#include <string>

namespace loopwright::capacitor {
namespace {

std::string number(double value, const char* unit) {
    char text[64];
    std::snprintf(text, sizeof text, "%.6g%s%s", value, *unit == '\0' ? "" : " ", unit);
    return text;
}

void require(bool holds, const char* field, const std::string& value, const char* accepted) {
    if (!holds) {
        throw base::InputError(std::string("capacitor.") + field, value, accepted);
    }
}

bool within(double value, double low, double high) {
    return value >= low && value <= high; // false for NaN
}

void check_capacitances(const CapacitorSpec& spec) {
    const double low_pF = spec.minimum.value() * 1e12, high_pF = spec.maximum.value() * 1e12;
    const double stray_pF = spec.stray.value() * 1e12;
    require(within(low_pF, 0.01, 1e6), "minimum", number(low_pF, "pF"), "a capacitance from 0.01 pF to 1 uF");
    require(within(high_pF, 0.01, 1e6), "maximum", number(high_pF, "pF"),
            "a capacitance from 0.01 pF to 1 uF");
    require(low_pF <= high_pF, "maximum", number(high_pF, "pF"), "a capacitance not below the minimum");
    require(within(stray_pF, 0.0, 1e6), "stray", number(stray_pF, "pF"), "a capacitance from 0 to 1 uF");
}

void check_losses(const CapacitorSpec& spec) {
    const LossLaw& loss = spec.loss;
    if (loss.q) {
        require(within(*loss.q, 10.0, 1e12), "loss.q", number(*loss.q, ""), "a number from 10 to 1e12");
        require(!loss.series_resistance, "loss", "q and series_resistance", "one of the two, or neither");
    }
    if (loss.series_resistance) {
        const double ohm = loss.series_resistance->value(), at_Hz = loss.at.value();
        require(within(ohm, 0.0, 1e3), "loss.series_resistance", number(ohm, "ohm"),
                "a resistance from 0 to 1000 ohm");
        require(within(at_Hz, 1e4, 1e9), "loss.at", number(at_Hz, "Hz"), "a frequency from 10 kHz to 1 GHz");
        require(within(loss.exponent, -2.0, 2.0), "loss.exponent", number(loss.exponent, ""),
                "a number from -2 to 2");
    }
    const double contact_ohm = spec.contact_resistance.value();
    require(within(contact_ohm, 0.0, 1e3), "contact_resistance", number(contact_ohm, "ohm"),
            "a resistance from 0 to 1000 ohm");
    if (spec.peak_voltage) {
        const double volt = spec.peak_voltage->value();
        require(within(volt, 1.0, 1e6), "rating.peak_voltage", number(volt, "V"),
                "a voltage from 1 V to 1 MV");
    }
}

} // namespace

Capacitor::Capacitor(const CapacitorSpec& spec) : spec_(spec) {
    check_capacitances(spec);
    check_losses(spec);
    if (!spec.loss.q && !spec.loss.series_resistance) {
        notices_.add(
            {"capacitor_loss_assumed", base::Severity::caution,
             "No loss is given for the capacitor; a Q of 1000 is assumed (300 to 3000 is usual; common "
             "practice, no source).",
             assumed_q});
    }
}

units::Interval<units::Capacitance> Capacitor::range() const {
    return {spec_.minimum + spec_.stray, spec_.maximum + spec_.stray};
}

bool Capacitor::can_supply(units::Capacitance with_stray) const {
    const auto ends = range();
    return with_stray >= ends.low && with_stray <= ends.high;
}

double Capacitor::own_series_ohm(double frequency_Hz) const {
    const LossLaw& loss = spec_.loss;
    const double ratio = frequency_Hz / loss.at.value();
    const double law = loss.exponent == 0.5 ? std::sqrt(ratio) : std::pow(ratio, loss.exponent);
    return loss.series_resistance->value() * law;
}

SeriesLoss Capacitor::series_loss(units::Capacitance with_stray, units::Frequency frequency) const {
    const double total_F = with_stray.value(), f_Hz = frequency.value();
    if (!(total_F > 0.0 && f_Hz > 0.0) || !std::isfinite(total_F) || !std::isfinite(f_Hz)) {
        throw base::ProgramError("series_loss: capacitance and frequency must be positive");
    }
    // The stray carries its share of the current past contacts and plates.
    const double share = std::fmax(0.0, 1.0 - spec_.stray.value() / total_F);
    const double contact_ohm = spec_.contact_resistance.value() * share * share;
    if (spec_.loss.series_resistance) {
        const double loss_ohm = own_series_ohm(f_Hz) * share * share;
        const units::Resistance total = units::ohms(loss_ohm + contact_ohm);
        return {units::ohms(loss_ohm), units::ohms(contact_ohm), total, {total, total}};
    }
    const double reactance_ohm = 1.0 / (2.0 * units::constants::pi * f_Hz * total_F);
    const double q = spec_.loss.q.value_or(assumed_q);
    const auto with_q = [&](double value) { return units::ohms(reactance_ohm / value + contact_ohm); };
    SeriesLoss result{
        units::ohms(reactance_ohm / q), units::ohms(contact_ohm), with_q(q), {with_q(q), with_q(q)}};
    if (!spec_.loss.q) {
        result.range = {with_q(assumed_q_range.high), with_q(assumed_q_range.low)};
    }
    return result;
}

} // namespace loopwright::capacitor
