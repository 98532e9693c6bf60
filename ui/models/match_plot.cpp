#include "models/match_plot.hpp"

#include "models/chart_content.hpp"
#include "models/chart_text.hpp"
#include "models/quantity_words.hpp"

#include <QCoreApplication>

#include <algorithm>
#include <cmath>

namespace loopwright::models {

namespace {

constexpr double hertz_a_kilohertz = 1e3;

/// Where between two points of the curve VSWR reaches the limit, as a share of the way. Impedance goes with
/// frequency as a fraction of two straight lines about one resonance, and so does reflection: through three
/// points, the third on the inner side, it is exact there, while a chord of VSWR would cost some per cent of
/// the bandwidth.
double crossing_share(const MatchPlotPoint* before, const MatchPlotPoint& inside,
                      const MatchPlotPoint& outside, double line_ohm, double limit) {
    using Complex = std::complex<double>;
    const auto reflection = [&](const MatchPlotPoint& point) {
        return (point.input_ohm - line_ohm) / (point.input_ohm + line_ohm);
    };
    const Complex here = reflection(inside), there = reflection(outside);
    Complex bend = 0;
    if (before != nullptr && before->offset_Hz != inside.offset_Hz) {
        const Complex back = reflection(*before);
        const double r = (before->offset_Hz - inside.offset_Hz) / (inside.offset_Hz - outside.offset_Hz);
        if (std::abs(there - back) > 1e-9) {
            bend = (here * (1 + r) - r * there - back) / (r * (there - back));
        }
    }
    const Complex slope = there * (1.0 + bend) - here;
    const double wanted = (limit - 1) / (limit + 1);
    double low = 0, high = 1;
    for (int i = 0; i < 40; ++i) {
        const double middle = (low + high) / 2;
        (std::abs((here + middle * slope) / (1.0 + middle * bend)) < wanted ? low : high) = middle;
    }
    return low;
}

/// The offset nearest to zero on one side of the match at which the limit is reached. direction: -1 or 1.
std::optional<double> crossing(const QList<MatchPlotPoint>& curve, double line_ohm, double limit,
                               int direction) {
    const auto nearest =
        std::min_element(curve.begin(), curve.end(), [](const MatchPlotPoint& a, const MatchPlotPoint& b) {
            return std::abs(a.offset_Hz) < std::abs(b.offset_Hz);
        });
    if (nearest == curve.end() || nearest->vswr > limit) {
        return std::nullopt;
    }
    qsizetype i = nearest - curve.begin();
    for (; i + direction >= 0 && i + direction < curve.size(); i += direction) {
        const MatchPlotPoint& inside = curve[i];
        const MatchPlotPoint& outside = curve[i + direction];
        if (outside.vswr > limit) {
            const bool first = i - direction < 0 || i - direction >= curve.size();
            const MatchPlotPoint* before = first ? nullptr : &curve[i - direction];
            const double share = crossing_share(before, inside, outside, line_ohm, limit);
            return inside.offset_Hz + share * (outside.offset_Hz - inside.offset_Hz);
        }
    }
    return std::nullopt;
}

QString conditions_of(units::Resistance line) {
    return ChartText::tr("full-wave model · line of %1")
        .arg(plain_number(line.value(), 4) + QStringLiteral("\u2009\u03a9"));
}

} // namespace

std::optional<double> MatchPlot::bandwidth_Hz() const {
    if (!lower_Hz || !upper_Hz) {
        return std::nullopt;
    }
    return *upper_Hz - *lower_Hz;
}

MatchPlot match_plot(const coupling::Match& match, const std::vector<coupling::MatchPoint>& curve,
                     units::Resistance line, double vswr_limit) {
    MatchPlot plot;
    plot.frequency_Hz = match.frequency.value();
    plot.line_ohm = line.value();
    plot.vswr_limit = vswr_limit;
    plot.match_ohm = match.input.value();
    plot.match_vswr = match.vswr;
    for (const coupling::MatchPoint& point : curve) {
        plot.curve.append({(point.frequency - match.frequency).value(), point.input.value(), point.vswr});
    }
    if (match.vswr <= vswr_limit) {
        plot.lower_Hz = crossing(plot.curve, plot.line_ohm, vswr_limit, -1);
        plot.upper_Hz = crossing(plot.curve, plot.line_ohm, vswr_limit, 1);
    }
    plot.conditions = conditions_of(line);
    return plot;
}

MatchPlot no_match_plot(const QString& reason, units::Resistance line, double vswr_limit) {
    MatchPlot plot;
    plot.line_ohm = line.value();
    plot.vswr_limit = vswr_limit;
    plot.reason = reason;
    plot.conditions = conditions_of(line);
    return plot;
}

QString impedance_text(std::complex<double> ohm) {
    const QString sign = ohm.imag() < 0 ? QStringLiteral("\u2212") : QStringLiteral("+");
    return QStringLiteral("%1 %2 j%3\u2009\u03a9")
        .arg(plain_number(ohm.real(), 3), sign, plain_number(std::abs(ohm.imag()), 3));
}

QString exact_frequency(double hertz) {
    return given_text(hertz, units::Dimension::frequency, units::UnitSystem::metric)
        .replace(QLatin1Char(' '), QStringLiteral("\u2009"));
}

QString offset_text(double hertz) {
    const QString sign = hertz > 0 ? QStringLiteral("+") : QString();
    return sign + plain_number(hertz / hertz_a_kilohertz, 3) + QStringLiteral("\u2009kHz");
}

QString match_words(const MatchPlot& plot) {
    if (!plot.established()) {
        return ChartText::tr("Not established: %1").arg(plot.reason);
    }
    return ChartText::tr("Match at %1: %2, VSWR %3")
        .arg(exact_frequency(plot.frequency_Hz), impedance_text(plot.match_ohm),
             plain_number(plot.match_vswr, 3));
}

QString bandwidth_words(const MatchPlot& plot) {
    if (!plot.established()) {
        return {};
    }
    const QString limit = plain_number(plot.vswr_limit, 3);
    if (plot.match_vswr > plot.vswr_limit) {
        return ChartText::tr("VSWR above %1 even at the match").arg(limit);
    }
    if (const auto width = plot.bandwidth_Hz()) {
        return ChartText::tr("VSWR %1 or less over %2").arg(limit, measured_text(Measure::frequency, *width));
    }
    return ChartText::tr("VSWR %1 or less beyond the frequencies shown").arg(limit);
}

} // namespace loopwright::models
