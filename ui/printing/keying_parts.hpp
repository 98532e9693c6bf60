#pragma once
// The parts of the printed sheet before keying, from above to below. Words shrink until all of them fit the
// page; the pictures take what is left.
#include "charts/chart_palette.hpp"
#include "models/keying_board_model.hpp"
#include "printing/keying_sheet.hpp"

#include <QCoreApplication>
#include <QRectF>
#include <QStringList>

#include <string>

namespace loopwright::printing {

class Canvas;

class KeyingParts {
    Q_DECLARE_TR_FUNCTIONS(KeyingParts)
public:
    KeyingParts(Canvas& canvas, const KeyingSheetData& data, const QSizeF& size_mm);
    void paint();

private:
    /// Each paints from y [mm] downward and returns the height [mm] it takes; draw false: only measures.
    double head(double y, bool draw);
    double hazards(double y, bool draw);
    double table(double y, bool draw);
    double table_line(double y, const QStringList& cells, bool heading, bool strong, bool draw);
    [[nodiscard]] QString cell_text(int row, int column) const;
    double reasons(double y, bool draw);
    double words(double y, bool draw);
    double column_of_words(const QRectF& room, const QString& heading, const QStringList& sentences,
                           bool draw);
    void pictures(double y, double height);
    void foot();
    [[nodiscard]] double height_of_all();
    /// Sets the scale of the words so that all of them take at most that height; false where they do not at
    /// the least scale.
    bool shrink_to(double height, double least_scale);
    [[nodiscard]] QString no_pictures() const;
    [[nodiscard]] QStringList assumptions() const;
    /// Sentences of a section of the core's page, or its one of that code.
    [[nodiscard]] QStringList section(const std::string& code, const std::string& of = {}) const;
    [[nodiscard]] QStringList cautions() const;
    /// Where tuning by hand allows least; a band where that is not established, if there is one.
    [[nodiscard]] const survey::KeyingBand* tuning_band() const;
    Canvas& canvas_;
    const KeyingSheetData& data_;
    QSizeF size_mm_;
    charts::Appearance look_;
    models::KeyingBoardModel board_;
    double scale_ = 1; ///< of the words
};

} // namespace loopwright::printing
