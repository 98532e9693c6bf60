#include "models/match_words.hpp"

#include "models/model_words.hpp"
#include "models/quantity_words.hpp"

#include <QCoreApplication>

#include <cmath>
#include <complex>

namespace loopwright::models {

namespace {

struct MatchWords {
    Q_DECLARE_TR_FUNCTIONS(MatchWords)
};

QString vswr_text(double vswr) {
    return vswr < 100.0 ? QString::number(vswr, 'f', 2) : MatchWords::tr("over 100");
}

Headline line(const char* id, const QString& label) {
    return {QLatin1String(id), label, MatchWords::tr("not established"), {}, {}, false, {}, {}};
}

void give(Headline& headline, const QString& value, const QString& remark,
          Standing standing = Standing::plain) {
    headline.value = value;
    headline.remark = remark;
    headline.standing = standing;
    headline.established = true;
}

void fill(std::vector<Headline>& lines, const coupling::MatchReport& report, double vswr_limit) {
    const coupling::Match& match = *report.match;
    const QString line_text = short_text(report.line.value(), units::Dimension::resistance);
    give(lines[0], vswr_text(match.vswr), MatchWords::tr("on %1, capacitor set for the least").arg(line_text),
         match.vswr <= vswr_limit ? Standing::good : Standing::doubtful);
    give(lines[1], impedance_text({match.input.value().real(), match.input.value().imag()}),
         MatchWords::tr("at the feed point"));
    give(lines[2], QString::fromStdString(units::shown(match.tuning_capacitance)),
         report.in_capacitor_range ? MatchWords::tr("in reach") : MatchWords::tr("out of reach"),
         report.in_capacitor_range ? Standing::good : Standing::bad);
    if (report.bandwidth) {
        give(lines[3], QString::fromStdString(units::shown(*report.bandwidth)),
             MatchWords::tr("at the feed point, capacitor left"));
    } else {
        lines[3].reason = MatchWords::tr("The match does not get below the limit.");
    }
    if (report.feed_line) {
        Headline radio = line("match.vswr_at_radio", MatchWords::tr("VSWR at the radio"));
        give(radio, vswr_text(report.vswr_at_radio),
             MatchWords::tr("the line takes %1")
                 .arg(decibels(report.feed_line->total_loss, QStringLiteral("dB"))));
        lines.insert(lines.begin() + 2, radio);
    }
}

} // namespace

std::vector<Headline> match_headlines(const coupling::MatchReport& report, double vswr_limit) {
    std::vector<Headline> lines = {
        line("match.vswr", MatchWords::tr("VSWR at the coupling")),
        line("match.input", MatchWords::tr("Input impedance")),
        line("match.capacitance", MatchWords::tr("Capacitance of the match")),
        line("match.bandwidth", MatchWords::tr("VSWR up to %1 over").arg(plain_number(vswr_limit, 3)))};
    if (report.match) {
        fill(lines, report, vswr_limit);
    }
    for (Headline& one : lines) {
        one.model = model_name(loop::Model::full_wave);
        if (!one.established && one.reason.isEmpty()) {
            one.reason = reason_not_established(report.alone);
        }
    }
    return lines;
}

MatchPlot plot_of(const coupling::MatchReport& report, double vswr_limit) {
    if (!report.match) {
        return no_match_plot(reason_not_established(report.alone), report.line, vswr_limit);
    }
    std::vector<coupling::MatchPoint> curve;
    for (const coupling::CurveRow& row : report.curve) {
        curve.push_back(row.point);
    }
    return match_plot(*report.match, curve, report.line, vswr_limit);
}

QString size_name(design::CouplingKind kind) {
    switch (kind) {
    case design::CouplingKind::loop:
        return MatchWords::tr("Coupling loop diameter");
    case design::CouplingKind::tap:
        return MatchWords::tr("Tap length");
    case design::CouplingKind::transformer:
        return MatchWords::tr("Turns of the line");
    }
    return {};
}

namespace {
QString size_text(design::CouplingKind kind, double size, units::UnitSystem system) {
    if (kind == design::CouplingKind::transformer) {
        const int turns = static_cast<int>(size);
        return turns == 1 ? MatchWords::tr("1 turn") : MatchWords::tr("%1 turns").arg(turns);
    }
    constexpr double millimetre = 1e-3; // what can be built
    return short_text(millimetre * std::round(size / millimetre), units::Dimension::length, system);
}
} // namespace

QString size_text(const design::Coupling& coupling, units::UnitSystem system) {
    switch (coupling.kind) {
    case design::CouplingKind::loop:
        return short_text(coupling.diameter, system);
    case design::CouplingKind::tap:
        return short_text(coupling.tap_length, system);
    case design::CouplingKind::transformer:
        return size_text(coupling.kind, coupling.turns, system);
    }
    return {};
}

QString coupling_model_words(design::CouplingKind kind) {
    switch (kind) {
    case design::CouplingKind::loop:
        return MatchWords::tr("Solved as a wire together with the loop.");
    case design::CouplingKind::tap:
        return MatchWords::tr("A circuit model beside the full-wave loop: the inductances of rod, links and "
                              "tapped conductor. The figures show the way; trim the rod on the meter.");
    case design::CouplingKind::transformer:
        return MatchWords::tr("A circuit model in series with the full-wave loop: turns, inductance, loss "
                              "and leakage of the core as entered. Saturation, heating and the winding's "
                              "capacitance are not in it.");
    }
    return {};
}

QString sizing_words(const coupling::FeedSize& found, const QStringList& names, units::UnitSystem system) {
    if (!found.size) {
        return {};
    }
    QStringList each;
    for (qsizetype i = 0; i < static_cast<qsizetype>(found.rows.size()); ++i) {
        const coupling::FeedSizeRow& row = found.rows[static_cast<std::size_t>(i)];
        const QString reach = row.in_capacitor_range ? QString() : MatchWords::tr(" (out of reach)");
        each << (row.match
                     ? MatchWords::tr("%1 on %2%3").arg(vswr_text(row.match->vswr), names.value(i), reach)
                     : MatchWords::tr("not established on %1").arg(names.value(i)));
    }
    return MatchWords::tr("%1: VSWR %2")
        .arg(size_text(found.kind, *found.size, system), each.join(QStringLiteral(", ")));
}

} // namespace loopwright::models
