#include "survey/detail/card_remarks.hpp"

#include "loop/design_parts.hpp"
#include "survey/detail/rounded.hpp"
#include "survey/verdict.hpp"
#include "units/text.hpp"

#include <algorithm>

namespace loopwright::survey::detail {
namespace {

using Kind = CardRemarkKind;

std::string not_established(const loop::OperatingPoint& point) {
    for (const base::Notice& notice : point.notices.worst_first()) {
        if (notice.severity == base::Severity::not_established) {
            std::string text = notice.text;
            while (!text.empty() && text.back() == '.') {
                text.pop_back();
            }
            return "Not established: " + text;
        }
    }
    return "Not established: the model stands behind no number here";
}

std::string what_brings_it_in(const CardRow& row, const tuning::FixedRemedy& remedy) {
    const bool parallel = remedy.connection == design::AddedConnection::parallel;
    std::string where = row.band.empty() ? "this frequency" : row.band;
    if (!row.band.empty() && !remedy.whole_band) {
        where = remedy.working_frequencies ? "the working frequencies of " + row.band : "this frequency";
    }
    return given_text(remedy.capacitance) + (parallel ? " in parallel" : " in series") + " brings " + where +
           " in and carries " + units::shown(remedy.voltage_peak, 2) + " peak, " +
           units::shown(remedy.current_rms, 2) + " rms";
}

std::string out_of_reach(const CardRow& row) {
    const tuning::Shortfall& missing = *row.shortfall;
    const std::string by = units::shown(missing.by, 2);
    return (missing.above ? by + " short" : "Needs " + by + " less than the least") + ": " +
           (missing.remedy ? what_brings_it_in(row, *missing.remedy)
                           : std::string("no single fixed capacitor of the E12 series brings it in"));
}

std::optional<CardRemark> edge(const loop::Resonance& r, const design::Capacitor& capacitor) {
    const auto ends = loop::capacitor_range(capacitor);
    if (r.tuning_capacitance_range.low >= ends.low && r.tuning_capacitance_range.high <= ends.high) {
        return std::nullopt;
    }
    return CardRemark{Kind::edge_of_range, "Perhaps out of reach: needs " +
                                               units::shown(r.tuning_capacitance_range.low) + " to " +
                                               units::shown(r.tuning_capacitance_range.high)};
}

std::optional<CardRemark> stop(const CardRow& row, const design::Capacitor& capacitor) {
    const auto& dial = row.dial();
    if (!dial || !capacitor.dial) {
        return std::nullopt;
    }
    const double low = std::min(capacitor.dial->at_minimum, capacitor.dial->at_maximum),
                 high = std::max(capacitor.dial->at_minimum, capacitor.dial->at_maximum);
    if (dial->range.low >= low && dial->range.high <= high) {
        return std::nullopt;
    }
    const double end = dial->range.low < low ? low : high;
    return CardRemark{Kind::edge_of_range,
                      "Perhaps beyond the stop at " + units::shown(end, units::Dimension::number)};
}

std::optional<CardRemark> voltage(const CardRow& row) {
    const loop::Resonance& r = *row.point.resonance;
    const units::Voltage high = std::max(r.capacitor_voltage_peak, r.capacitor_voltage_peak_range.high);
    if (!row.usable_voltage || high <= *row.usable_voltage) {
        return std::nullopt;
    }
    const double ratio = row.usable_voltage->value() / high.value();
    return CardRemark{Kind::voltage_exceeded,
                      "Do not key at " + given_text(row.point.power) + ": " + units::shown(high) +
                          " peak, usable " + units::shown(*row.usable_voltage) + "; that is reached at " +
                          power_down(row.point.power * ratio * ratio)};
}

std::optional<CardRemark> drive(const CardRow& row) {
    if (!row.drive || row.drive->resolves) {
        return std::nullopt;
    }
    return CardRemark{Kind::drive_too_coarse,
                      "This drive cannot resolve " + (row.band.empty() ? "this frequency" : row.band) +
                          "; it needs at least " + std::to_string(*row.drive->needed_reduction) + ":1"};
}

std::string listed(const std::vector<std::string>& names) {
    std::string all;
    for (const std::string& name : names) {
        all += (all.empty() ? "" : ", ") + name;
    }
    return all;
}

CardRemark how_far(const CardRow& row) {
    const units::Frequency low = std::min(*row.usable_span, row.usable_span_range.low);
    if (low < row.emission.working_width) {
        return {Kind::narrow, "Only " + units::shown(low, 2) + " wide; " + row.emission.name + " works in " +
                                  given_text(row.emission.working_width) + ": retune inside it"};
    }
    if (row.whole_band) {
        return {Kind::whole_band, "All of " + row.band + " without retuning"};
    }
    const std::string with = listed(row.shared_with);
    if (row.digital_segment) {
        return {Kind::digital_segment, "Without retuning: all digital (" + with + ")"};
    }
    return {Kind::shared, with.empty() ? "" : "Without retuning: " + with};
}

} // namespace

std::vector<CardRemark> card_remarks(const CardRow& row, const design::Design& there) {
    std::vector<CardRemark> all;
    if (!row.point.resonance) {
        all.push_back({Kind::not_established, not_established(row.point)});
        return all;
    }
    if (!row.reachable && row.shortfall) {
        all.push_back({Kind::out_of_reach, out_of_reach(row)});
        return all;
    }
    const auto reach = edge(*row.point.resonance, there.capacitor);
    const auto end = reach ? std::nullopt : stop(row, there.capacitor);
    for (const auto& remark : {voltage(row), reach, drive(row), end}) {
        if (remark) {
            all.push_back(*remark);
        }
    }
    const CardRemark last = how_far(row);
    if (!last.text.empty()) {
        all.push_back(last);
    }
    return all;
}

} // namespace loopwright::survey::detail
