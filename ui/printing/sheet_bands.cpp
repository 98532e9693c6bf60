// The printed page: its table of bands and its words.
#include "printing/canvas.hpp"
#include "printing/sheet_parts.hpp"
#include "report/cautions.hpp"

#include <QPen>

#include <algorithm>
#include <array>

namespace loopwright::printing {

namespace {

using models::BandBoardModel;

constexpr double cell_pt = 7.2, words_pt = 6.4, pad_mm = 0.55;

struct PrintedColumn {
    int column;
    double width_mm;
};
/// The words take what is left of the width.
constexpr std::array<PrintedColumn, 9> columns = {{{BandBoardModel::band, 9.5},
                                                   {BandBoardModel::verdict, 29.0},
                                                   {BandBoardModel::efficiency, 16.0},
                                                   {BandBoardModel::low_gain, 13.5},
                                                   {BandBoardModel::capacitance, 18.0},
                                                   {BandBoardModel::voltage, 15.5},
                                                   {BandBoardModel::distance, 17.0},
                                                   {BandBoardModel::bandwidth, 19.5},
                                                   {BandBoardModel::q, 14.0}}};

double width_of_columns() {
    double sum = 0;
    for (const PrintedColumn& column : columns) {
        sum += column.width_mm;
    }
    return sum;
}

bool is_text(int column) {
    return column == BandBoardModel::band || column == BandBoardModel::verdict;
}

} // namespace

double SheetParts::column_width(int column) const {
    const auto found = std::find_if(columns.begin(), columns.end(),
                                    [&](const PrintedColumn& each) { return each.column == column; });
    return found == columns.end() ? size_mm_.width() - width_of_columns() - 2.0 : found->width_mm;
}

double SheetParts::band_heading(double y, bool draw) {
    double height = 0, x = 0;
    const auto cell = [&](int column, double width) {
        const QString text = board_.headerData(column, Qt::Horizontal, Qt::DisplayRole).toString();
        height = std::max(height, canvas_.height_of(text, width, words_pt, true));
        if (draw) {
            canvas_.write({x, y, width - 1.0, 8}, text, words_pt, true,
                          is_text(column) || column == BandBoardModel::words ? Qt::AlignLeft
                                                                             : Qt::AlignRight);
        }
        x += width;
    };
    for (const PrintedColumn& column : columns) {
        cell(column.column, column.width_mm);
    }
    x += 2.0;
    cell(BandBoardModel::words, column_width(BandBoardModel::words));
    if (draw) {
        canvas_.rule({0, y + height + 0.3}, {size_mm_.width(), y + height + 0.3}, 0.25, look_.ink);
    }
    return height + 0.6;
}

double SheetParts::band_row(double y, int row, bool draw, bool every_reason) {
    const survey::BandRow& band = *board_.row_at(row);
    const QString words = every_reason ? board_.index(row, BandBoardModel::words).data().toString()
                                       : QString::fromStdString(band.verdict_text) + QLatin1Char('.');
    const double words_width = column_width(BandBoardModel::words);
    const double height = std::max(canvas_.height_of(words, words_width, words_pt),
                                   canvas_.height_of(QStringLiteral("0"), 10, cell_pt)) +
                          2 * pad_mm;
    if (!draw) {
        return height;
    }
    double x = 0;
    const bool numbers = band.point.resonance.has_value();
    for (const PrintedColumn& column : columns) {
        const QModelIndex index = board_.index(row, column.column);
        const bool strong =
            column.column == BandBoardModel::band || index.data(BandBoardModel::strong_role).toBool();
        if (is_text(column.column)) {
            canvas_.write({x, y + pad_mm, column.width_mm - 1.0, height}, index.data().toString(), cell_pt,
                          strong);
        } else if (numbers) { // aligned at the decimal sign
            const double missing = fraction_room(column.column) - fraction_width(index);
            canvas_.write({x, y + pad_mm, column.width_mm - 1.0 - missing, height}, index.data().toString(),
                          cell_pt, strong, Qt::AlignRight);
        }
        x += column.width_mm;
    }
    canvas_.write({x + 2.0, y + pad_mm, words_width, height}, words, words_pt);
    canvas_.rule({0, y + height}, {size_mm_.width(), y + height}, 0.15, look_.grid);
    return height;
}

double SheetParts::fraction_width(const QModelIndex& number) const {
    const QString text = number.data().toString();
    const auto at = text.indexOf(QLatin1Char('.'));
    const bool is_number = number.data(BandBoardModel::number_role).toBool();
    return at < 0 || !is_number ? 0.0 : canvas_.width_of(text.mid(at), cell_pt);
}

double SheetParts::fraction_room(int column) const {
    double room = 0;
    for (int row = 0; row < board_.rowCount(); ++row) {
        room = std::max(room, fraction_width(board_.index(row, column)));
    }
    return room;
}

double SheetParts::bands(double y, bool draw, bool every_reason) {
    double height = band_heading(y, draw);
    for (int row = 0; row < board_.rowCount(); ++row) {
        height += band_row(y + height, row, draw, every_reason);
    }
    return height;
}

QStringList SheetParts::assumptions() const {
    base::Notices notices;
    for (const survey::BandRow& row : data_.survey->bands) {
        notices.merge(row.point.notices);
    }
    QStringList lines;
    for (const report::Sentence& sentence : report::assumptions(data_.survey->request.model, notices)) {
        lines << QString::fromStdString(sentence.text);
    }
    return lines;
}

QStringList SheetParts::cautions() const {
    return {tr("Kilovolts: a few watts put up to thousands of volts across the capacitor and many amperes "
               "into the "
               "conductor. Arcs start fires. Never touch the loop, and let nobody touch it, while it may be "
               "keyed; keep "
               "it out of the reach of children and animals."),
            tr("RF burns: touching the conductor, the capacitor or metal near them burns deep under the "
               "skin, and it is "
               "felt late."),
            data_.keying
                ? tr("Exposure: close to the loop the fields can exceed the limits for people, also at "
                     "low power. The distance above is computed, not measured: keep more. People with "
                     "implants or medical devices keep away; no limit here covers them.")
                : tr("Exposure: close to the loop the fields can exceed the limits for people, also at "
                     "low power. No distance is established here."),
            tr("Tuning by hand is the dangerous moment: find resonance by received noise first, then with "
               "the lowest "
               "power that shows a reading, keyed for seconds, and step back before full power (common "
               "practice)."),
            tr("Law and skill: exposure rules, electrical and building codes and the licence terms of your "
               "country come "
               "before this page. It replaces neither licensed practice nor measurement.")};
}

} // namespace loopwright::printing
