#pragma once
// Paper measured in millimetres, whatever it is painted on. Text is set at the resolution of the device, so
// that it looks on paper as it was measured.
#include <QColor>
#include <QFont>
#include <QPainter>
#include <QRectF>
#include <QString>

namespace loopwright::printing {

class Canvas {
public:
    /// origin: of the paper's usable part on the device.
    Canvas(QPainter& painter, const QPointF& origin, double units_per_mm);

    [[nodiscard]] QPainter& painter() { return painter_; }
    [[nodiscard]] QRectF on_device(const QRectF& mm) const;
    [[nodiscard]] double units_per_mm() const { return units_per_mm_; }
    [[nodiscard]] QFont font(double points, bool bold = false) const;
    /// Height [mm] that a text takes when wrapped at a width.
    [[nodiscard]] double height_of(const QString& text, double width_mm, double points,
                                   bool bold = false) const;
    [[nodiscard]] double width_of(const QString& text, double points, bool bold = false) const;
    /// Writes, wrapped, from the top of the rectangle; returns the height [mm] it took.
    double write(const QRectF& mm, const QString& text, double points, bool bold = false,
                 Qt::Alignment alignment = Qt::AlignLeft);
    /// Writes on one line, shortened with an ellipsis where it does not fit.
    void write_line(const QRectF& mm, const QString& text, double points, bool bold = false,
                    Qt::Alignment alignment = Qt::AlignLeft);
    void rule(const QPointF& from_mm, const QPointF& to_mm, double width_mm, const QColor& colour);

private:
    QPainter& painter_;
    QPointF origin_;
    double units_per_mm_;
};

} // namespace loopwright::printing
