#include "survey/card.hpp"

#include "base/error.hpp"
#include "design/on_band.hpp"
#include "design/validation.hpp"
#include "loop/fitted_capacitor.hpp"
#include "loop/loop_model.hpp"
#include "survey/detail/card_band.hpp"
#include "survey/detail/card_remarks.hpp"
#include "survey/detail/parallel.hpp"
#include "survey/survey.hpp"
#include "tuning/calibration_report.hpp"
#include "tuning/design_dial.hpp"

#include <algorithm>
#include <map>
#include <memory>
#include <utility>

namespace loopwright::survey {
namespace {

using band::Emission;

Emission emission_named(const std::string& id) {
    const auto emission = band::find_emission(id);
    if (!emission) {
        throw base::InputError("station.emission", id, "the id of an emission");
    }
    return *emission;
}

/// Without what an emission's name says behind a comma.
std::string short_name(const Emission& emission) {
    return emission.name.substr(0, emission.name.find(','));
}

/// A row with its place and nothing computed; the frequency it is tuned to stands in its point.
CardRow placed(const band::WorkingFrequency& customary) {
    CardRow row;
    row.band = customary.band;
    row.emission = emission_named(customary.emission);
    row.use = short_name(row.emission);
    row.radio = customary.dial;
    row.sideband = customary.sideband;
    row.status = customary.status;
    row.point.frequency = customary.tuned;
    return row;
}

std::string band_holding(int region, units::Frequency frequency) {
    for (const band::Band& band : band::bands_of(region)) {
        if (frequency >= band.low && frequency <= band.high) {
            return band.name;
        }
    }
    return "";
}

CardRow placed(int region, units::Frequency radio, const Emission& emission) {
    CardRow row;
    row.band = band_holding(region, radio);
    row.use = short_name(emission);
    row.own = true;
    row.emission = emission;
    row.radio = radio;
    row.sideband = band::sideband_of(emission, radio);
    row.point.frequency = band::tuned_for(emission, row.sideband, radio);
    return row;
}

std::vector<CardRow> places_of(const design::Design& design) {
    const design::Station& station = design.station;
    std::vector<CardRow> rows;
    for (const band::Band& band : planned_bands(design)) {
        for (const band::WorkingFrequency& each : band::working_frequencies(station.region, band.name)) {
            rows.push_back(placed(each));
        }
    }
    for (const design::WorkingFrequency& own : station.working_frequencies) {
        rows.push_back(placed(station.region, own.frequency.value, emission_named(station.emission)));
        rows.back().use = own.use.empty() ? "own" : own.use;
    }
    std::stable_sort(rows.begin(), rows.end(),
                     [](const CardRow& a, const CardRow& b) { return a.tuned() < b.tuned(); });
    return rows;
}

/// The bands of the rows, each with what its rows share; models of equal capacitors are one.
class Bands {
public:
    Bands(const CardRequest& request, loop::Workload workload) : request_(request), workload_(workload) {}

