// The printed sheet before keying: its table and its words.
#include "printing/keying_parts.hpp"

#include "models/keying_words.hpp"
#include "models/quantity_words.hpp"
#include "printing/canvas.hpp"
#include "report/keying.hpp"

#include <algorithm>
#include <array>

namespace loopwright::printing {

namespace {

using models::KeyingBoardModel;

constexpr double keying_cell_pt = 7.0, heading_pt = 6.2, keying_words_pt = 6.4, keying_pad_mm = 0.5,
                 keying_gap_mm = 4.0;

struct KeyingColumn {
    int column;
    double share; ///< of the width
};
constexpr std::array<KeyingColumn, 14> keying_columns = {{{KeyingBoardModel::band_column, 0.043},
                                                          {KeyingBoardModel::verdict, 0.124},
                                                          {KeyingBoardModel::voltage, 0.068},
                                                          {KeyingBoardModel::voltage_high, 0.062},
                                                          {KeyingBoardModel::usable, 0.055},
                                                          {KeyingBoardModel::distance, 0.065},
                                                          {KeyingBoardModel::limit, 0.12},
                                                          {KeyingBoardModel::cause, 0.068},
                                                          {KeyingBoardModel::capacitor_power, 0.068},
                                                          {KeyingBoardModel::people_power, 0.06},
                                                          {KeyingBoardModel::tuning_power, 0.06},
                                                          {KeyingBoardModel::touch, 0.047},
                                                          {KeyingBoardModel::conductor_rise, 0.082},
                                                          {KeyingBoardModel::capacitor_rise, 0.078}}};

bool is_keying_text(int column) {
    return column == KeyingBoardModel::band_column || column == KeyingBoardModel::verdict ||
           column == KeyingBoardModel::limit || column == KeyingBoardModel::cause;
}

} // namespace

double KeyingParts::table_line(double y, const QStringList& cells, bool heading, bool strong, bool draw) {
    const double points = (heading ? heading_pt : keying_cell_pt) * scale_;
    double height = 0, x = 0;
    for (std::size_t i = 0; i < keying_columns.size(); ++i) {
        const double width = keying_columns[i].share * size_mm_.width() - 1.2;
        const QString& text = cells[static_cast<qsizetype>(i)];
        const bool bold = heading || (strong && keying_columns[i].column == KeyingBoardModel::verdict) ||
                          keying_columns[i].column == KeyingBoardModel::band_column;
        height = std::max(height, canvas_.height_of(text, width, points, bold));
        if (draw) {
            canvas_.write({x, y + keying_pad_mm, width, 4}, text, points, bold,
                          is_keying_text(keying_columns[i].column) ? Qt::AlignLeft : Qt::AlignRight);
        }
        x += keying_columns[i].share * size_mm_.width();
    }
    height += 2 * keying_pad_mm;
    if (draw) {
        canvas_.rule({0, y + height}, {size_mm_.width(), y + height}, heading ? 0.25 : 0.12,
                     heading ? look_.ink : look_.grid);
    }
    return height;
}

double KeyingParts::table(double y, bool draw) {
    QStringList heading;
    for (const KeyingColumn& column : keying_columns) {
        heading << board_.headerData(column.column, Qt::Horizontal, Qt::DisplayRole).toString();
    }
    double height = table_line(y, heading, true, false, draw);
    for (int row = 0; row < board_.rowCount(); ++row) {
        QStringList cells;
        for (const KeyingColumn& column : keying_columns) {
            cells << cell_text(row, column.column);
        }
        height += table_line(y + height, cells, false, models::forbids(board_.row_at(row)->verdict), draw);
    }
    return height;
}

/// As the window has it, but narrow: what was not entered and what a band without figures cannot have is a
/// dash (the words below the table say why), an interval stands below its figure.
QString KeyingParts::cell_text(int row, int column) const {
    const survey::KeyingBand& band = *board_.row_at(row);
    const design::Design& design = data_.keying->request.design;
    const bool not_entered = (column == KeyingBoardModel::people_power && !design.site.people_distance) ||
                             (column == KeyingBoardModel::tuning_power && !design.station.reach);
    const bool named = column == KeyingBoardModel::band_column || column == KeyingBoardModel::verdict;
    if (not_entered || (!band.point.resonance && !named)) {
        return QStringLiteral("\u2013");
    }
    QString text = board_.index(row, column).data().toString();
    if (column == KeyingBoardModel::conductor_rise || column == KeyingBoardModel::capacitor_rise) {
        text.replace(QStringLiteral(" ("), QStringLiteral("\n("));
    }
    return text;
}

double KeyingParts::column_of_words(const QRectF& room, const QString& heading, const QStringList& sentences,
                                    bool draw) {
    const double points = keying_words_pt * scale_, indent = 2.2;
    double height = canvas_.height_of(heading, room.width(), points + 0.8, true) + 0.4;
    if (draw) {
        canvas_.write({room.left(), room.top(), room.width(), height}, heading, points + 0.8, true);
    }
    for (const QString& sentence : sentences) {
        const double each = canvas_.height_of(sentence, room.width() - indent, points) + 0.35;
        if (draw) {
            canvas_.write({room.left(), room.top() + height, indent, each}, QStringLiteral("\u2022"), points);
            canvas_.write({room.left() + indent, room.top() + height, room.width() - indent, each}, sentence,
                          points);
        }
        height += each;
    }
    return height;
}

double KeyingParts::words(double y, bool draw) {
    const double width = (size_mm_.width() - keying_gap_mm) / 2.0;
    const double left = column_of_words({0, y, width, 0}, tr("Assumptions"), assumptions(), draw);
    const design::Design& design = data_.keying->request.design;
    const double upper = column_of_words({width + keying_gap_mm, y, width, 0}, tr("Tuning on the air"),
                                         models::tuning_lines(tuning_band(), design), draw) +
                         1.0;
    const double middle =
        upper +
        column_of_words({width + keying_gap_mm, y + upper, width, 0}, tr("Cautions"), cautions(), draw) + 1.0;
    const double right = middle + column_of_words({width + keying_gap_mm, y + middle, width, 0},
                                                  tr("Limits checked"), section("limits"), draw);
    return std::max(left, right);
}

QStringList KeyingParts::assumptions() const {
    const design::Design& design = data_.keying->request.design;
    QStringList lines;
    const auto length = [&](units::Length value) {
        return models::short_text(value.value(), units::Dimension::length, data_.units);
    };
    QString people = tr("People stand at %1 above the ground").arg(length(design.site.standing_level.value));
    people += design.site.people_distance
                  ? tr(", %1 from the axis.").arg(length(design.site.people_distance->value))
                  : tr("; how near they come was not entered.");
    lines << people;
    return lines + section("assumptions") + section("touch_and_heat", "capacitor_body_assumed");
}

QStringList KeyingParts::section(const std::string& code, const std::string& of) const {
    QStringList lines;
    for (const report::Section& section : report::keying_page(*data_.keying).sections) {
        if (section.code == code) {
            for (const report::Sentence& sentence : section.sentences) {
                if (of.empty() || sentence.code == of) {
                    lines << QString::fromStdString(sentence.text);
                }
            }
        }
    }
    return lines;
}

QStringList KeyingParts::cautions() const {
    return {
        tr("Kilovolts: a few watts put up to thousands of volts across the capacitor. Arcs start fires. "
           "Never touch the loop, and let nobody touch it, while it may be keyed; keep it out of the reach "
           "of children and animals."),
        tr("RF burns: touching the conductor, the capacitor or metal near them burns deep under the skin, "
           "and it is felt late. No distance covers touch."),
        tr("Exposure: the distances are computed, not measured. Keep farther away where you can; keep "
           "people with implants or other medical devices well away, no limit here is for them."),
        tr("Law and skill: exposure rules, electrical and building codes and the licence terms of your "
           "country come before this page. It replaces neither licensed practice nor measurement.")};
}

} // namespace loopwright::printing
