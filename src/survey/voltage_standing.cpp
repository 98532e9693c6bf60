#include "survey/voltage_standing.hpp"

#include "design/on_band.hpp"
#include "loop/fitted_capacitor.hpp"
#include "survey/board_standing.hpp"
#include "survey/verdict.hpp"

#include <algorithm>
#include <utility>

namespace loopwright::survey {
namespace {

/// Each band once, whatever rows a card has on it.
void add_name(std::vector<std::string>& names, const std::string& band) {
    if (std::find(names.begin(), names.end(), band) == names.end()) {
        names.push_back(band);
    }
}

/// What a place counts for: nothing where no rating can be held against it.
double share_of(const CarriedVoltage& at) {
    return at.rated() || at.over() ? at.peak.value() / at.usable->value() : 0.0;
}

void add(VoltageStanding& standing, const CarriedVoltage& at, const std::string& band) {
    if (!standing.highest || at.peak > standing.highest->peak) {
        standing.highest = at;
    }
    const double share = share_of(at), before = standing.nearest ? share_of(*standing.nearest) : 0.0;
    if (!standing.nearest || share > before || (share == before && at.peak > standing.nearest->peak)) {
        standing.nearest = at;
    }
    standing.any_rating = standing.any_rating || at.usable;
    if (!at.rated()) {
        add_name(standing.unrated, band);
    }
}

void conclude(VoltageStanding& standing) {
    const bool complete = standing.nearest && standing.unrated.empty() && standing.unknown.empty();
    standing.verdict = standing.nearest && standing.nearest->over() ? RatingVerdict::exceeded
                       : complete                                   ? RatingVerdict::within
                                                                    : RatingVerdict::not_established;
}

void add(VoltageStanding& standing, const KeyingBand& band) {
    const std::string where = band.band.empty() ? given_text(band.point.frequency) : band.band;
    if (band.verdict == KeyingVerdict::out_of_reach) {
        return;
    }
    if (!band.point.resonance) {
        add_name(standing.unknown, where);
        return;
    }
    add(standing,
        CarriedVoltage{where, band.voltage_peak.high, band.usable_voltage,
                       band.load && band.load->unrated_members, band.point.power, band.point.model},
        where);
}

/// The members that are plugged in at the row, as the row itself was computed.
bool unrated_members_of(const CardRow& row, const design::Design& design) {
    const std::string band = row.band.empty() ? loop::fitted_band(design.station, row.tuned()) : row.band;
    const auto limit = voltage_limit(row.point, design::on_band(design, band));
    return limit && limit->unrated_members;
}

void add(VoltageStanding& standing, const CardRow& row, const design::Design& design) {
    const std::string band = row.band.empty() ? given_text(row.radio) : row.band;
    const std::string where = band + (row.use.empty() ? "" : " " + row.use);
    if (!row.point.resonance) {
        add_name(standing.unknown, band);
        return;
    }
    if (row.reachable) {
        const loop::Resonance& r = *row.point.resonance;
        add(standing,
            CarriedVoltage{where, std::max(r.capacitor_voltage_peak, r.capacitor_voltage_peak_range.high),
                           row.usable_voltage, unrated_members_of(row, design), row.point.power,
                           row.point.model},
            band);
    }
}

} // namespace

const char* name_of(RatingVerdict verdict) noexcept {
    switch (verdict) {
    case RatingVerdict::within:
        return "within";
    case RatingVerdict::not_established:
        break;
    case RatingVerdict::exceeded:
        return "exceeded";
    }
    return "not_established";
}

VoltageStanding voltage_standing(const Keying& keying) {
    VoltageStanding standing;
    for (const KeyingBand& band : keying.bands) {
        add(standing, band);
    }
    conclude(standing);
    return standing;
}

VoltageStanding voltage_standing(const Keying& keying, const Card& card) {
    VoltageStanding standing;
    for (const CardRow& row : card.rows) {
        add(standing, row, card.request.design);
    }
    for (const KeyingBand& band : keying.bands) {
        const bool has_rows = std::any_of(card.rows.begin(), card.rows.end(),
                                          [&band](const CardRow& row) { return row.band == band.band; });
        if (!has_rows) {
            add(standing, band);
        }
    }
    conclude(standing);
    return standing;
}

VoltageStanding voltage_standing(const Survey& survey) {
    VoltageStanding standing;
    for (const BandRow& row : survey.bands) {
        if (!row.point.resonance) {
            add_name(standing.unknown, row.band.name);
        } else if (row.point.resonance->in_capacitor_range) {
            const loop::Resonance& r = *row.point.resonance;
            const auto limit = voltage_limit(row.point, survey.request.design);
            add(standing,
                CarriedVoltage{row.band.name,
                               std::max(r.capacitor_voltage_peak, r.capacitor_voltage_peak_range.high),
                               limit ? std::optional(limit->limit) : std::nullopt,
                               limit && limit->unrated_members, row.point.power, row.point.model},
                row.band.name);
        }
    }
    conclude(standing);
    return standing;
}

bool usable_voltage_varies(const design::Capacitor& capacitor) noexcept {
    return !capacitor.added.empty() || capacitor.rating.current.has_value();
}

} // namespace loopwright::survey
