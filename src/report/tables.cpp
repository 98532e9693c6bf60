#include "report/tables.hpp"

#include "base/error.hpp"
#include "loop/model_difference.hpp"
#include "report/hazards.hpp"
#include "report/number.hpp"
#include "report/point_fields.hpp"
#include "report/shown_units.hpp"
#include "report/words.hpp"
#include "survey/site_voltage.hpp"
#include "survey/verdict.hpp"

#include <string>
#include <utility>

namespace loopwright::report {
namespace {

std::string efficiency_cell(double share) {
    const survey::EfficiencyFigure figure = survey::efficiency_to_print(share, 3);
    return significant(per_cent * figure.share, figure.digits);
}

std::vector<Column> figure_columns(const survey::Request& request) {
    std::vector<Column> all;
    all.push_back({"frequency_Hz", "Frequency", "MHz", mega, 6, 4});
    all.push_back({"tuning_capacitance_F", "Capacitance needed", "pF", pico});
    all.push_back({"efficiency", "Efficiency", "%", per_cent, 3, -1, &efficiency_cell});
    all.push_back({"gain_low_angle_dBi", "Gain at 15 deg", "dBi", 1, 3, 1});
    if (request.dipole) {
        all.push_back({"gain_over_dipole_dB", "Against dipole", "dB", 1, 3, 1});
    }
    all.push_back({"q_unloaded", "Q unloaded", "", 1});
    const std::string vswr = survey::given_text(request.vswr_limit, units::Dimension::number);
    all.push_back({"bandwidth_vswr_Hz", "Bandwidth VSWR " + vswr, "kHz", kilo});
    all.push_back({"capacitor_voltage_peak_V", "Capacitor peak", "V", 1});
    return all;
}

void append_figures(std::vector<Cell>& row, const loop::OperatingPoint& point,
                    const std::vector<Column>& columns) {
    for (const Column& column : columns) {
        row.push_back(figure(point, column.key));
    }
}

std::string codes(const base::Notices& notices) {
    std::string text;
    for (const base::Notice& notice : notices.worst_first()) {
        text += (text.empty() ? "" : " ") + notice.code;
    }
    return text;
}

std::vector<Column> all_columns() {
    std::vector<Column> columns;
    for (const PointField& field : point_fields()) {
        columns.push_back({field.path, field.path, ""});
    }
    columns.push_back({"notices", "notices", ""});
    return columns;
}

void append_all(std::vector<Cell>& row, const loop::OperatingPoint& point) {
    for (const PointField& field : point_fields()) {
        row.push_back(field.value(point));
    }
    row.emplace_back(codes(point.notices));
}

void append_distance(std::vector<Cell>& row, const survey::KeyingDistance* distance) {
    if (distance == nullptr) {
        row.resize(row.size() + 3);
        return;
    }
    row.emplace_back(distance->farthest->distance.value());
    row.emplace_back(distance->range.high.value());
    row.emplace_back(distance->limit);
}

} // namespace

Table band_board(const survey::Survey& survey, const survey::Keying* keying) {
    const std::vector<Column> figures = figure_columns(survey.request);
    Table table;
    table.columns.push_back({"band", "Band", ""});
    table.columns.insert(table.columns.end(), figures.begin(), figures.end());
    if (keying != nullptr) {
        table.columns.push_back({"distance_m_high", "People beyond", "m", 1, 3, 2});
    }
    table.columns.push_back({"verdict", "Verdict", ""});
    for (const survey::BandRow& row : survey::rows_of(survey, keying)) {
        std::vector<Cell> cells = {row.band.name};
        append_figures(cells, row.point, figures);
        if (keying != nullptr) {
            const survey::KeyingDistance* distance = distance_on(keying, row.band.name);
            cells.push_back(distance == nullptr ? Cell() : Cell(rounded_up_m(distance->range.high)));
        }
        cells.emplace_back(words_of(row.verdict));
        table.rows.push_back(std::move(cells));
    }
    return table;
}

Table band_data(const survey::Survey& survey, const survey::Keying* keying) {
    Table table;
    table.columns = {{"band", "band", ""}, {"verdict", "verdict", ""}, {"verdict_text", "verdict_text", ""}};
    const std::vector<Column> all = all_columns();
    table.columns.insert(table.columns.end(), all.begin(), all.end());
    for (const char* key : {"distance_m", "distance_m_high", "distance_limit"}) {
        table.columns.push_back({key, key, ""});
    }
    for (const survey::BandRow& row : survey::rows_of(survey, keying)) {
        std::vector<Cell> cells = {row.band.name, std::string(survey::name_of(row.verdict)),
                                   with_plain_blanks(row.verdict_text)};
        append_all(cells, row.point);
        append_distance(cells, distance_on(keying, row.band.name));
        table.rows.push_back(std::move(cells));
    }
    return table;
}

Table sweep_table(const survey::Survey& survey) {
    Table table;
    table.columns = figure_columns(survey.request);
    const std::vector<Column> figures = table.columns;
    table.columns.push_back({"in_capacitor_range", "In range", ""});
    for (const loop::OperatingPoint& point : survey.curve) {
        std::vector<Cell> cells;
        append_figures(cells, point, figures);
        cells.push_back(point.resonance ? figure(point, "in_capacitor_range")
                                        : Cell(std::string("not established")));
        table.rows.push_back(std::move(cells));
    }
    return table;
}

Table sweep_data(const survey::Survey& survey) {
    Table table;
    table.columns = all_columns();
    for (const loop::OperatingPoint& point : survey.curve) {
        append_all(table.rows.emplace_back(), point);
    }
    return table;
}

Table models_data(const survey::Survey& one, const survey::Survey& other) {
    const bool in_order = one.request.model == loop::Model::full_wave;
    const std::vector<loop::OperatingPoint>& full = in_order ? one.curve : other.curve;
    const std::vector<loop::OperatingPoint>& closed = in_order ? other.curve : one.curve;
    if (full.size() != closed.size()) {
        throw base::ProgramError("two surveys that differ in their frequencies are no comparison of models");
    }
    Table table;
    table.columns = all_columns();
    table.columns.push_back({"models_part_by", "models_part_by", ""});
    for (std::size_t i = 0; i < full.size(); ++i) {
        const loop::ModelDifference difference =
            loop::difference(closed[i], full[i], one.request.design.site.ground);
        std::string reasons;
        for (const loop::DifferenceReason& reason : difference.reasons) {
            reasons += (reasons.empty() ? "" : " ") + reason.code;
        }
        for (const loop::OperatingPoint* point : {&full[i], &closed[i]}) {
            append_all(table.rows.emplace_back(), *point);
            table.rows.back().emplace_back(reasons);
        }
    }
    return table;
}

} // namespace loopwright::report
