#pragma once
// The parts of the printed page. Each is measured first; the drawing takes what is left.
#include "charts/chart_palette.hpp"
#include "models/band_board_model.hpp"
#include "printing/sheet.hpp"

#include <QCoreApplication>
#include <QRectF>
#include <QStringList>

namespace loopwright::printing {

class Canvas;

class SheetParts {
    Q_DECLARE_TR_FUNCTIONS(SheetParts)
public:
    SheetParts(Canvas& canvas, const SheetData& data, const QSizeF& size_mm);
    void paint();

private:
    /// Each paints from y [mm] downward and returns the height [mm] it takes; draw false: only measures.
    double head(double y, bool draw);
    double hazards(double y, bool draw);
    double loop(double y, double height);
    double bands(double y, bool draw, bool every_reason);
    double band_row(double y, int row, bool draw, bool every_reason);
    double band_heading(double y, bool draw);
    double charts(double y, bool draw);
    double words(double y, bool draw);
    double column_of_words(const QRectF& room, const QString& heading, const QStringList& sentences,
                           bool draw);
    void foot();
    [[nodiscard]] double column_width(int column) const;
    /// Width [mm] right of the decimal sign, of one number and the widest of a column.
    [[nodiscard]] double fraction_width(const QModelIndex& number) const;
    [[nodiscard]] double fraction_room(int column) const;
    [[nodiscard]] QStringList parts_of_the_loop() const;
    [[nodiscard]] QStringList assumptions() const;
    [[nodiscard]] QStringList cautions() const;
    Canvas& canvas_;
    const SheetData& data_;
    QSizeF size_mm_;
    charts::Appearance look_;
    models::BandBoardModel board_;
};

} // namespace loopwright::printing
