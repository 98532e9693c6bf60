#include "models/survey_charts.hpp"

#include "band/emission.hpp"
#include "loop/design_parts.hpp"
#include "loop/fitted_capacitor.hpp"
#include "models/headline.hpp"
#include "models/model_words.hpp"
#include "survey/verdict.hpp"

#include <QStringList>

#include <algorithm>
#include <cmath>
#include <limits>

namespace loopwright::models {

namespace {

struct Charts {
    Q_DECLARE_TR_FUNCTIONS(Charts)
};

using loop::Resonance;

constexpr double not_established = std::numeric_limits<double>::quiet_NaN();
constexpr double pico = 1e-12, kilo = 1e3, per_cent = 0.01;
/// 100 % to the sky in every direction alike would be 0 dBi: both scales share this line.
constexpr double dB_per_decade = 10;

template <class Figure>
QList<QPointF> points_of(const survey::Survey& survey, const Figure& figure) {
    QList<QPointF> points;
    points.reserve(static_cast<qsizetype>(survey.curve.size()));
    for (const loop::OperatingPoint& point : survey.curve) {
        points.append(
            {point.frequency.value(), point.resonance ? figure(*point.resonance) : not_established});
    }
    return points;
}

double gain_dBi(const Resonance& r) {
    return r.gain_low_angle ? r.gain_low_angle->value : not_established;
}

double share(units::Resistance part, const Resonance& r) {
    return part / r.resistance.total();
}

/// Collects the curves of one chart from both designs.
class Curves {
public:
    Curves(const survey::Survey& survey, const survey::Survey* compared, QString compared_name)
        : survey_(survey), compared_(compared), compared_name_(std::move(compared_name)) {}

