#include "models/survey_charts.hpp"

#include "band/emission.hpp"
#include "loop/design_parts.hpp"
#include "loop/fitted_capacitor.hpp"
#include "models/chart_text.hpp"
#include "models/curve_points.hpp"
#include "models/headline.hpp"
#include "models/model_words.hpp"
#include "survey/verdict.hpp"

#include <QStringList>

#include <algorithm>
#include <cmath>

namespace loopwright::models {

namespace {

using loop::Resonance;

constexpr double pico = 1e-12, kilo = 1e3, per_cent = 0.01;
/// 100 % to the sky in every direction alike would be 0 dBi: both scales share this line.
constexpr double dB_per_decade = 10;

double gain_dBi(const Resonance& r) {
    return r.gain_low_angle ? r.gain_low_angle->value : gap;
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
            curve.label = ChartText::tr("%1: %2").arg(compared_name_, curve.label);
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
    ChartContent content{QStringLiteral("efficiency"), ChartText::tr("Efficiency and gain")};
    content.scale = {ChartText::tr("Efficiency, %"), per_cent, true, 1e-5, 1.6};
    content.second = SecondScale{ChartText::tr("Gain, dBi"), dB_per_decade, 1.0};
    Curve curve{QStringLiteral("efficiency"), ChartText::tr("Efficiency"), ChartText::tr("efficiency"),
                Measure::share, Meaning::sky};
    curves.add(content, curve, [](const Resonance& r) { return r.efficiency; });
    curve = {QStringLiteral("gain_low_angle"), // what counts for distance; the best is often straight up
             ChartText::tr("Gain at 15° elevation"),
             ChartText::tr("gain at 15°"),
             Measure::dbi,
             Meaning::figure,
             1};
    curve.second_scale = true;
    curves.add(content, curve, gain_dBi);
    return content;
}

/// Both ends of the range as steps, where something is plugged in on some bands only.
void add_range_steps(ChartContent& content, const survey::Survey& survey) {
    Curve most{QStringLiteral("capacitor_maximum"),
               ChartText::tr("Capacitor's most, as plugged in"),
               ChartText::tr("capacitor's most"),
               Measure::capacitance,
               Meaning::figure,
               1};
    Curve least{QStringLiteral("capacitor_minimum"),
                ChartText::tr("Capacitor's least, as plugged in"),
                ChartText::tr("capacitor's least"),
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
    const QString with = !capacitor.added.empty()            ? ChartText::tr(" with what is added")
                         : capacitor.stray.value.value() > 0 ? ChartText::tr(" with stray")
                                                             : QString();
    content.shades.push_back({low_F, high_F, Meaning::capacitor});
    content.limits.push_back(
        {high_F,
         ChartText::tr("capacitor ends at %1%2").arg(label_text(high_F, units::Dimension::capacitance), with),
         Side::above});
    content.limits.push_back({low_F,
                              ChartText::tr("capacitor starts at %1%2")
                                  .arg(label_text(low_F, units::Dimension::capacitance), with),
                              Side::below});
}

ChartContent capacitance(const Curves& curves, const survey::Survey& survey) {
    const design::Capacitor& capacitor = survey.request.design.capacitor;
    ChartContent content{QStringLiteral("capacitance"), ChartText::tr("Capacitance needed to tune")};
    content.scale = {ChartText::tr("Capacitance, pF"), pico, true, 1e-12, {}};
    curves.add(content,
               {QStringLiteral("tuning_capacitance"), ChartText::tr("Tuning capacitance"),
                ChartText::tr("needed"), Measure::capacitance, Meaning::capacitor},
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
                 ChartText::tr("Usable voltage, peak, as plugged in"),
                 ChartText::tr("usable"),
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
        usable.points.append({point.frequency.value(), here ? limit->limit.value() : gap});
    }
    if (known) {
        content.curves.push_back(std::move(usable));
        if (gaps) {
            content.title += ChartText::tr("; usable: not established where a member has no rating");
        }
    }
    return known;
}

ChartContent voltage(const Curves& curves, const survey::Survey& survey) {
    const design::Design& design = survey.request.design;
    const QString power = label_text(design.station.power.value.value(), units::Dimension::power);
    ChartContent content{QStringLiteral("voltage"),
                         ChartText::tr("Capacitor voltage, peak, at %1").arg(power)};
    content.scale = {ChartText::tr("Voltage, kV peak"), kilo, true, {}, {}};
    curves.add(content,
               {QStringLiteral("capacitor_voltage_peak"), ChartText::tr("Capacitor voltage, peak"),
                ChartText::tr("peak voltage"), Measure::voltage, Meaning::capacitor},
               [](const Resonance& r) { return r.capacitor_voltage_peak.value(); });
    if (!design.capacitor.added.empty()) { // no one line holds on every band
        if (!add_usable_voltage(content, survey)) {
            content.title += ChartText::tr("; usable: not established, a member has no rating");
        }
    } else if (design.capacitor.rating.peak_voltage) {
        const double rating_V = design.capacitor.rating.peak_voltage->value.value();
        content.limits.push_back(
            {rating_V, ChartText::tr("rated %1 peak").arg(label_text(rating_V, units::Dimension::voltage)),
             Side::above});
    } else if (!design.capacitor.rating.gap) { // what a gap stands is no straight line: the board has it
        content.title = ChartText::tr("Capacitor voltage, peak, at %1; no rating given").arg(power);
    }
    return content;
}

ChartContent quality(const Curves& curves) {
    ChartContent content{QStringLiteral("q"), ChartText::tr("Q, unloaded (loaded and matched: half of it)")};
    content.scale = {ChartText::tr("Q, unloaded"), 1.0, true, {}, {}};
    curves.add(content,
               {QStringLiteral("q_unloaded"), ChartText::tr("Q, unloaded"), ChartText::tr("Q unloaded"),
                Measure::number, Meaning::figure},
               [](const Resonance& r) { return r.q_unloaded; });
    return content;
}

ChartContent bandwidth(const Curves& curves, const survey::Request& request) {
    ChartContent content{QStringLiteral("bandwidth"), ChartText::tr("Bandwidth, matched")};
    content.scale = {ChartText::tr("Bandwidth, kHz"), kilo, true, {}, {}};
    const QString vswr = label_text(request.vswr_limit, units::Dimension::number);
    curves.add(content,
               {QStringLiteral("bandwidth_vswr"), ChartText::tr("Bandwidth, VSWR up to\u00a0%1").arg(vswr),
                ChartText::tr("VSWR %1").arg(vswr), Measure::frequency, Meaning::figure},
               [](const Resonance& r) { return r.bandwidth_vswr.value(); });
    curves.add(content,
               {QStringLiteral("bandwidth_half_power"), ChartText::tr("Bandwidth, half power"),
                ChartText::tr("half power"), Measure::frequency, Meaning::figure, 1},
               [](const Resonance& r) { return r.bandwidth_half_power.value(); });
    if (const auto emission = band::find_emission(request.design.station.emission)) {
        const double width_Hz = emission->working_width.value();
        content.limits.push_back({width_Hz,
                                  ChartText::tr("%1 works in %2")
                                      .arg(QString::fromStdString(emission->name),
                                           label_text(width_Hz, units::Dimension::frequency)),
                                  Side::below});
    }
    return content;
}

ChartContent losses(const Curves& curves) {
    ChartContent content{QStringLiteral("losses"), ChartText::tr("Where the power goes")};
    content.scale = {ChartText::tr("Share of the power, %"), per_cent, false, 0.0, 1.0};
    const auto curve = [](const char* id, const QString& name, const QString& label, Meaning meaning,
                          int stroke) {
        return Curve{QString::fromLatin1(id), name, label, Measure::share, meaning, stroke};
    };
    curves.add(
        content,
        curve("share_radiation", ChartText::tr("Share radiated"), ChartText::tr("radiated"), Meaning::sky, 0),
        [](const Resonance& r) { return share(r.resistance.radiation, r); });
    curves.add(content,
               curve("share_conductor", ChartText::tr("Share in the conductor"), ChartText::tr("conductor"),
                     Meaning::conductor, 1),
               [](const Resonance& r) { return share(r.resistance.conductor, r); });
    curves.add(content,
               curve("share_capacitor", ChartText::tr("Share in the capacitor"), ChartText::tr("capacitor"),
                     Meaning::capacitor, 2),
               [](const Resonance& r) { return share(r.resistance.capacitor, r); });
    if (curves.any([](const Resonance& r) { return r.resistance.joints.value() > 0; })) {
        curves.add(content,
                   curve("share_joints", ChartText::tr("Share in the joints"), ChartText::tr("joints"),
                         Meaning::joints, 3),
                   [](const Resonance& r) { return share(r.resistance.joints, r); });
    }
    if (curves.any([](const Resonance& r) { return r.resistance.ground.has_value(); })) {
        curves.add(
            content,
            curve("share_ground", ChartText::tr("Share in the ground"), ChartText::tr("ground"),
                  Meaning::soil, 4),
            [](const Resonance& r) { return r.resistance.ground ? share(*r.resistance.ground, r) : gap; });
    }
    return content;
}

QString zone_words(const loop::OperatingPoint& point) {
    if (!point.resonance) {
        return ChartText::tr("not established");
    }
    return point.resonance->in_capacitor_range ? QString() : ChartText::tr("out of reach");
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
    parts << ChartText::tr("%1 accepted, peak envelope power")
                 .arg(label_text(request.design.station.power.value.value(), units::Dimension::power));
    if (const auto emission = band::find_emission(request.design.station.emission)) {
        parts << QString::fromStdString(emission->name);
    }
    parts << ChartText::tr("VSWR up to %1").arg(label_text(request.vswr_limit, units::Dimension::number));
    return parts.join(QStringLiteral(" · "));
}

} // namespace loopwright::models
