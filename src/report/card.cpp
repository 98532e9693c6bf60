#include "report/card.hpp"

#include "report/card_fields.hpp"
#include "report/cautions.hpp"
#include "report/hazards.hpp"
#include "report/number.hpp"
#include "report/shown_units.hpp"
#include "report/words.hpp"
#include "survey/card_safety.hpp"
#include "survey/verdict.hpp"
#include "tuning/calibration_report.hpp"
#include "units/text.hpp"

#include <algorithm>
#include <cmath>
#include <utility>

namespace loopwright::report {
namespace {

std::string joined(const std::vector<std::string>& words, const char* between) {
    std::string all;
    for (const std::string& word : words) {
        all += (all.empty() ? "" : between) + word;
    }
    return all;
}

Cell number_or_nothing(const std::optional<tuning::Reading>& dial, double (*get)(const tuning::Reading&)) {
    return dial ? Cell(get(*dial)) : Cell();
}

double reading_of(const tuning::Reading& r) {
    return r.reading;
}
double doubt_of(const tuning::Reading& r) {
    return r.uncertainty();
}
double per_kHz_of(const tuning::Reading& r) {
    return r.per_Hz * 1e3;
}

std::vector<Column> board_columns(const survey::Card& card, bool calibrated) {
    const auto& dial = card.request.design.capacitor.dial;
    const int decimals = dial ? dial_decimals(*dial) : 1;
    std::vector<Column> columns;
    columns.push_back({"band", "Band", ""});
    columns.push_back({"use", "Use", ""});
    columns.push_back({"radio_frequency_Hz", "Radio shows", "kHz", kilo, 6, 1});
    columns.push_back({"frequency_Hz", "Loop tuned to", "kHz", kilo, 6, 1});
    columns.push_back({"tuning_capacitance_F", "Capacitance", "pF", pico, 4, 1});
    if (calibrated) {
        columns.push_back({"dial_calibrated", "Dial calibrated", "", 1, 3, decimals});
        columns.push_back({"dial_calibrated_uncertainty", "give or take", "", 1, 2, decimals});
    }
    if (dial) {
        columns.push_back({"dial_predicted", "Dial predicted", "", 1, 3, decimals});
        columns.push_back({"dial_predicted_uncertainty", "give or take", "", 1, 2, decimals});
        columns.push_back({"dial_per_kHz", "Dial per kHz", "", 1, 2});
    }
    columns.push_back({"usable_span_Hz", "Usable span", "kHz", kilo, 3});
    columns.push_back({"capacitor_voltage_peak_V_high", "Capacitor peak", "V", 1, 3});
    columns.push_back({"plugged", "Plugged", ""});
    return columns;
}

/// Unfavourable end, marked where it is over what the capacitor stands.
Cell peak_cell(const survey::CardRow& row) {
    const loop::Resonance& r = *row.point.resonance;
    const double high_V = std::max(r.capacitor_voltage_peak, r.capacitor_voltage_peak_range.high).value();
    const bool over =
        std::any_of(row.remarks.begin(), row.remarks.end(), [](const survey::CardRemark& remark) {
            return remark.kind == survey::CardRemarkKind::voltage_exceeded;
        });
    return over ? Cell("\u25B2" + significant(high_V, 3)) : Cell(high_V);
}

std::vector<Cell> board_row(const survey::CardRow& row, bool dial, bool calibrated) {
    const bool reached = row.reachable && row.point.resonance;
    std::vector<Cell> cells;
    cells.emplace_back(row.band.empty() ? std::string("-") : row.band);
    cells.emplace_back(row.use);
    cells.emplace_back(row.radio.value());
    cells.emplace_back(row.tuned().value());
    cells.push_back(row.point.resonance ? Cell(row.point.resonance->tuning_capacitance.value()) : Cell());
    if (calibrated) {
        cells.push_back(number_or_nothing(row.calibrated, reading_of));
        cells.push_back(number_or_nothing(row.calibrated, doubt_of));
    }
    if (dial) {
        cells.push_back(number_or_nothing(row.predicted, reading_of));
        cells.push_back(number_or_nothing(row.predicted, doubt_of));
        cells.push_back(number_or_nothing(row.dial(), per_kHz_of));
    }
    cells.push_back(reached && row.usable_span ? Cell(row.usable_span_low()->value()) : Cell());
    cells.push_back(reached ? peak_cell(row) : Cell());
    cells.emplace_back(plugged_of(row));
    return cells;
}

bool any_calibrated(const survey::Card& card) {
    return std::any_of(card.rows.begin(), card.rows.end(),
                       [](const survey::CardRow& row) { return row.calibrated.has_value(); });
}

Table board(const survey::Card& card) {
    const bool calibrated = any_calibrated(card);
    Table table;
    table.columns = board_columns(card, calibrated);
    for (const survey::CardRow& row : card.rows) {
        table.rows.push_back(board_row(row, card.request.design.capacitor.dial.has_value(), calibrated));
    }
    return table;
}

/// One sentence for all rows of a band that say the same.
std::vector<Sentence> remarks_of(const survey::Card& card) {
    std::vector<Sentence> all;
    std::vector<std::pair<std::string, std::vector<std::string>>> uses; // by band and text, in order
    for (const survey::CardRow& row : card.rows) {
        for (const survey::CardRemark& remark : row.remarks) {
            const std::string where = row.band.empty() ? survey::given_text(row.radio) : row.band;
            const std::string text = where + "\n" + with_plain_blanks(remark.text);
            const auto found =
                std::find_if(uses.begin(), uses.end(), [&](const auto& each) { return each.first == text; });
            if (found == uses.end()) {
                uses.push_back({text, {row.use}});
                all.push_back({std::string("card_") + survey::name_of(remark.kind), ""});
            } else {
                found->second.push_back(row.use);
            }
        }
    }
    for (std::size_t i = 0; i < all.size(); ++i) {
        const std::size_t end = uses[i].first.find('\n');
        all[i].text = uses[i].first.substr(0, end) + " " + joined(uses[i].second, ", ") + ": " +
                      uses[i].first.substr(end + 1) + ".";
    }
    return all;
}

std::vector<Sentence> how_to_read(const survey::Card& card) {
    const design::Design& design = card.request.design;
    std::vector<Sentence> all;
    all.push_back(
        {"card_audio_offset",
         "The loop is tuned to the middle of the audio passband: for digital emissions 1.5 kHz above "
         "what the radio shows, in lower sideband as far below it."});
    all.push_back(
        {"card_span", "Usable span: between the two frequencies where the matched loop reaches VSWR " +
                          survey::given_text(card.request.vswr_limit, units::Dimension::number) +
                          ", half of it to either side; the signal has to fit in with its width. "
                          "Remarks hold the lower end of its interval."});
    if (!design.capacitor.dial) {
        all.push_back(
            {"card_without_dial", "The design has no dial: no readings. Enter its law, scale and stops."});
    } else if (!any_calibrated(card)) {
        all.push_back({"card_predicted", "Readings follow from the design and the model alone: calibrate. " +
                                             tuning::wide_interval_text()});
    }
    if (const std::string next = tuning::next_point_text(card.next); !next.empty()) {
        all.push_back({"card_next_point", with_plain_blanks(next)});
    }
    if (design.capacitor.dial && design.capacitor.dial->backlash > 0) {
        all.push_back(
            {"card_backlash", "The drive loses " + significant(design.capacitor.dial->backlash, 2) +
                                  " of reading when turned round: come from the same side always."});
    }
    for (std::size_t i = 0; i < design.capacitor.added.size(); ++i) {
        const design::AddedCapacitor& each = design.capacitor.added[i];
        const std::string where = each.bands.empty() ? "always there" : "on " + joined(each.bands, ", ");
        all.push_back(
            {"card_fixed_capacitor",
             "C" + std::to_string(i + 1) + ": " + survey::given_text(each.capacitance.value) +
                 (each.connection == design::AddedConnection::parallel ? " in parallel, " : " in series, ") +
                 where + (each.note.empty() ? "." : " (" + each.note + ").")});
    }
    all.push_back({"card_surroundings", "A hand or a body near the loop is not in the figures."});
    return all;
}

std::string title_of(const design::Design& design) {
    return design.title.empty() ? "Loop without a title" : design.title;
}

std::string subtitle_of(const survey::CardRequest& request, const char* what) {
    return std::string(what) + ": ITU region " + std::to_string(request.design.station.region) + ", " +
           with_plain_blanks(survey::given_text(request.design.station.power.value)) +
           " accepted (peak envelope power), model " + name_of(loop::Model::full_wave);
}

std::string down(units::Power power) {
    const double step = std::pow(10.0, std::floor(std::log10(power.value())) - 1);
    return units::shown(units::watts(std::floor(power.value() / step + 1e-9) * step), 2);
}

} // namespace

int dial_decimals(const design::Dial& dial) {
    const double step = dial.hand_step / dial.reduction;
    const int wanted = step > 0 ? static_cast<int>(std::ceil(-std::log10(step) - 1e-9)) : 1;
    return std::clamp(wanted, 1, 4);
}

std::string plugged_of(const survey::CardRow& row) {
    std::string all;
    for (const std::size_t index : row.plugged) {
        all += (all.empty() ? "C" : " C") + std::to_string(index + 1);
    }
    return all.empty() ? "-" : all;
}

std::vector<Sentence> tuning_order(const survey::Keying& keying) {
    const survey::CardSafety safety = survey::safety_of(keying);
    std::vector<Sentence> all;
    if (!safety.reach) {
        all.push_back({"tuning_power_no_reach", "Greatest tune-up power: not established; enter the reach of "
                                                "the tuning operator."});
    } else if (!safety.tuning_power) {
        all.push_back({"tuning_power_not_established",
                       "Greatest tune-up power: not established here; treat the loop as hazardous."});
    } else if (!(safety.tuning_power->value() > 0)) {
        all.push_back({"tuning_power_none",
                       "Greatest tune-up power with the body " + survey::given_text(*safety.reach) +
                           " from the capacitor: none. At this reach tune by the received "
                           "noise only, or lengthen the drive."});
    } else {
        all.push_back({"tuning_power", "Greatest tune-up power with the body " +
                                           survey::given_text(*safety.reach) +
                                           " from the capacitor: " + down(*safety.tuning_power) +
                                           ", least of all bands, by the strictest public limit chosen."});
    }
    all.push_back({"tuning_order",
                   "Order: set the dial; peak the received noise, transmitter off; then the "
                   "lowest power that shows a reading, keyed for seconds only; step back before "
                   "full power (common practice, no source)."});
    return all;
}

Table card_data(const survey::Card& card) {
    Table table;
    for (const CardField& field : card_fields()) {
        table.columns.push_back({field.path, field.path, ""});
    }
    table.columns.push_back({"plugged", "plugged", ""});
    table.columns.push_back({"without_retuning", "without_retuning", ""});
    for (const survey::CardRow& row : card.rows) {
        std::vector<Cell> cells;
        for (const CardField& field : card_fields()) {
            cells.push_back(field.value(row));
        }
        cells.push_back(row.plugged.empty() ? Cell() : Cell(plugged_of(row)));
        cells.push_back(row.shared_with.empty() ? Cell() : Cell(joined(row.shared_with, " ")));
        table.rows.push_back(std::move(cells));
    }
    return table;
}

Page card_page(const survey::Card& card, const survey::Keying& keying) {
    Page page;
    page.title = title_of(card.request.design);
    page.subtitle = subtitle_of(card.request, "Retune card");
    page.sections.push_back({"hazards", "Hazards", keying_hazards(keying, &card), std::nullopt});
    page.sections.push_back({"tuning", "Tuning on the air", tuning_order(keying), std::nullopt});
    page.sections.push_back({"card", "Card", {}, board(card)});
    if (auto remarks = remarks_of(card); !remarks.empty()) {
        page.sections.push_back({"remarks", "Remarks", std::move(remarks), std::nullopt});
    }
    page.sections.push_back({"reading", "How to read it", how_to_read(card), std::nullopt});
    base::Notices notices;
    for (const survey::CardRow& row : card.rows) {
        notices.merge(row.point.notices);
    }
    page.sections.push_back(
        {"assumptions", "Assumptions", assumptions(loop::Model::full_wave, notices), std::nullopt});
    page.sections.push_back({"cautions", "Cautions", cautions(true), std::nullopt});
    return page;
}

Page card_row_page(const survey::CardRow& row, const survey::CardRequest& request) {
    survey::Card card;
    card.request = request;
    card.rows.push_back(row);
    Page page;
    page.title = title_of(request.design);
    page.subtitle = subtitle_of(request, "Dial");
    page.sections.push_back({"hazards", "Hazards", hazards(row.point, request.design), std::nullopt});
    page.sections.push_back({"card", "Dial", remarks_of(card), board(card)});
    page.sections.push_back({"reading", "How to read it", how_to_read(card), std::nullopt});
    page.sections.push_back({"cautions", "Cautions", cautions(false), std::nullopt});
    return page;
}

} // namespace loopwright::report