    template <class Figure>
    void add(ChartContent& content, Curve curve, const Figure& figure) const {
        curve.points = points_of(survey_, figure);
        content.curves.push_back(curve);
        if (compared_ != nullptr) {
            curve.compared = true;
            curve.points = points_of(*compared_, figure);
            curve.label = Charts::tr("%1: %2").arg(compared_name_, curve.label);
            content.curves.push_back(std::move(curve));
        }
    }
    template <class Test>
    [[nodiscard]] bool any(const Test& test) const {
        const auto in = [&](const survey::Survey& survey) {
            return std::any_of(
                survey.curve.begin(), survey.curve.end(),
                [&](const loop::OperatingPoint& point) { return point.resonance && test(*point.resonance); });
        };
        return in(survey_) || (compared_ != nullptr && in(*compared_));
    }

private:
    const survey::Survey& survey_;
    const survey::Survey* compared_;
    QString compared_name_;
};

ChartContent efficiency(const Curves& curves) {
    ChartContent content{QStringLiteral("efficiency"), Charts::tr("Efficiency and gain")};
    content.scale = {Charts::tr("Efficiency, %"), per_cent, true, 1e-5, 1.6};
    content.second = SecondScale{Charts::tr("Gain, dBi"), dB_per_decade, 1.0};
    Curve curve{QStringLiteral("efficiency"), Charts::tr("Efficiency"), Charts::tr("efficiency"),
                Measure::share, Meaning::sky};
    curves.add(content, curve, [](const Resonance& r) { return r.efficiency; });
    curve = {
        QStringLiteral("gain_low_angle"), // what counts for distance; the best is often straight up
        Charts::tr("Gain at 15° elevation"), Charts::tr("gain at 15°"), Measure::dbi, Meaning::figure, 1};
    curve.second_scale = true;
    curves.add(content, curve, gain_dBi);
    return content;
}

/// Both ends of the range as steps, where something is plugged in on some bands only.
void add_range_steps(ChartContent& content, const survey::Survey& survey) {
    Curve most{QStringLiteral("capacitor_maximum"),
               Charts::tr("Capacitor's most, with what is plugged in"),
               Charts::tr("capacitor's most"),
               Measure::capacitance,
               Meaning::figure,
               1};
    Curve least{QStringLiteral("capacitor_minimum"),
                Charts::tr("Capacitor's least, with what is plugged in"),
                Charts::tr("capacitor's least"),
                Measure::capacitance,
                Meaning::figure,
                2};
    for (const loop::OperatingPoint& point : survey.curve) {
        const auto range = loop::capacitor_range_at(survey.request.design, point.frequency);
        most.points.append({point.frequency.value(), range.high.value()});
        least.points.append({point.frequency.value(), range.low.value()});
    }
    content.curves.push_back(std::move(most));
    content.curves.push_back(std::move(least));
}

/// Both ends of the range as lines with words.
void add_range_limits(ChartContent& content, const design::Capacitor& capacitor) {
    const auto range = loop::capacitor_range(capacitor);
    const double low_F = range.low.value();
    const double high_F = range.high.value();
    const QString with = !capacitor.added.empty()            ? Charts::tr(" with what is added")
                         : capacitor.stray.value.value() > 0 ? Charts::tr(" with stray")
                                                             : QString();
    content.shades.push_back({low_F, high_F, Meaning::capacitor});
    content.limits.push_back(
        {high_F,
         Charts::tr("capacitor ends at %1%2").arg(given_text(high_F, units::Dimension::capacitance), with),
         Side::above});
    content.limits.push_back(
        {low_F,
         Charts::tr("capacitor starts at %1%2").arg(given_text(low_F, units::Dimension::capacitance), with),
         Side::below});
}

ChartContent capacitance(const Curves& curves, const survey::Survey& survey) {
    const design::Capacitor& capacitor = survey.request.design.capacitor;
    ChartContent content{QStringLiteral("capacitance"), Charts::tr("Capacitance needed to tune")};
    content.scale = {Charts::tr("Capacitance, pF"), pico, true, 1e-12, {}};
    curves.add(content,
               {QStringLiteral("tuning_capacitance"), Charts::tr("Tuning capacitance"), Charts::tr("needed"),
                Measure::capacitance, Meaning::capacitor},
               [](const Resonance& r) { return r.tuning_capacitance.value(); });
    const bool plugged = std::any_of(capacitor.added.begin(), capacitor.added.end(),
                                     [](const design::AddedCapacitor& each) { return !each.bands.empty(); });
    if (plugged) {
        add_range_steps(content, survey);
    } else {
        add_range_limits(content, capacitor);
    }
    return content;
}

/// What stands across the capacitor at most by its ratings, with what is plugged in; gaps where a member
/// there has none. False where no rating counts anywhere.
bool add_usable_voltage(ChartContent& content, const survey::Survey& survey) {
    Curve usable{QStringLiteral("usable_voltage"),
                 Charts::tr("Usable voltage, peak, with what is plugged in"),
                 Charts::tr("usable"),
                 Measure::voltage,
                 Meaning::figure,
                 1};
    bool known = false, gaps = false;
    for (const loop::OperatingPoint& point : survey.curve) {
        const auto limit =
            point.resonance ? survey::voltage_limit(point, survey.request.design) : std::nullopt;
        const bool here = limit && !limit->unrated_members;
        known = known || here;
        gaps = gaps || (point.resonance && !here);
        usable.points.append({point.frequency.value(), here ? limit->limit.value() : not_established});
    }
    if (known) {
        content.curves.push_back(std::move(usable));
        if (gaps) {
            content.title += Charts::tr("; usable: not established where a member has no rating");
        }
    }
    return known;
}

ChartContent voltage(const Curves& curves, const survey::Survey& survey) {
    const design::Design& design = survey.request.design;
    const QString power = given_text(design.station.power.value.value(), units::Dimension::power);
    ChartContent content{QStringLiteral("voltage"), Charts::tr("Capacitor voltage, peak, at %1").arg(power)};
    content.scale = {Charts::tr("Voltage, kV peak"), kilo, true, {}, {}};
    curves.add(content,
               {QStringLiteral("capacitor_voltage_peak"), Charts::tr("Capacitor voltage, peak"),
                Charts::tr("peak voltage"), Measure::voltage, Meaning::capacitor},
               [](const Resonance& r) { return r.capacitor_voltage_peak.value(); });
    if (!design.capacitor.added.empty()) { // no one line holds on every band
        if (!add_usable_voltage(content, survey)) {
            content.title += Charts::tr("; usable: not established, a member has no rating");
        }
    } else if (design.capacitor.rating.peak_voltage) {
        const double rating_V = design.capacitor.rating.peak_voltage->value.value();
        content.limits.push_back(
            {rating_V, Charts::tr("rated %1 peak").arg(given_text(rating_V, units::Dimension::voltage)),
             Side::above});
    } else if (!design.capacitor.rating.gap) { // what a gap stands is no straight line: the board has it
        content.title = Charts::tr("Capacitor voltage, peak, at %1; no rating given").arg(power);
    }
    return content;
}

ChartContent quality(const Curves& curves) {
    ChartContent content{QStringLiteral("q"), Charts::tr("Q, unloaded (loaded and matched: half of it)")};
    content.scale = {Charts::tr("Q, unloaded"), 1.0, true, {}, {}};
    curves.add(content,
               {QStringLiteral("q_unloaded"), Charts::tr("Q, unloaded"), Charts::tr("Q unloaded"),
                Measure::number, Meaning::figure},
               [](const Resonance& r) { return r.q_unloaded; });
    return content;
}

ChartContent bandwidth(const Curves& curves, const survey::Request& request) {
    ChartContent content{QStringLiteral("bandwidth"), Charts::tr("Bandwidth, matched")};
    content.scale = {Charts::tr("Bandwidth, kHz"), kilo, true, {}, {}};
    const QString vswr = given_text(request.vswr_limit, units::Dimension::number);
    curves.add(content,
               {QStringLiteral("bandwidth_vswr"), Charts::tr("Bandwidth, VSWR up to %1").arg(vswr),
                Charts::tr("VSWR %1").arg(vswr), Measure::frequency, Meaning::figure},
               [](const Resonance& r) { return r.bandwidth_vswr.value(); });
    curves.add(content,
               {QStringLiteral("bandwidth_half_power"), Charts::tr("Bandwidth, half power"),
                Charts::tr("half power"), Measure::frequency, Meaning::figure, 1},
               [](const Resonance& r) { return r.bandwidth_half_power.value(); });
    if (const auto emission = band::find_emission(request.design.station.emission)) {
        const double width_Hz = emission->working_width.value();
        content.limits.push_back({width_Hz,
                                  Charts::tr("%1 works in %2")
                                      .arg(QString::fromStdString(emission->name),
                                           given_text(width_Hz, units::Dimension::frequency)),
                                  Side::below});
    }
    return content;
}

ChartContent losses(const Curves& curves) {
    ChartContent content{QStringLiteral("losses"), Charts::tr("Where the power goes")};
    content.scale = {Charts::tr("Share of the power, %"), per_cent, false, 0.0, 1.0};
    const auto curve = [](const char* id, const QString& name, const QString& label, Meaning meaning,
                          int stroke) {
        return Curve{QString::fromLatin1(id), name, label, Measure::share, meaning, stroke};
    };
    curves.add(
        content,
        curve("share_radiation", Charts::tr("Share radiated"), Charts::tr("radiated"), Meaning::sky, 0),
        [](const Resonance& r) { return share(r.resistance.radiation, r); });
    curves.add(content,
               curve("share_conductor", Charts::tr("Share in the conductor"), Charts::tr("conductor"),
                     Meaning::conductor, 1),
               [](const Resonance& r) { return share(r.resistance.conductor, r); });
    curves.add(content,
               curve("share_capacitor", Charts::tr("Share in the capacitor"), Charts::tr("capacitor"),
                     Meaning::capacitor, 2),
               [](const Resonance& r) { return share(r.resistance.capacitor, r); });
    if (curves.any([](const Resonance& r) { return r.resistance.joints.value() > 0; })) {
        curves.add(content,
                   curve("share_joints", Charts::tr("Share in the joints"), Charts::tr("joints"),
                         Meaning::joints, 3),
                   [](const Resonance& r) { return share(r.resistance.joints, r); });
    }
    if (curves.any([](const Resonance& r) { return r.resistance.ground.has_value(); })) {
        curves.add(
            content,
            curve("share_ground", Charts::tr("Share in the ground"), Charts::tr("ground"), Meaning::soil, 4),
            [](const Resonance& r) {
                return r.resistance.ground ? share(*r.resistance.ground, r) : not_established;
            });
    }
    return content;
}

QString zone_words(const loop::OperatingPoint& point) {
    if (!point.resonance) {
        return Charts::tr("not established");
    }
    return point.resonance->in_capacitor_range ? QString() : Charts::tr("out of reach");
}

/// Runs of frequencies with the same words; they meet halfway (on the logarithmic scale) between points.
std::vector<Zone> zones_of(const survey::Survey& survey) {
    std::vector<Zone> zones;
    const auto& curve = survey.curve;
    for (std::size_t i = 0; i < curve.size(); ++i) {
        const QString words = zone_words(curve[i]);
        const double here = curve[i].frequency.value();
        const double from = i == 0 ? here : std::sqrt(here * curve[i - 1].frequency.value());
        const double to = i + 1 == curve.size() ? here : std::sqrt(here * curve[i + 1].frequency.value());
        if (!zones.empty() && zones.back().words == words) {
            zones.back().to_Hz = to;
        } else {
            zones.push_back({from, to, words});
        }
    }
    std::erase_if(zones, [](const Zone& zone) { return zone.words.isEmpty(); });
    return zones;
}

} // namespace

std::vector<ChartContent> survey_charts(const survey::Survey& survey, const survey::Survey* compared,
                                        const QString& compared_name) {
    const Curves curves(survey, compared, compared_name);
    const design::Design& design = survey.request.design;
    std::vector<ChartContent> charts = {
        efficiency(curves), capacitance(curves, survey),       voltage(curves, survey),
        quality(curves),    bandwidth(curves, survey.request), losses(curves)};
    std::vector<BandStripe> stripes;
    for (const band::Band& band : band::bands_of(design.station.region)) {
        stripes.push_back({QString::fromStdString(band.name), band.low.value(), band.high.value()});
    }
    const std::vector<Zone> zones = zones_of(survey);
    for (ChartContent& chart : charts) {
        chart.bands = stripes;
        chart.zones = zones;
        chart.from_Hz = survey.request.from.value();
        chart.to_Hz = survey.request.to.value();
    }
    return charts;
}

QString conditions(const survey::Survey& survey) {
    const survey::Request& request = survey.request;
    QStringList parts;
    parts << model_and_ground(request.model, request.design.site.ground);
    parts << Charts::tr("%1 accepted, peak envelope power")
                 .arg(given_text(request.design.station.power.value.value(), units::Dimension::power));
    if (const auto emission = band::find_emission(request.design.station.emission)) {
        parts << QString::fromStdString(emission->name);
    }
    parts << Charts::tr("VSWR up to %1").arg(given_text(request.vswr_limit, units::Dimension::number));
    return parts.join(QStringLiteral(" · "));
}

} // namespace loopwright::models
