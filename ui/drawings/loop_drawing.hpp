#pragma once
// The loop to scale, with dimensions. Window-free: the page, the printed sheet and the exported picture paint
// the same thing with the same code; colours are the roles of the palette handed in.
#include "drawings/current_overlay.hpp"
#include "drawings/loop_views.hpp"
#include "units/text.hpp"

#include <QCoreApplication>
#include <QPalette>
#include <QRectF>
#include <QString>

#include <optional>
#include <utility>

class QPainter;

namespace loopwright::drawings {

class ViewPainter;

class LoopDrawing {
    Q_DECLARE_TR_FUNCTIONS(LoopDrawing)
public:
    /// design: without refusals.
    LoopDrawing(const design::Design& design, units::UnitSystem system);

    /// The current around the loop drawn on its outline, or nothing.
    void set_current(std::optional<CurrentOverlay> current) { current_ = std::move(current); }
    [[nodiscard]] const std::optional<CurrentOverlay>& current() const { return current_; }

    /// Paints into a rectangle with the painter's font; line widths follow the size of the font.
    void paint(QPainter& painter, const QRectF& rect, const QPalette& palette) const;

    /// What the drawing shows, in words, for those who do not see it.
    [[nodiscard]] QString description() const;

private:
    void paint_front(QPainter& painter, const QRectF& rect, const QPalette& palette, double scale) const;
    void paint_side(QPainter& painter, const QRectF& rect, const QPalette& palette, double scale) const;
    void paint_current(QPainter& painter, const QRectF& rect, const QPalette& palette,
                       const ViewPainter& on) const;
    void paint_site(ViewPainter& on, double ground_m, const QRectF& rect) const;
    void paint_foot(QPainter& painter, const QRectF& rect, const QPalette& palette, double scale) const;
    [[nodiscard]] QString length(double metres) const;
    [[nodiscard]] QString capacitor_text() const;
    [[nodiscard]] QString conductor_text() const;
    [[nodiscard]] QString coupling_text() const;
    [[nodiscard]] QString turns_text() const;
    /// The view that shows how high the loop stands.
    [[nodiscard]] const View& standing_view() const { return views_.side ? *views_.side : views_.front; }
    design::Design design_;
    units::UnitSystem system_;
    std::optional<CurrentOverlay> current_;
    LoopViews views_;
};

} // namespace loopwright::drawings
