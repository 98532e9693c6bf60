#pragma once
// A chart of its own kind (Smith chart, polar pattern, shares over height): a frozen value that paints itself
// into any rectangle of any painter. Screen, paper and files show the same. A FigureWidget shows it.
#include "charts/chart_palette.hpp"

#include <QList>
#include <QPointF>
#include <QRectF>
#include <QString>

class QPainter;

namespace loopwright::charts {

struct FigureWord {
    QRectF rect;
    QString text;
};

class Figure {
public:
    virtual ~Figure() = default;
    Figure(const Figure&) = delete;
    Figure& operator=(const Figure&) = delete;

    [[nodiscard]] virtual QString id() const = 0;    ///< "smith"; names files
    [[nodiscard]] virtual QString title() const = 0; ///< of one line
    /// All of it in words, for those who do not see it.
    [[nodiscard]] virtual QString description() const = 0;
    /// Width over height that suits it.
    [[nodiscard]] virtual double shape() const { return 1.6; }

    /// Paints everything inside `room`; the words as they were painted.
    virtual QList<FigureWord> paint(QPainter& painter, const QRectF& room, const Appearance& look) const = 0;

    /// What can be pointed at, on paper, as painted into `room`; may be empty.
    [[nodiscard]] virtual QList<QPointF> points(const QRectF& room, const Appearance& look) const;
    /// The numbers of such a point in one line.
    [[nodiscard]] virtual QString point_text(qsizetype point) const;

protected:
    Figure() = default;
};

} // namespace loopwright::charts
