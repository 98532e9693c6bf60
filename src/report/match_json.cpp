#include "coupling/mismatch.hpp"
#include "design/names.hpp"
#include "report/detail/json_parts.hpp"
#include "report/detail/size_words.hpp"
#include "report/match.hpp"
#include "report/words.hpp"

#include <cmath>
#include <optional>

namespace loopwright::report {
namespace {

using design::CouplingKind;
using detail::Json;
using detail::notices_of;
using detail::number_of;
using detail::si_of;
using detail::text_of;

Json complex(units::Impedance z) {
    return Json::array({number_of(z.value().real()), number_of(z.value().imag())});
}

void put_match(Json& object, const coupling::MatchReport& report) {
    const auto& match = report.match;
    const bool found = match.has_value();
    const double share = found ? coupling::accepted_share(match->vswr) : 0;
    object["tuning_capacitance_F"] = found ? number_of(match->tuning_capacitance.value()) : Json(nullptr);
    object["in_capacitor_range"] = found ? Json(report.in_capacitor_range) : Json(nullptr);
    object["input_impedance_ohm"] = found ? complex(match->input) : Json(nullptr);
    object["vswr"] = found ? number_of(match->vswr) : Json(nullptr);
    object["vswr_at_radio"] = found ? number_of(report.vswr_at_radio) : Json(nullptr);
    object["accepted_share"] = found ? number_of(share) : Json(nullptr);
    object["mismatch_loss_dB"] = found && share > 0 ? number_of(-10 * std::log10(share)) : Json(nullptr);
    object["coupling_loss_share"] = found ? number_of(match->own_loss_share) : Json(nullptr);
    object["efficiency"] = found ? number_of(report.efficiency) : Json(nullptr);
}

void put_line(Json& object, const coupling::MatchReport& report) {
    object["line_impedance_ohm"] = number_of(report.line.value());
    const auto& line = report.feed_line;
    object["feed_line_matched_loss_dB"] = line ? number_of(line->matched_loss.value) : Json(nullptr);
    object["feed_line_loss_dB"] = line ? number_of(line->total_loss.value) : Json(nullptr);
    const double loss_dB = line ? line->total_loss.value : 0;
    object["radio_power_W"] = report.match
                                  ? Json(number_of(report.alone.power.value() * std::pow(10.0, loss_dB / 10)))
                                  : Json(nullptr);
}

void put_alone(Json& object, const coupling::MatchReport& report) {
    const auto& own = report.alone.resonance;
    object["resonance_capacitance_F"] = own ? number_of(own->tuning_capacitance.value()) : Json(nullptr);
    object["capacitor_voltage_peak_V"] = own ? number_of(own->capacitor_voltage_peak.value()) : Json(nullptr);
}

Json curve_of(const coupling::MatchReport& report) {
    Json rows = Json::array();
    for (const coupling::CurveRow& row : report.curve) {
        rows.push_back({{"frequency_Hz", number_of(row.point.frequency.value())},
                        {"input_impedance_ohm", complex(row.point.input)},
                        {"vswr", number_of(row.point.vswr)},
                        {"vswr_at_radio", number_of(row.vswr_at_radio)}});
    }
    return rows;
}

Json mistuning_of(const coupling::MatchReport& report) {
    Json rows = Json::array();
    for (const coupling::MistuningRow& row : report.mistuning) {
        const double offset = row.point.offset.value();
        rows.push_back(
            {{"capacitance_offset_F", number_of(offset)},
             {"capacitance_offset_share", number_of(offset / report.match->tuning_capacitance.value())},
             {"input_impedance_ohm", complex(row.point.input)},
             {"vswr", number_of(row.point.vswr)},
             {"vswr_at_radio", number_of(row.vswr_at_radio)},
             {"accepted_share", number_of(row.point.accepted_share)},
             {"radiated_power_dB", number_of(row.point.radiated_power.value)}});
    }
    return rows;
}

/// Every kind's key stands there; those of the other kinds are null.
void put_size(Json& object, const std::string& prefix, CouplingKind kind, std::optional<double> size) {
    for (const CouplingKind each : {CouplingKind::loop, CouplingKind::tap, CouplingKind::transformer}) {
        Json& out = object[prefix + detail::size_words(each).key];
        if (each == kind && size) {
            out = kind == CouplingKind::transformer ? Json(std::lround(*size)) : Json(number_of(*size));
        }
    }
}

void put_matched(Json& object, const std::string& prefix, const std::optional<coupling::Match>& match) {
    object[prefix + "vswr"] = match ? number_of(match->vswr) : Json(nullptr);
    object[prefix + "tuning_capacitance_F"] =
        match ? number_of(match->tuning_capacitance.value()) : Json(nullptr);
    object[prefix + "input_impedance_ohm"] = match ? complex(match->input) : Json(nullptr);
}

/// What the sizes were looked for with; null where the kind has no such part.
void put_kept(Json& object, const design::Coupling& kept) {
    const bool loop = kept.kind == CouplingKind::loop, tap = kept.kind == CouplingKind::tap;
    const bool transformer = kept.kind == CouplingKind::transformer;
    const auto put = [&object](const char* key, bool applies, double value) {
        object[key] = applies ? Json(number_of(value)) : Json(nullptr);
    };
    put("conductor_diameter_m", loop || tap, kept.conductor_diameter.value.value());
    put("axis_offset_m", loop, kept.axis_offset.value.value());
    put("tap_spacing_m", tap, kept.tap_spacing.value.value());
    put("series_capacitor_F", tap && kept.series_capacitor,
        kept.series_capacitor ? kept.series_capacitor->value.value() : 0);
    put("turn_inductance_H", transformer, kept.turn_inductance.value.value());
    put("core_q", transformer, kept.core_q);
    put("leakage_share", transformer, kept.leakage_share);
}

} // namespace

std::string match_json(const coupling::MatchReport& report, const design::Design& design) {
    Json object;
    object["schema"] = "loopwright-match-1";
    object["title"] = design.title;
    object["model"] = name_of(report.alone.model);
    object["coupling"] = design.coupling ? Json(design::name_of(design.coupling->kind)) : Json(nullptr);
    object["frequency_Hz"] = number_of(report.alone.frequency.value());
    object["power_W"] = number_of(report.alone.power.value());
    put_match(object, report);
    put_line(object, report);
    object["bandwidth_vswr_Hz"] = si_of(report.bandwidth);
    object["vswr_limit"] = number_of(report.alone.vswr_limit);
    put_alone(object, report);
    object["curve"] = curve_of(report);
    object["mistuning"] = mistuning_of(report);
    object["notices"] = notices_of(report.notices);
    return text_of(object);
}

std::string coupling_sizes_json(const NamedSizes& named, const design::Design& design) {
    const coupling::FeedSize& sizes = named.sizes;
    Json object;
    object["schema"] = "loopwright-coupling-sizes-1";
    object["title"] = design.title;
    object["model"] = name_of(loop::Model::full_wave);
    object["coupling"] = design::name_of(sizes.kind);
    object["line_impedance_ohm"] = number_of(named.line.value());
    put_kept(object, *design.coupling);
    put_size(object, "common_", sizes.kind, sizes.size);
    object["common_worst_vswr"] = sizes.size ? number_of(sizes.worst_vswr) : Json(nullptr);
    Json rows = Json::array();
    for (std::size_t i = 0; i < sizes.rows.size(); ++i) {
        const coupling::FeedSizeRow& row = sizes.rows[i];
        Json& out = rows.emplace_back();
        const std::string& band = named.bands.at(i);
        out["band"] = band.empty() ? Json(nullptr) : Json(band);
        out["frequency_Hz"] = number_of(row.frequency.value());
        out["in_capacitor_range"] = row.best ? Json(row.in_capacitor_range) : Json(nullptr);
        put_size(out, "best_", sizes.kind, row.best ? std::optional(row.best->size) : std::nullopt);
        put_matched(out, "best_", row.best ? std::optional(row.best->match) : std::nullopt);
        put_size(out, "common_", sizes.kind, row.match ? sizes.size : std::nullopt);
        put_matched(out, "common_", row.match);
    }
    object["rows"] = std::move(rows);
    object["notices"] = notices_of(sizes.notices);
    return text_of(object);
}

const std::vector<KeyMeaning>& match_keys() {
    static const std::vector<KeyMeaning> keys = {
        {"title", "of the design"},
        {"model",
         "`full-wave`: the closed form knows no coupling. Tap and transformer are circuits joined to it"},
        {"coupling", "`loop`, `tap` or `transformer`"},
        {"frequency_Hz", "asked for"},
        {"power_W", "accepted at the feed point"},
        {"tuning_capacitance_F", "of the least VSWR, stray included"},
        {"in_capacitor_range", "whether capacitor and stray reach it"},
        {"input_impedance_ohm", "at the feed point: array of resistance and reactance"},
        {"vswr", "at the feed point, on `line_impedance_ohm`"},
        {"vswr_at_radio", "at the radio's end of the feed line; equal to `vswr` where no feed line is given"},
        {"accepted_share", "of the power that comes along the line"},
        {"mismatch_loss_dB", "the same in decibels"},
        {"coupling_loss_share", "of the accepted power: heat in the coupling's own parts"},
        {"efficiency", "power to the sky over the power accepted at the feed point"},
        {"line_impedance_ohm", "of the feed line, without one 50"},
        {"feed_line_matched_loss_dB", "of the whole line, matched; null without a feed line"},
        {"feed_line_loss_dB", "with the extra loss of the standing wave; null without a feed line"},
        {"radio_power_W", "what the radio has to put into the line for `power_W` at the feed point"},
        {"bandwidth_vswr_Hz",
         "between the frequencies where the VSWR at the feed point reaches `vswr_limit`, "
         "the capacitor left; null where the match does not get below it"},
        {"vswr_limit", "the limit of that bandwidth"},
        {"resonance_capacitance_F", "of the loop without its coupling"},
        {"capacitor_voltage_peak_V", "at `power_W`, all of it in the loop"},
        {"curve", "array of objects `frequency_Hz`, `input_impedance_ohm`, `vswr`, `vswr_at_radio`: the "
                  "capacitor left, the frequency moved"},
        {"mistuning", "array of objects `capacitance_offset_F`, `capacitance_offset_share`, "
                      "`input_impedance_ohm`, `vswr`, `vswr_at_radio`, `accepted_share`, `radiated_power_dB` "
                      "(against the best setting): the frequency left, the capacitor moved"},
    };
    return keys;
}

const std::vector<KeyMeaning>& coupling_sizes_keys() {
    static const std::vector<KeyMeaning> keys = {
        {"title", "of the design"},
        {"model", "`full-wave`"},
        {"coupling", "`loop`, `tap` or `transformer`: the kind of the design, `loop` where it has none"},
        {"line_impedance_ohm", "of the design's feed line, without one 50: what is matched to"},
        {"conductor_diameter_m", "of the coupling loop or of the tap's rod, kept; else null"},
        {"axis_offset_m", "loop: between the two conductors' axes, kept; else null"},
        {"tap_spacing_m", "tap: between the axes of rod and conductor, kept; else null"},
        {"series_capacitor_F", "tap: between line and rod, kept; null where there is none"},
        {"turn_inductance_H", "transformer: of one turn on the core, kept; else null"},
        {"core_q", "transformer: kept; else null"},
        {"leakage_share", "transformer: kept; else null"},
        {"common_diameter_m", "loop: the one diameter with the least of the worst VSWR over the frequencies "
                              "that the capacitor reaches; else null"},
        {"common_tap_length_m", "tap: the same for its length along the conductor; else null"},
        {"common_turns", "transformer: the same for the turns of the line's winding; else null"},
        {"common_worst_vswr", "that VSWR"},
        {"rows",
         "array of objects `band` (null for a frequency asked for outside the bands), `frequency_Hz`, "
         "`in_capacitor_range`, and with `best_` and `common_` in front `diameter_m`, "
         "`tap_length_m`, `turns` (two of the three null), `vswr`, `tuning_capacitance_F`, "
         "`input_impedance_ohm`"},
    };
    return keys;
}

} // namespace loopwright::report
