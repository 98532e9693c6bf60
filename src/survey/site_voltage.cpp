#include "survey/site_voltage.hpp"

#include "band/emission.hpp"
#include "design/on_band.hpp"
#include "survey/detail/card_remarks.hpp"
#include "survey/verdict.hpp"

#include <algorithm>

namespace loopwright::survey {

namespace {

/// How much farther the ends are than those of the point itself.
struct Wider {
    double low = 1, high = 1;
};

units::Interval<units::Voltage> ends_of(const loop::Resonance& r) {
    const units::Voltage peak = r.capacitor_voltage_peak;
    const units::Interval<units::Voltage>& range = r.capacitor_voltage_peak_range;
    return range.high.value() > 0
               ? units::Interval<units::Voltage>{std::min(peak, range.low), std::max(peak, range.high)}
               : units::Interval<units::Voltage>{peak, peak};
}

std::optional<Wider> wider_on(const Keying& keying, const std::string& band, units::Power power) {
    for (const KeyingBand& each : keying.bands) {
        if (each.band != band || !each.point.resonance || each.point.power != power) {
            continue;
        }
        const auto own = ends_of(*each.point.resonance);
        if (own.low.value() > 0 && each.voltage_peak.high.value() > 0) {
            return Wider{(each.voltage_peak.low / own.low).value(),
                         (each.voltage_peak.high / own.high).value()};
        }
    }
    return std::nullopt;
}

/// Whether anything changed.
bool widen(loop::OperatingPoint& point, const std::string& band, const Keying& keying) {
    const auto wider = point.resonance ? wider_on(keying, band, point.power) : std::nullopt;
    if (wider) {
        const auto own = ends_of(*point.resonance);
        point.resonance->capacitor_voltage_peak_range = {wider->low * own.low, wider->high * own.high};
    }
    return wider.has_value();
}

} // namespace

std::vector<BandRow> with_keying(std::vector<BandRow> rows, const Keying& keying) {
    const design::Design& design = keying.request.design;
    const auto emission = band::find_emission(design.station.emission);
    for (BandRow& row : rows) {
        if (emission && row.point.model == loop::Model::full_wave &&
            widen(row.point, row.band.name, keying)) {
            row.further = reasons(row.point, design, *emission);
            row.verdict = row.further.front().verdict;
            row.verdict_text = row.further.front().text;
            row.further.erase(row.further.begin());
        }
    }
    return rows;
}

Card with_keying(Card card, const Keying& keying) {
    for (CardRow& row : card.rows) {
        if (!row.band.empty() && widen(row.point, row.band, keying)) {
            row.remarks = detail::card_remarks(row, design::on_band(card.request.design, row.band));
        }
    }
    return card;
}

} // namespace loopwright::survey
