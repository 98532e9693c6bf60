#include "models/surroundings_plot.hpp"

#include "geometry/wire_path.hpp"
#include "loop/design_parts.hpp"
#include "models/keying_words.hpp"
#include "models/match_plot.hpp"
#include "models/model_words.hpp"
#include "models/quantity_words.hpp"

#include <QCoreApplication>

#include <algorithm>
#include <cmath>
#include <numbers>

namespace loopwright::models {

namespace {

struct Plots {
    Q_DECLARE_TR_FUNCTIONS(Surroundings)
};
using survey::KeyingOutlines;
using survey::TierOutlines;

constexpr int path_points = 361;

struct LoopSeen {
    QPolygonF above, side;
};

/// side: seen at right angles to the azimuth, which runs to the right.
LoopSeen loop_of(const design::Design& design, double azimuth_rad) {
    LoopSeen seen;
    const geometry::WirePath path = loop::wire_path_of(design);
    for (int i = 0; i < path_points; ++i) {
        const geometry::Vector3 at = path.point(path.length_m() * i / path_points);
        seen.above << QPointF(at.x, at.y);
        seen.side << QPointF(at.x * std::cos(azimuth_rad) + at.y * std::sin(azimuth_rad), at.z);
    }
    return seen;
}

OutlineCurve curve_of(const TierOutlines& tier) {
    OutlineCurve curve;
    curve.label = tier_word(tier.tier);
    curve.main = tier.tier == exposure::Tier::general_public;
    if (tier.farthest) {
        curve.farthest_m = tier.farthest->distance.value();
        curve.azimuth_rad = tier.farthest->azimuth.value();
        curve.cause = cause_word(tier.farthest->cause);
        curve.nowhere = curve.farthest_m <= 0.0;
        if (tier.upper_distance) {
            curve.upper_m = tier.upper_distance->value();
        }
    }
    return curve;
}

QList<QPolygonF> polygons_from_above(const survey::Outline& outline) {
    QPolygonF polygon;
    if (outline.from_above) {
        const auto& all = *outline.from_above;
        for (std::size_t i = 0; i < all.size(); ++i) {
            const double angle =
                2.0 * std::numbers::pi * static_cast<double>(i) / static_cast<double>(all.size());
            polygon << QPointF(all[i].value() * std::cos(angle), all[i].value() * std::sin(angle));
        }
    }
    return polygon.isEmpty() ? QList<QPolygonF>() : QList<QPolygonF>{polygon};
}

/// Up its right side and down its left.
QList<QPolygonF> polygons_from_the_side(const survey::Outline& outline) {
    QList<QPolygonF> polygons;
    if (outline.side) {
        for (const auto& piece : outline.side->pieces) {
            QPolygonF polygon;
            for (const exposure::SideRow& row : piece) {
                polygon << QPointF(row.right.value(), row.height.value());
            }
            for (auto row = piece.rbegin(); row != piece.rend(); ++row) {
                polygon << QPointF(row->left.value(), row->height.value());
            }
            polygons << polygon;
        }
    }
    return polygons;
}

OutlineCurve from_above(const TierOutlines& tier) {
    OutlineCurve curve = curve_of(tier);
    if (!curve.nowhere) {
        curve.outline = polygons_from_above(tier.nominal);
        curve.upper = tier.upper ? polygons_from_above(*tier.upper) : QList<QPolygonF>();
    }
    return curve;
}

OutlineCurve from_the_side(const TierOutlines& tier) {
    OutlineCurve curve = curve_of(tier);
    curve.outline = polygons_from_the_side(tier.nominal);
    curve.upper = tier.upper ? polygons_from_the_side(*tier.upper) : QList<QPolygonF>();
    curve.nowhere = curve.outline.isEmpty() && tier.nominal.side;
    const survey::Outline& outer = tier.upper ? *tier.upper : tier.nominal;
    curve.cut_above = outer.side && outer.side->cut_above;
    return curve;
}

QString direction(double azimuth_rad, bool vertical) {
    return direction_words(units::radians(std::remainder(azimuth_rad, 2.0 * std::numbers::pi)), vertical);
}

PowerCurve power_curve(const TierOutlines& tier, int stroke) {
    PowerCurve curve{tier_word(tier.tier), stroke};
    for (const survey::DistanceAtPower& at : tier.over_power) {
        if (at.distance && at.distance->value() > 0.0) {
            curve.points.append({at.power.value(), at.distance->value()});
        }
        if (at.upper && at.upper->value() > 0.0) {
            curve.upper.append({at.power.value(), at.upper->value()});
        }
    }
    return curve;
}

QString band_list(const std::vector<std::string>& bands) {
    QStringList names;
    for (const std::string& band : bands) {
        names << QString::fromStdString(band);
    }
    return names.join(QStringLiteral(", "));
}

} // namespace

SurroundingsPlot surroundings_plot(const KeyingOutlines& outlines, units::UnitSystem system) {
    const design::Design& design = outlines.design;
    if (outlines.tiers.empty()) {
        return no_surroundings_plot(Plots::tr("this limit has no figures at this frequency; choose another"));
    }
    SurroundingsPlot plot;
    plot.frequency_Hz = outlines.frequency.value();
    plot.bands = band_list(outlines.bands);
    plot.limit = outlines.standard.empty() ? Plots::tr("the strictest of the limits chosen")
                                           : QString::fromStdString(outlines.standard);
    for (const TierOutlines& tier : outlines.tiers) {
        if (tier.from_memory) {
            plot.limit += Plots::tr(" (%1: figures from memory)").arg(tier_word(tier.tier));
        }
    }
    plot.conditions = keying_conditions(design);
    plot.free_space = design.site.ground.kind == design::GroundKind::free_space;
    plot.standing_m = plot.free_space ? 0.0 : design.site.standing_level.value.value();
    plot.power_W = design.station.power.value.value();
    plot.system = system;
    if (design.site.people_distance) {
        plot.people_m = design.site.people_distance->value.value();
    }
    const bool vertical = design.site.plane == design::Plane::vertical;
    const double azimuth = outlines.side_azimuth.value();
    const LoopSeen loop = loop_of(design, azimuth);
    plot.above.loop = loop.above;
    plot.above.right = direction(0.0, vertical);
    plot.above.left = direction(std::numbers::pi, vertical);
    plot.side.loop = loop.side;
    plot.side.right = direction(azimuth, vertical);
    plot.side.left = direction(azimuth + std::numbers::pi, vertical);
    int stroke = 0;
    for (const TierOutlines& tier : outlines.tiers) {
        plot.above.curves.append(from_above(tier));
        plot.side.curves.append(from_the_side(tier));
        plot.over_power.append(power_curve(tier, stroke++));
    }
    return plot;
}

bool SurroundingsPlot::has_upper() const {
    return std::all_of(above.curves.begin(), above.curves.end(),
                       [](const OutlineCurve& curve) { return curve.upper_m.has_value(); });
}

SurroundingsPlot no_surroundings_plot(const QString& reason) {
    SurroundingsPlot plot;
    plot.reason = reason;
    return plot;
}

QString place_words(const SurroundingsPlot& plot) {
    return plot.bands.isEmpty() ? exact_frequency(plot.frequency_Hz) : Plots::tr("all planned bands");
}

QString line_words(const SurroundingsPlot& plot) {
    return plot.has_upper()
               ? Plots::tr("Heavy lines: unfavourable end, what counts. Thin: as entered.")
               : Plots::tr("Lines as entered; the unfavourable end is not in them and lies farther out.");
}

QString distances_in_words(const SurroundingsPlot& plot) {
    QStringList parts;
    for (const OutlineCurve& curve : plot.above.curves) {
        parts << (curve.nowhere ? Plots::tr("%1: exceeded nowhere, as computed").arg(curve.label)
                  : curve.cause.isEmpty()
                      ? Plots::tr("%1: not established").arg(curve.label)
                      : Plots::tr("%1: %2 (%3)")
                            .arg(curve.label,
                                 distance_up(units::metres(curve.upper_m.value_or(curve.farthest_m)),
                                             plot.system),
                                 curve.cause));
    }
    return parts.join(QStringLiteral("; "));
}

} // namespace loopwright::models
