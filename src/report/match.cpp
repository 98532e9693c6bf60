#include "report/match.hpp"

#include "coupling/mismatch.hpp"
#include "report/cautions.hpp"
#include "report/hazards.hpp"
#include "report/number.hpp"
#include "report/shown_units.hpp"
#include "report/words.hpp"
#include "survey/verdict.hpp"
#include "units/text.hpp"

namespace loopwright::report {
namespace {

std::string title_of(const design::Design& design) {
    return design.title.empty() ? "Loop without a title" : design.title;
}

std::string impedance_text(units::Impedance z) {
    const bool capacitive = z.value().imag() < 0;
    return significant(z.value().real(), 3) + (capacitive ? " - j" : " + j") +
           significant(std::abs(z.value().imag()), 3) + " ohm";
}

/// Beyond this a standing-wave ratio is no number to read.
std::string vswr_text(double vswr) {
    return vswr > 999 ? "over 999" : significant(vswr, 3);
}

using Rows = std::vector<std::vector<Cell>>;

void add_line_rows(Rows& rows, const coupling::MatchReport& report) {
    const std::string line = survey::given_text(report.line);
    if (!report.feed_line) {
        rows.push_back({"VSWR at the radio", vswr_text(report.vswr_at_radio) + " (no feed line given)"});
        return;
    }
    const double loss_dB = report.feed_line->total_loss.value;
    rows.push_back({"VSWR at the radio", vswr_text(report.vswr_at_radio)});
    rows.push_back(
        {"Loss of the feed line, matched", fixed(report.feed_line->matched_loss.value, 2) + " dB"});
    rows.push_back({"Loss of the feed line, with the standing wave", fixed(loss_dB, 2) + " dB"});
    rows.push_back({"Power the radio has to deliver for it",
                    units::shown(units::Power(report.alone.power * std::pow(10.0, loss_dB / 10)))});
}

Table match_table(const coupling::MatchReport& report) {
    const coupling::Match& match = *report.match;
    const loop::Resonance& own = *report.alone.resonance;
    Table table;
    table.columns = {{"quantity", "Quantity", ""}, {"value", "Value", ""}};
    Rows& rows = table.rows;
    rows.push_back({"Capacitance of least VSWR, stray included", units::shown(match.tuning_capacitance, 5)});
    rows.push_back({"Within the capacitor's range", report.in_capacitor_range});
    rows.push_back({"The loop's own resonance, without coupling", units::shown(own.tuning_capacitance, 5)});
    rows.push_back({"Input impedance at the feed point", impedance_text(match.input)});
    rows.push_back({"VSWR at the feed point, on " + survey::given_text(report.line), vswr_text(match.vswr)});
    add_line_rows(rows, report);
    rows.push_back({"Of the power on the line the loop takes",
                    significant(per_cent * coupling::accepted_share(match.vswr), 3) + " %"});
    rows.push_back(
        {"Heat in the coupling's own parts", significant(per_cent * match.own_loss_share, 2) + " %"});
    rows.push_back(
        {"Efficiency (to the sky), coupling included", significant(per_cent * report.efficiency, 3) + " %"});
    rows.push_back({"Bandwidth to VSWR " +
                        survey::given_text(report.alone.vswr_limit, units::Dimension::number) +
                        " at the feed point",
                    report.bandwidth ? units::shown(*report.bandwidth)
                                     : std::string("none: the match does not get below that")});
    return table;
}

Table curve_table(const coupling::MatchReport& report) {
    Table table;
    table.columns = {{"frequency_Hz", "Frequency", "MHz", mega, 6, 5},
                     {"resistance", "Resistance", "ohm"},
                     {"reactance", "Reactance", "ohm"},
                     {"vswr", "VSWR", ""}};
    if (report.feed_line) {
        table.columns.push_back({"vswr_at_radio", "VSWR at the radio", ""});
    }
    for (std::size_t i = 0; i < report.curve.size(); i += 2) {
        const coupling::CurveRow& row = report.curve[i];
        const auto z = row.point.input.value();
        table.rows.push_back({row.point.frequency.value(), z.real(), z.imag(), row.point.vswr});
        if (report.feed_line) {
            table.rows.back().emplace_back(row.vswr_at_radio);
        }
    }
    return table;
}

Table mistuning_table(const coupling::MatchReport& report) {
    Table table;
    table.columns = {{"offset", "Capacitor off by", "pF", pico},
                     {"offset_share", "or", "%", per_cent},
                     {"vswr", "VSWR", ""},
                     {"accepted", "Power taken", "%", per_cent},
                     {"radiated", "Radiated power", "dB", 1, 3, 2}};
    if (report.feed_line) {
        table.columns.push_back({"vswr_at_radio", "VSWR at the radio", ""});
    }
    const double whole_F = report.match->tuning_capacitance.value();
    for (const coupling::MistuningRow& row : report.mistuning) {
        const double offset_F = row.point.offset.value();
        table.rows.push_back({offset_F, offset_F / whole_F, row.point.vswr, row.point.accepted_share,
                              row.point.radiated_power.value});
        if (report.feed_line) {
            table.rows.back().emplace_back(row.vswr_at_radio);
        }
    }
    return table;
}

Page start(const design::Design& design, const std::string& subtitle) {
    Page page;
    page.title = title_of(design);
    page.subtitle = subtitle + ", model " + name_of(loop::Model::full_wave);
    return page;
}

} // namespace

Page match_page(const coupling::MatchReport& report, const design::Design& design) {
    const std::string where = survey::given_text(report.alone.frequency);
    Page page = start(design, "Match at " + where + ", " + survey::given_text(report.alone.power) +
                                  " accepted (peak envelope power)");
    page.sections.push_back({"hazards", "Hazards", hazards(report.alone, design), std::nullopt});
    Section match{"match", "Match", {}, std::nullopt};
    if (!report.match) {
        match.sentences.push_back({"not_established", "No match is established here; the reason stands under "
                                                      "Assumptions."});
        page.sections.push_back(std::move(match));
    } else {
        match.table = match_table(report);
        page.sections.push_back(std::move(match));
        page.sections.push_back({"curve", "Around the match, the capacitor left", {}, curve_table(report)});
        page.sections.push_back(
            {"mistuning", "The capacitor off its best setting, at " + where, {}, mistuning_table(report)});
    }
    page.sections.push_back(
        {"assumptions", "Assumptions", assumptions(report.alone.model, report.notices), std::nullopt});
    page.sections.push_back({"cautions", "Cautions", cautions(), std::nullopt});
    return page;
}

Table match_curve_data(const coupling::MatchReport& report) {
    Table table;
    for (const char* key : {"frequency_Hz", "input_resistance_ohm", "input_reactance_ohm", "vswr",
                            "vswr_at_radio", "tuning_capacitance_F"}) {
        table.columns.push_back({key, key, ""});
    }
    for (const coupling::CurveRow& row : report.curve) {
        const auto z = row.point.input.value();
        table.rows.push_back({row.point.frequency.value(), z.real(), z.imag(), row.point.vswr,
                              row.vswr_at_radio, report.match->tuning_capacitance.value()});
    }
    return table;
}

} // namespace loopwright::report
