#include "capacitor/capacitor.hpp"

#include "base/error.hpp"
#include "units/constants.hpp"

#include <cmath>
#include <cstdio>
#include <string>

namespace loopwright::capacitor {
namespace {

// A value with its unit, text only where it is refused: every model that is prepared passes here.
struct Given {
    double value;
    const char* unit;
    [[nodiscard]] std::string text() const {
        char text[64];
        std::snprintf(text, sizeof text, "%.6g%s%s", value, *unit == '\0' ? "" : " ", unit);
        return text;
    }
};

Given number(double value, const char* unit) {
    return {value, unit};
}

void refuse(const char* field, const std::string& value, const char* accepted) {
    throw base::InputError(std::string("capacitor.") + field, value, accepted);
}

void require(bool holds, const char* field, const Given& value, const char* accepted) {
    if (!holds) {
        refuse(field, value.text(), accepted);
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
        if (loss.series_resistance) {
            refuse("loss", "q and series_resistance", "one of the two, or neither");
        }
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

void check_added(const std::vector<FixedCapacitor>& added) {
    for (std::size_t i = 0; i < added.size(); ++i) {
        const std::string where = "added[" + std::to_string(i) + "].";
        const double each_pF = added[i].capacitance.value() * 1e12;
        require(within(each_pF, 0.01, 1e6), (where + "capacitance").c_str(), number(each_pF, "pF"),
                "a capacitance from 0.01 pF to 1 uF");
        if (added[i].q) {
            require(within(*added[i].q, 10.0, 1e12), (where + "q").c_str(), number(*added[i].q, ""),
                    "a number from 10 to 1e12");
        }
        if (added[i].peak_voltage) {
            const double volt = added[i].peak_voltage->value();
            require(within(volt, 1.0, 1e6), (where + "peak_voltage").c_str(), number(volt, "V"),
                    "a voltage from 1 V to 1 MV");
        }
        if (added[i].current) {
            const double ampere = added[i].current->value();
            require(within(ampere, 1e-3, 1e4), (where + "current").c_str(), number(ampere, "A"),
                    "a current from 1 mA to 10 kA");
        }
    }
}

} // namespace

Capacitor::Capacitor(const CapacitorSpec& spec) : spec_(spec), parallel_F_(spec.stray.value()) {
    check_capacitances(spec);
    check_losses(spec);
    check_added(spec.added);
    for (const FixedCapacitor& each : spec.added) {
        const double each_F = each.capacitance.value();
        (each.connection == Connection::series ? series_elastance_ : parallel_F_) +=
            each.connection == Connection::series ? 1 / each_F : each_F;
        added_q_missing_ = added_q_missing_ || !each.q;
    }
    if (added_q_missing_) {
        notices_.add({"added_capacitor_loss_assumed", base::Severity::caution,
                      "No Q is given for an added fixed capacitor; 1000 is assumed (300 to 3000; common "
                      "practice, no source).",
                      assumed_q});
    }
    if (!spec.loss.q && !spec.loss.series_resistance) {
        notices_.add(
            {"capacitor_loss_assumed", base::Severity::caution,
             "No loss is given for the capacitor; a Q of 1000 is assumed (300 to 3000 is usual; common "
             "practice, no source).",
             assumed_q});
    }
}

units::Interval<units::Capacitance> Capacitor::range() const {
    if (spec_.added.empty()) {
        return {spec_.minimum + spec_.stray, spec_.maximum + spec_.stray};
    }
    const auto whole = [&](units::Capacitance variable) {
        return units::farads(1 / (1 / variable.value() + series_elastance_) + parallel_F_);
    };
    return {whole(spec_.minimum), whole(spec_.maximum)};
}

std::optional<units::Capacitance> Capacitor::variable_for(units::Capacitance whole) const {
    const double branch_F = whole.value() - parallel_F_;
    if (!(branch_F > 0)) {
        return std::nullopt;
    }
    const double elastance = 1 / branch_F - series_elastance_;
    return elastance > 0 ? std::optional(units::farads(1 / elastance)) : std::nullopt;
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
    if (!spec_.added.empty()) {
        return network_loss(total_F, f_Hz);
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
