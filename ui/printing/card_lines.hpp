#pragma once
// What the printed retune card says, cell by cell; no painting.
#include "printing/card_sheet.hpp"

#include <QString>
#include <QStringList>
#include <QVector>

namespace loopwright::printing {

struct CardColumn {
    QString title; ///< one or two lines
    bool strong = false;
    bool text = false; ///< set to the left
};

struct CardLine {
    QStringList cells;
    /// Out of reach: from this column on one text takes the rest of the line; -1: none.
    int spans_from = -1;
    bool new_band = false;
};

struct CardTable {
    QVector<CardColumn> columns;
    QVector<CardLine> lines;
};

/// All rows; pocket: fewer columns.
[[nodiscard]] CardTable card_table(const survey::Card& card, bool pocket);

/// What stands in the frame: volts, distance, tune-up power and order.
[[nodiscard]] QStringList card_warnings(const CardSheetData& data);

/// How to read the columns and marks, fixed capacitors, where the readings come from.
[[nodiscard]] QStringList card_legend(const survey::Card& card, bool pocket);

} // namespace loopwright::printing