    detail::CardBand& of(const CardRow& row) {
        const std::string key = row.band.empty() ? std::to_string(row.tuned().value()) : row.band;
        const auto found = bands_.find(key);
        return found != bands_.end() ? found->second : bands_.emplace(key, made(row)).first->second;
    }
    std::vector<detail::CardBand*> all() {
        std::vector<detail::CardBand*> pointers;
        for (auto& [name, band] : bands_) {
            pointers.push_back(&band);
        }
        return pointers;
    }

private:
    detail::CardBand made(const CardRow& row) {
        const design::Station& station = request_.design.station;
        const std::string fitted = row.band.empty() ? loop::fitted_band(station, row.tuned()) : row.band;
        detail::CardBand band(design::on_band(request_.design, fitted));
        const auto& added = request_.design.capacitor.added;
        for (std::size_t i = 0; i < added.size(); ++i) {
            if (design::is_there(added[i], fitted)) {
                band.plugged.push_back(i);
            }
        }
        std::shared_ptr<const loop::LoopModel>& model = models_[band.plugged];
        if (!model) {
            model = loop::make_model(band.there, loop::Model::full_wave, workload_);
        }
        band.model = model;
        const auto named = band::find_band(station.region, row.band);
        band.edges = named ? units::Interval<units::Frequency>{named->low, named->high}
                           : units::Interval<units::Frequency>{row.tuned() * 0.995, row.tuned() * 1.005};
        return band;
    }
    const CardRequest& request_;
    loop::Workload workload_;
    std::map<std::string, detail::CardBand> bands_;
    std::map<std::vector<std::size_t>, std::shared_ptr<const loop::LoopModel>> models_;
};

/// Nothing without a dial, and where the model stands behind too few frequencies for a curve.
std::optional<tuning::CalibratedDial> dials_of(const design::Design& design) {
    if (!design.capacitor.dial) {
        return std::nullopt;
    }
    try {
        return tuning::calibrated_dial(design);
    } catch (const base::InputError&) {
        return std::nullopt; // the design itself was accepted before
    }
}

/// For one frequency: the curve has to reach it too.
std::optional<tuning::CalibratedDial> dials_of(design::Design design, units::Frequency frequency) {
    if (frequency > units::megahertz(1) && frequency < units::megahertz(60)) {
        design.station.working_frequencies.push_back({frequency, ""});
    }
    return dials_of(design);
}

} // namespace

const char* name_of(CardRemarkKind kind) noexcept {
    switch (kind) {
    case CardRemarkKind::not_established:
        return "not_established";
    case CardRemarkKind::out_of_reach:
        return "out_of_reach";
    case CardRemarkKind::edge_of_range:
        return "edge_of_range";
    case CardRemarkKind::voltage_exceeded:
        return "voltage_exceeded";
    case CardRemarkKind::drive_too_coarse:
        return "drive_too_coarse";
    case CardRemarkKind::narrow:
        return "narrow";
    case CardRemarkKind::whole_band:
        return "whole_band";
    case CardRemarkKind::digital_segment:
        return "digital_segment";
    case CardRemarkKind::shared:
        break;
    }
    return "shared";
}

Card card(const CardRequest& request, const base::StopToken& stop, const base::Progress& progress) {
    design::require_valid(request.design);
    Card card;
    card.request = request;
    std::vector<CardRow> rows = places_of(request.design);
    Bands bands(request, loop::Workload::many_frequencies);
    std::vector<detail::CardBand*> band_of;
    for (const CardRow& row : rows) {
        band_of.push_back(&bands.of(row));
    }
    const std::vector<detail::CardBand*> all = bands.all();
    const auto dials = dials_of(request.design);
    detail::Counter counter(rows.size() + all.size(), progress);
    detail::for_each_index(all.size(), stop, [&](std::size_t i) {
        all[i]->solve_edges(request);
        counter.one_done();
    });
    std::vector<std::optional<CardRow>> done(rows.size());
    detail::for_each_index(rows.size(), stop, [&](std::size_t i) {
        CardRow row = rows[i];
        band_of[i]->fill(row, request, dials ? &*dials : nullptr);
        done[i] = std::move(row);
        counter.one_done();
    });
    card.rows = detail::filled(std::move(done));
    card.complete = card.rows.size() == rows.size() && !stop.stop_requested();
    for (CardRow& row : card.rows) {
        if (row.shortfall && !row.band.empty()) {
            bands.of(row).fill_shortfall(row, detail::needs_of(row.band, card.rows));
        }
        detail::compare_with_others(row, card.rows);
        row.remarks = detail::card_remarks(row, bands.of(row).there);
    }
    if (dials && card.complete) {
        card.next = tuning::next_points_of(*dials, request.design);
    }
    return card;
}

CardRow card_row(const CardRequest& request, units::Frequency radio,
                 const std::optional<band::Emission>& emission) {
    design::require_valid(request.design);
    CardRow row = placed(request.design.station.region, radio, emission.value_or(emission_named("carrier")));
    Bands bands(request, loop::Workload::few_frequencies);
    detail::CardBand& band = bands.of(row);
    band.solve_edges(request);
    const auto dials = dials_of(request.design, row.tuned());
    band.fill(row, request, dials ? &*dials : nullptr);
    row.remarks = detail::card_remarks(row, band.there);
    return row;
}

const CardRow* highest_voltage(const Card& card) {
    const CardRow* highest = nullptr;
    const auto peak = [](const CardRow& row) {
        const loop::Resonance& r = *row.point.resonance;
        return std::max(r.capacitor_voltage_peak, r.capacitor_voltage_peak_range.high);
    };
    for (const CardRow& row : card.rows) {
        if (row.reachable && (highest == nullptr || peak(row) > peak(*highest))) {
            highest = &row;
        }
    }
    return highest;
}

} // namespace loopwright::survey
