#pragma once
// Writes the words of a figure so that none covers another: fixed ones first, then those that find their own
// place.
#include "charts/chart_palette.hpp"
#include "charts/figure.hpp"
#include "charts/label_placer.hpp"

#include <QFontMetricsF>

class QPainter;

namespace loopwright::charts {

enum class Tone { plain, quiet, strong };

class Lettering {
public:
    /// room: all words stay inside.
    Lettering(QPainter& painter, const QRectF& room, const Appearance& look);

    [[nodiscard]] double line() const { return metrics_.height(); }
    [[nodiscard]] QSizeF size_of(const QString& text, Tone tone = Tone::plain) const;
    /// A line that words which find their own place keep off.
    void avoid(const QPolygonF& line) { placer_.avoid(line); }
    void take(const QRectF& rect) { placer_.take(rect); }

    /// One line at a fixed place, shortened where it is longer than the rectangle. Nothing for no text.
    void write(const QRectF& rect, const QString& text, Qt::Alignment alignment, Tone tone = Tone::plain);
    /// Wrapped lines from the top of a rectangle; returns the height they took.
    double write_wrapped(const QRectF& rect, const QString& text, Qt::Alignment alignment,
                         Tone tone = Tone::plain);
    [[nodiscard]] double wrapped_height(double width, const QString& text) const;
    /// Upward along a vertical line through the middle of a rectangle.
    void write_upright(const QRectF& rect, const QString& text);
    /// Beside a point, at the first of the eight sides where there is room; left out where it would cover
    /// other words. True if it was written.
    bool write_beside(const QPointF& at, const QString& text, double off_px, Tone tone = Tone::plain);
    /// At the first of these corners where there is room; else as write_beside.
    bool write_at(const QList<QRectF>& candidates, const QString& text, Tone tone = Tone::plain,
                  bool always = false);

    /// The name of a curve with a piece of its line in front, always written, at the best of the candidates
    /// (their upper left corners).
    void write_curve_name(const QList<QPointF>& candidates, const models::Curve& curve);

    [[nodiscard]] const QList<FigureWord>& words() const { return words_; }

private:
    void paint_text(const QRectF& rect, const QString& text, Tone tone, int flags);
    void record(const QRectF& rect, const QString& text);
    [[nodiscard]] QFont font_of(Tone tone) const;
    QPainter& painter_;
    const Appearance& look_;
    QFontMetricsF metrics_;
    LabelPlacer placer_;
    QList<FigureWord> words_;
};

/// Title at the top of a room, in bold; the shorter one, where there is one, if the title has no room.
void write_title(Lettering& words, const QRectF& room, const QString& title, const QString& shorter = {});

} // namespace loopwright::charts
