#pragma once
// Where a limit is exceeded around the loop, as plain data in metres: from above, from the side, and the
// distance over power.
#include "survey/keying_outlines.hpp"
#include "units/text.hpp"

#include <QList>
#include <QPointF>
#include <QPolygonF>
#include <QString>

#include <optional>

namespace loopwright::models {

struct OutlineCurve {
    QString label;          ///< "general public"
    bool main = false;      ///< of the tier that the distance to keep is for
    QPolygonF outline{};    ///< closed; empty: exceeded nowhere, or not established
    bool nowhere = false;   ///< exceeded nowhere
    double farthest_m = 0;  ///< nominal
    double azimuth_rad = 0; ///< of the farthest
    QString cause{};
};

struct OutlineView {
    QPolygonF loop;               ///< the conductor as seen
    QList<OutlineCurve> curves{}; ///< general public first
    QString right{}, left{};      ///< where right and left look to
};

struct PowerCurve {
    QString label;
    int stroke = 0;
    QList<QPointF> points{}; ///< watts, metres; ascending; what lies beyond 100 m is left out
};

struct SurroundingsPlot {
    double frequency_Hz = 0;
    QString limit{};
    QString conditions{};
    bool free_space = false;
    double standing_m = 0;
    OutlineView above, side; ///< y: away from the plane, to the north of azimuth 90; height
    QList<PowerCurve> over_power{};
    double power_W = 0;
    std::optional<double> people_m{};
    units::UnitSystem system = units::UnitSystem::metric;
    QString reason{}; ///< why there is nothing

    [[nodiscard]] bool established() const { return reason.isEmpty(); }
};

[[nodiscard]] SurroundingsPlot surroundings_plot(const survey::KeyingOutlines& outlines,
                                                 units::UnitSystem system);
[[nodiscard]] SurroundingsPlot no_surroundings_plot(const QString& reason);

/// "general public 2.31 m (magnetic), occupational 1.20 m": nominal distances of all tiers.
[[nodiscard]] QString distances_in_words(const SurroundingsPlot& plot);

} // namespace loopwright::models
