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
    QString label;                   ///< "general public"
    bool main = false;               ///< of the tier that the distance to keep is for
    QList<QPolygonF> outline{};      ///< as entered; closed; empty: exceeded nowhere, or not established
    QList<QPolygonF> upper{};        ///< the unfavourable end of it; empty: not known yet
    bool cut_above = false;          ///< reaches higher than it is drawn
    bool nowhere = false;            ///< exceeded nowhere
    double farthest_m = 0;           ///< as entered
    std::optional<double> upper_m{}; ///< unfavourable end: what people must keep

    /// The one that counts: the unfavourable end where it is known.
    [[nodiscard]] const QList<QPolygonF>& outer() const { return upper.isEmpty() ? outline : upper; }
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
    QList<QPointF> points{}; ///< watts, metres as entered; ascending; what lies beyond 100 m is left out
    QList<QPointF> upper{};  ///< the unfavourable end; empty: not known yet
    [[nodiscard]] const QList<QPointF>& outer() const { return upper.isEmpty() ? points : upper; }
};

struct SurroundingsPlot {
    double frequency_Hz = 0; ///< 0: the planned bands together
    QString bands{};         ///< of a planned set: "40m, 30m, 20m"
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
    /// Whether every outline has its unfavourable end.
    [[nodiscard]] bool has_upper() const;
};

[[nodiscard]] SurroundingsPlot surroundings_plot(const survey::KeyingOutlines& outlines,
                                                 units::UnitSystem system);
[[nodiscard]] SurroundingsPlot no_surroundings_plot(const QString& reason);

/// "general public 2.31 m (magnetic), occupational 1.20 m": distances of all tiers, the unfavourable end
/// where it is known.
[[nodiscard]] QString distances_in_words(const SurroundingsPlot& plot);

/// What the outlines are of: the frequency, or that they are of all planned bands.
[[nodiscard]] QString place_words(const SurroundingsPlot& plot);

/// Which line is which: the unfavourable end, as entered.
[[nodiscard]] QString line_words(const SurroundingsPlot& plot);

} // namespace loopwright::models
