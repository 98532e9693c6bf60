#include "report/calibration.hpp"

#include "design/names.hpp"
#include "report/cautions.hpp"
#include "report/number.hpp"
#include "report/shown_units.hpp"
#include "report/words.hpp"
#include "survey/verdict.hpp"
#include "units/text.hpp"

#include <algorithm>
#include <cmath>

namespace loopwright::report {
namespace {

Table points_table(const tuning::CalibrationReport& report) {
    Table table;
    table.columns = {{"reading", "Reading", "", 1, 3, 2},
                     {"frequency_Hz", "Resonance", "MHz", mega, 6, 4},
                     {"expected", "The others say", "", 1, 3, 2},
                     {"off_Hz", "Off by", "kHz", kilo, 2},
                     {"used", "Used", ""},
                     {"reason", "Why", ""}};
    for (const tuning::JudgedPoint& point : report.dial.points()) {
        std::vector<Cell> row(table.columns.size());
        row[0] = point.point.reading;
        row[1] = point.point.frequency.value.value();
        if (!point.outside_model) {
            row[2] = point.expected_reading;
            row[3] = point.off.value();
        }
        row[4] = point.used;
        if (point.doubtful()) {
            row[4] = std::string("doubtful");
        }
        row[5] = with_plain_blanks(point.reason);
        table.rows.push_back(std::move(row));
    }
    return table;
}

/// What stands behind ±: no end of the interval lies farther off.
double wider_side(double reading, const units::Interval<double>& range) {
    return std::max(range.high - reading, reading - range.low);
}

/// A reading and its ±, or nothing twice.
void add_figure(std::vector<Cell>& cells, const std::optional<tuning::DialFigure>& figure) {
    cells.push_back(figure ? Cell(figure->reading) : Cell());
    cells.push_back(figure ? Cell(wider_side(figure->reading, figure->range)) : Cell());
}

/// Without a point that counts there is no calibrated dial to show beside the predicted one.
Table dial_table(const tuning::CalibrationReport& report) {
    const bool calibrated = report.dial.used_points() > 0;
    Table table;
    table.columns.push_back({"band", "Band", ""});
    table.columns.push_back({"frequency_Hz", "Frequency", "MHz", mega, 6, 4});
    table.columns.push_back({"predicted", "Predicted dial", "", 1, 3, 2});
    table.columns.push_back({"predicted_half", "±", "", 1, 2});
    if (calibrated) {
        table.columns.push_back({"dial", "Calibrated dial", "", 1, 3, 2});
        table.columns.push_back({"dial_half", "±", "", 1, 2});
    }
    table.columns.push_back({"off_kHz", "Resonance within", "± kHz", kilo, 2});
    table.columns.push_back({"within", "Between the stops", ""});
    for (const tuning::CalibrationRow& row : report.rows) {
        std::vector<Cell> cells;
        cells.emplace_back(row.band);
        cells.emplace_back(row.frequency.value());
        add_figure(cells, row.predicted);
        if (calibrated) {
            add_figure(cells, row.calibrated);
        }
        const auto& figure = row.calibrated;
        cells.push_back(figure ? Cell(std::max(figure->frequency_range.high - row.frequency,
                                               row.frequency - figure->frequency_range.low)
                                          .value())
                               : Cell());
        cells.push_back(figure ? Cell(figure->within_stops) : Cell());
        table.rows.push_back(std::move(cells));
    }
    return table;
}

std::string value_text(const tuning::FittedPart& part, double value) {
    const bool farads = part.kind == tuning::PartKind::stray || part.kind == tuning::PartKind::fixed;
    return farads ? significant(value * pico, 3) + " pF" : significant(value, 3);
}

Table hardware_table(const tuning::CalibrationReport& report) {
    Table table;
    table.columns = {{"name", "Hardware", ""},
                     {"assumed", "Assumed", ""},
                     {"value", "Fitted", ""},
                     {"range", "95 %", ""},
                     {"told", "The points", ""}};
    for (const tuning::FittedPart& part : report.dial.parts()) {
        std::vector<Cell> row(table.columns.size());
        row[0] = with_plain_blanks(part.name);
        row[1] = value_text(part, part.assumed);
        row[2] = value_text(part, part.value);
        row[3] = value_text(part, part.range.low) + " to " + value_text(part, part.range.high);
        row[4] = std::string(part.told ? "tell it" : "say little of it");
        table.rows.push_back(std::move(row));
    }
    return table;
}

Section dial_section(const tuning::CalibrationReport& report, const design::Design& design) {
    Section section{"dial", "The dial", {}, dial_table(report)};
    const std::string scale =
        design.capacitor.dial ? std::string(design::name_of(design.capacitor.dial->scale)) : "marks";
    section.sentences.push_back(
        {"scale", "Readings in " + scale + ". The truth lies within ± with a probability of 95 %."});
    if (const std::string next = tuning::next_point_text(report.next); !next.empty()) {
        section.sentences.push_back({"next_point", with_plain_blanks(next)});
    }
    return section;
}

std::string subtitle(const tuning::CalibrationReport& report, const design::Design& design) {
    const std::size_t points = report.dial.points().size();
    std::string text = "Calibration of the dial, " + std::to_string(report.dial.used_points()) + " of " +
                       std::to_string(points) + (points == 1 ? " point" : " points") + " used";
    const auto& judged = report.dial.points();
    if (const auto doubtful = std::count_if(judged.begin(), judged.end(),
                                            [](const tuning::JudgedPoint& one) { return one.doubtful(); })) {
        text += ", " + std::to_string(doubtful) + " of them doubtful";
    }
    if (design.calibration && !design.calibration->date.empty()) {
        text += ", measured " + design.calibration->date;
    }
    return text + ", model " + name_of(loop::Model::full_wave);
}

} // namespace

Page calibration_page(const tuning::CalibrationReport& report, const design::Design& design) {
    Page page;
    page.title = design.title.empty() ? "Loop without a title" : design.title;
    page.subtitle = subtitle(report, design);
    if (!report.dial.points().empty()) {
        page.sections.push_back({"points", "Points", {}, points_table(report)});
    }
    page.sections.push_back(dial_section(report, design));
    page.sections.push_back({"hardware", "What the points say of the hardware", {}, hardware_table(report)});
    page.sections.push_back(
        {"assumptions", "Assumptions", assumptions(loop::Model::full_wave, report.notices), std::nullopt});
    page.sections.push_back({"cautions", "Cautions", cautions(), std::nullopt});
    return page;
}

Table calibration_data(const tuning::CalibrationReport& report) {
    Table table;
    for (const char* key :
         {"band", "frequency_Hz", "dial_predicted", "dial_predicted_low", "dial_predicted_high", "dial",
          "dial_low", "dial_high", "resonance_low_Hz", "resonance_high_Hz", "within_stops"}) {
        table.columns.push_back({key, key, ""});
    }
    for (const tuning::CalibrationRow& row : report.rows) {
        std::vector<Cell> cells(table.columns.size());
        cells[0] = row.band;
        cells[1] = row.frequency.value();
        if (row.predicted) {
            cells[2] = row.predicted->reading;
            cells[3] = row.predicted->range.low;
            cells[4] = row.predicted->range.high;
        }
        if (row.calibrated) {
            cells[5] = row.calibrated->reading;
            cells[6] = row.calibrated->range.low;
            cells[7] = row.calibrated->range.high;
            cells[8] = row.calibrated->frequency_range.low.value();
            cells[9] = row.calibrated->frequency_range.high.value();
            cells[10] = row.calibrated->within_stops;
        }
        table.rows.push_back(std::move(cells));
    }
    return table;
}

} // namespace loopwright::report
