#include "survey/verdict.hpp"

#include "loop/design_parts.hpp"
#include "loop/fitted_capacitor.hpp"
#include "survey/detail/rounded.hpp"

#include <algorithm>
#include <cmath>
#include <optional>
#include <string>
#include <utility>

namespace loopwright::survey {
namespace {

std::string efficiency_text(double share) {
    const EfficiencyFigure figure = efficiency_to_print(share, 2);
    return units::shown(100.0 * figure.share, units::Dimension::number, figure.digits) + " %";
}

/// A computed value with just so many digits (3 to 6) that a person sees it differ from a limit, and the
/// limit.
template <class Quantity>
std::pair<std::string, std::string> told_apart(Quantity computed, Quantity limit) {
    int digits = 3;
    while (digits < 6 && units::shown(computed, digits) == units::shown(limit, digits)) {
        ++digits;
    }
    return {units::shown(computed, digits), given_text(limit)};
}

/// An interval that the model left at zero is not known: then both ends are the nominal value.
template <class Quantity>
units::Interval<Quantity> known(Quantity nominal, const units::Interval<Quantity>& range) {
    if (range == units::Interval<Quantity>{}) {
        return {nominal, nominal};
    }
    return {std::min(nominal, range.low), std::max(nominal, range.high)};
}

Reason not_established(const loop::OperatingPoint& point) {
    for (const base::Notice& notice : point.notices.worst_first()) {
        if (notice.severity == base::Severity::not_established) {
            std::string text = notice.text;
            if (!text.empty() && text.back() == '.') {
                text.pop_back();
            }
            return {BandVerdict::not_established, "Not established: " + text};
        }
    }
    return {BandVerdict::not_established, "Not established: the model stands behind no number here"};
}

/// What the capacitor with its stray can supply, against what is needed.
std::optional<Reason> reach(const loop::OperatingPoint& point, const design::Design& design) {
    const loop::Resonance& r = *point.resonance;
    const design::Capacitor capacitor = loop::fitted(design, point.frequency);
    const auto [start, end] = loop::capacitor_range(capacitor);
    const std::string with = !capacitor.added.empty()            ? " with what is added to it"
                             : capacitor.stray.value.value() > 0 ? " with its stray"
                                                                 : "";
    const units::Capacitance need = r.tuning_capacitance;
    const auto range = known(need, r.tuning_capacitance_range);
    if (!r.in_capacitor_range) {
        const bool low = need < start;
        const auto [needed, limit] = told_apart(need, low ? start : end);
        return Reason{BandVerdict::out_of_reach, "Needs " + needed + "; the capacitor " +
                                                     (low ? "starts at " : "ends at ") + limit + with};
    }
    const bool low = range.low < start;
    if (!low && range.high <= end) {
        return std::nullopt;
    }
    const auto [needed, limit] = told_apart(need, low ? start : end);
    return Reason{BandVerdict::edge_of_range,
                  "Needs " + needed + ", perhaps " + units::shown(low ? range.low : range.high) +
                      "; the capacitor " + (low ? "starts at " : "ends at ") + limit + with};
}

/// Voltage goes with the root of the power, so the power at which the rating is reached follows exactly.
std::optional<Reason> voltage(const loop::OperatingPoint& point,
                              const std::optional<VoltageLimit>& standing) {
    if (!standing) {
        return std::nullopt;
    }
    const loop::Resonance& r = *point.resonance;
    const units::Voltage limit = standing->limit;
    const units::Voltage peak = r.capacitor_voltage_peak;
    const units::Voltage high = known(peak, r.capacitor_voltage_peak_range).high;
    if (high <= limit) {
        return std::nullopt;
    }
    const double ratio = limit.value() / high.value();
    const auto [now, rated] = told_apart(peak > limit ? peak : high, limit);
    const std::string volts = peak > limit ? now + " peak" : units::shown(peak) + " peak, perhaps " + now;
    const std::string beside = standing->as_rated ? ", rated " + rated + "; the rating is reached at "
                                                  : ", usable " + rated + "; that is reached at ";
    return Reason{BandVerdict::voltage_exceeded,
                  volts + beside + detail::power_down(point.power * ratio * ratio)};
}

std::optional<Reason> width(const loop::OperatingPoint& point, const band::Emission& emission) {
    const loop::Resonance& r = *point.resonance;
    const units::Frequency low = known(r.bandwidth_vswr, r.bandwidth_vswr_range).low;
    if (low >= emission.working_width) {
        return std::nullopt;
    }
    const auto [wide, wanted] = told_apart(low, emission.working_width);
    return Reason{BandVerdict::narrow, (r.bandwidth_vswr < emission.working_width ? "" : "Perhaps only ") +
                                           wide + " wide at VSWR " +
                                           given_text(point.vswr_limit, units::Dimension::number) + "; " +
                                           emission.name + " works in " + wanted};
}

/// "; 1.2 kV peak, rated 2 kV" or that there is nothing to hold it against.
std::string volts_beside(const loop::Resonance& r, const std::optional<VoltageLimit>& standing) {
    const std::string volts = "; " + units::shown(r.capacitor_voltage_peak) + " peak, ";
    if (!standing) {
        return volts + "no rating given";
    }
    return volts +
           (standing->as_rated ? "rated " + given_text(standing->limit)
                               : "usable " + units::shown(standing->limit)) +
           (standing->unrated_members ? ", but a capacitor there has no rating" : "");
}

/// What is radiated; with the volts where these are not a reason of their own.
Reason radiates(const loop::Resonance& r, const std::string& volts) {
    const double low = known(r.efficiency, r.efficiency_range).low;
    const BandVerdict verdict = low >= worthwhile_from ? BandVerdict::worthwhile
                                : low >= weak_from     ? BandVerdict::weak
                                                       : BandVerdict::very_weak;
    std::string text = "Radiates " + efficiency_text(r.efficiency);
    const bool lowered = efficiency_text(low) != efficiency_text(r.efficiency);
    text += lowered ? " of the power, perhaps " + efficiency_text(low) : " of the power";
    return {verdict, text + volts};
}

/// The number as printed, read back: what a person compares with a limit.
double read_back(double share, int digits) {
    const double per_cent = 100.0 * share;
    const double unit = std::pow(10.0, std::floor(std::log10(per_cent)) - (digits - 1));
    return 0.01 * unit * std::round(per_cent / unit);
}

} // namespace

EfficiencyFigure efficiency_to_print(double share, int digits) {
    constexpr int most_digits = 6;
    for (const double limit : {weak_from, worthwhile_from}) {
        if (!(share > 0.0 && share < limit)) {
            continue;
        }
        while (digits < most_digits && read_back(share, digits) >= limit * (1 - 1e-12)) {
            ++digits;
        }
        if (read_back(share, digits) >= limit * (1 - 1e-12)) { // nearer than the digits tell
            share = limit * (1 - std::pow(10.0, -most_digits));
        }
    }
    return {share, digits};
}

std::string given_text(double value_in_si, units::Dimension dimension) {
    std::string text = units::shown(value_in_si, dimension, 6);
    const auto point = text.find('.');
    if (point == std::string::npos) {
        return text;
    }
    const auto end = std::min(text.find_first_not_of("0123456789", point + 1), text.size());
    auto last = text.find_last_not_of('0', end - 1);
    last = last == point ? last : last + 1; // the decimal sign goes with the last zero
    return text.erase(last, end - last);
}

std::optional<VoltageLimit> voltage_limit(const loop::OperatingPoint& point, const design::Design& design) {
    const design::Capacitor capacitor = loop::fitted(design, point.frequency);
    const design::CapacitorRating& rating = capacitor.rating;
    if (!rating.gap && !rating.current && capacitor.added.empty()) {
        return rating.peak_voltage ? std::optional(VoltageLimit{rating.peak_voltage->value, true})
                                   : std::nullopt;
    }
    const loop::Resonance& r = *point.resonance;
    const auto load = loop::network_at(design, point.frequency)
                          .load(r.capacitor_voltage_peak, r.tuning_capacitance, point.frequency);
    const auto allowed = load ? load->allowed_peak() : std::nullopt;
    return allowed ? std::optional(VoltageLimit{*allowed, false, load->unrated_members}) : std::nullopt;
}

std::vector<Reason> reasons(const loop::OperatingPoint& point, const design::Design& design,
                            const band::Emission& emission) {
    if (!point.resonance) {
        return {not_established(point)};
    }
    std::optional<Reason> reached = reach(point, design);
    if (reached && reached->verdict == BandVerdict::out_of_reach) {
        return {*reached};
    }
    const std::optional<VoltageLimit> standing = voltage_limit(point, design);
    const std::optional<Reason> volts = voltage(point, standing);
    std::vector<Reason> all = {
        radiates(*point.resonance, volts ? "" : volts_beside(*point.resonance, standing))};
    for (const auto& reason : {reached, volts, width(point, emission)}) {
        if (reason) {
            all.push_back(*reason);
        }
    }
    std::stable_sort(all.begin(), all.end(),
                     [](const Reason& a, const Reason& b) { return a.verdict > b.verdict; });
    return all;
}

} // namespace loopwright::survey
