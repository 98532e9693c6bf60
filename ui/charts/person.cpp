#include "charts/person.hpp"

#include <QPainter>
#include <QPainterPath>

namespace loopwright::charts {

void paint_person(QPainter& painter, const QPointF& feet, double px_per_m) {
    const auto at = [&](double x_m, double up_m) {
        return QPointF(feet.x() + x_m * px_per_m, feet.y() - up_m * px_per_m);
    };
    painter.drawEllipse(at(0.0, 1.63), 0.11 * px_per_m, 0.12 * px_per_m);
    QPainterPath body;
    body.moveTo(at(-0.22, 1.44));
    for (const auto& [x_m, up_m] :
         {std::pair(0.22, 1.44), std::pair(0.25, 0.8), std::pair(0.18, 0.8), std::pair(0.16, 1.25),
          std::pair(0.14, 0.0), std::pair(0.02, 0.0), std::pair(0.0, 0.78), std::pair(-0.02, 0.0),
          std::pair(-0.14, 0.0), std::pair(-0.16, 1.25), std::pair(-0.18, 0.8), std::pair(-0.25, 0.8)}) {
        body.lineTo(at(x_m, up_m));
    }
    body.closeSubpath();
    painter.drawPath(body);
}

void paint_person_from_above(QPainter& painter, const QPointF& centre, double px_per_m) {
    painter.drawEllipse(centre, 0.5 * person_width_m * px_per_m, 0.14 * px_per_m);
    painter.drawEllipse(centre, 0.1 * px_per_m, 0.11 * px_per_m);
}

} // namespace loopwright::charts
