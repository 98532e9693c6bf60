#pragma once
// Paints one view of the loop on paper: conductor, capacitor, coupling loop, ground, dimensions.
#include "drawings/loop_views.hpp"

#include <QColor>
#include <QPalette>
#include <QPointF>
#include <QRectF>
#include <QString>

#include <optional>

class QPainter;

namespace loopwright::drawings {

/// A loop that stands higher than this share of its own height is drawn nearer, with the line of its height
/// broken.
inline constexpr double highest_true_clearance = 0.8;
inline constexpr double broken_clearance = 0.3;

/// Room for the ground below a view, in metres on the scale of the drawing; 0 in free space.
[[nodiscard]] double ground_room_m(const View& view, const std::optional<double>& clearance_m);

class ViewPainter {
public:
    /// origin: where (0, 0) of the view lies; scale: painter units a metre.
    ViewPainter(QPainter& painter, const QPalette& palette, const View& view, double scale,
                const QPointF& origin);

    void conductor();
    void capacitor(const QString& label, const QRectF& bounds);
    void coupling(const QPointF& centre, double radius_m, const QString& label, const QRectF& bounds);
    /// The rod of a tap with its links to scale, open where the line is joined in the first of them.
    void rod(const RodView& rod, const QString& label, const QRectF& bounds);
    /// A core around the conductor: a sign, as a design does not hold its size.
    void core(const CoreView& core, int turns, const QString& label, const QRectF& bounds);
    /// Across the middle of the loop.
    void width(const QString& text);
    /// To the left of the loop.
    void height(const QString& text);
    /// The ground below with its name, and the height above it. drawn_m may be less than the true clearance:
    /// then it is broken.
    /// standing_share: of that height, where people stand; its text keeps clear of theirs.
    void ground(double drawn_m, bool broken, const QString& height, const QString& name, const QRectF& bounds,
                std::optional<double> standing_share);
    /// The floor that people stand on; share: of the drawn height between ground and lowest point, above 1:
    /// in the view's own heights from its lowest point.
    void standing(double drawn_m, double level_m, double clearance_m, const QString& text,
                  const QRectF& bounds);
    /// From metres of the view to the painter.
    [[nodiscard]] QPointF at(const QPointF& metres) const;
    /// A text under the view.
    void caption(const QString& text, const QRectF& bounds);

private:
    [[nodiscard]] QRectF box() const;
    void label_inside(const QPointF& of, const QString& label, const QRectF& bounds);
    [[nodiscard]] double height_text_y(double level, std::optional<double> standing_share) const;
    void thin_pen(QPalette::ColorRole role);
    QPainter& painter_;
    const QPalette& palette_;
    const View& view_;
    double scale_;
    QPointF origin_;
    double line_; ///< height of a line of text
};

} // namespace loopwright::drawings
