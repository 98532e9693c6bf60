#include "survey/site_voltage.hpp"

#include "band/emission.hpp"
#include "design/on_band.hpp"
#include "survey/detail/card_remarks.hpp"
#include "survey/verdict.hpp"

#include <algorithm>

namespace loopwright::survey {

namespace {

/// The ends on the sheet, as shares of the nominal value.
std::optional<units::Interval<double>> ends_on(const Keying& keying, const std::string& band,
                                               units::Power power) {
    for (const KeyingBand& each : keying.bands) {
        if (each.band != band || !each.point.resonance || each.point.power != power) {
            continue;
        }
        const double peak_V = each.point.resonance->capacitor_voltage_peak.value();
        if (peak_V > 0 && each.voltage_peak.high.value() > 0) {
            return units::Interval<double>{each.voltage_peak.low.value() / peak_V,
                                           each.voltage_peak.high.value() / peak_V};
        }
    }
    return std::nullopt;
}

/// Whether the sheet knows the band. Doing it twice changes nothing more.
bool widen(loop::OperatingPoint& point, const std::string& band, const Keying& keying) {
    const auto ends = point.resonance ? ends_on(keying, band, point.power) : std::nullopt;
    if (ends) {
        const units::Voltage peak = point.resonance->capacitor_voltage_peak;
        units::Interval<units::Voltage>& range = point.resonance->capacitor_voltage_peak_range;
        const bool known = range.high.value() > 0;
        range = {known ? std::min(range.low, ends->low * peak) : ends->low * peak,
                 known ? std::max(range.high, ends->high * peak) : ends->high * peak};
    }
    return ends.has_value();
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

std::vector<BandRow> rows_of(const Survey& survey, const Keying* keying) {
    return keying != nullptr ? with_keying(survey.bands, *keying) : survey.bands;
}

loop::OperatingPoint with_keying(loop::OperatingPoint point, const std::string& band, const Keying& keying) {
    if (point.model == loop::Model::full_wave && !band.empty()) {
        widen(point, band, keying);
    }
    return point;
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
