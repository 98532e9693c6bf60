#pragma once
// The disc of a polar pattern: where an angle and a gain lie, rings and spokes. Internal to charts/.
#include "charts/lettering.hpp"

namespace loopwright::charts {

struct PolarDisc {
    QPointF centre;
    double radius = 1;
    double rim_dBi = 0;
    double range_dB = 40;
    bool half = false;

    /// Angle counted from the right, counterclockwise; gains below the middle's lie in the middle.
    [[nodiscard]] QPointF at(double degrees, double dBi) const;
    [[nodiscard]] QPointF on_rim(double degrees, double beyond_px = 0) const;
};

/// Rings every 10 dB, spokes every 30 degrees; over ground the horizon as a strong line.
void paint_disc(QPainter& painter, const PolarDisc& disc, const Appearance& look);
/// The gain of each ring along a spoke, those that cover nothing.
void write_rings(Lettering& words, const PolarDisc& disc, double along_deg);
/// One label outside the rim.
void write_outside(Lettering& words, const PolarDisc& disc, double degrees, const QString& text,
                   Tone tone = Tone::quiet);

} // namespace loopwright::charts
