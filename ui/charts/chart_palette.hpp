#pragma once
// Colours of the charts, for light and dark paper, from a published set that people with any of the usual
// kinds of colour vision can tell apart: M. Okabe and K. Ito, "Color Universal Design", 2002, revised 2008
// (eight colours; their yellow and their orange are left to dark paper, their black becomes white there; the
// soil on white paper is their orange made darker, for contrast).
#include "models/chart_content.hpp"

#include <QColor>
#include <QFont>
#include <QPalette>

namespace loopwright::charts {

struct Appearance {
    bool dark = false;
    QColor paper;     ///< behind everything
    QColor ink;       ///< text, axes, limits
    QColor quiet_ink; ///< band names, units
    QColor grid;
    QColor stripe;       ///< amateur bands
    QColor focus_stripe; ///< the band in focus
    QColor zone;         ///< frequencies that are out of reach or not established
    QColor focus;        ///< the line of the frequency in focus
    QFont font;          ///< with its size in pixels

    [[nodiscard]] QColor curve(models::Meaning meaning) const;
    bool operator==(const Appearance&) const = default;
};

/// As the window looks now.
[[nodiscard]] Appearance screen_appearance(const QPalette& palette, const QFont& font);
/// Dark ink on white paper whatever the window looks like; a named font, so that pictures are alike
/// everywhere.
[[nodiscard]] Appearance paper_appearance(double font_px = 11.0);
/// The palette that goes with it, for what else is drawn on paper.
[[nodiscard]] QPalette paper_palette();

} // namespace loopwright::charts
