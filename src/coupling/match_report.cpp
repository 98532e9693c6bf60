#include "coupling/match_report.hpp"

#include "capacitor/capacitor.hpp"
#include "loop/fitted_capacitor.hpp"

#include <algorithm>
#include <array>
#include <cmath>

namespace loopwright::coupling {

namespace {

constexpr int curve_points = 41;
constexpr double poor_vswr = 3.0;

/// 1, 2 or 5 times a power of ten, nearest in ratio.
double round_step(double value) {
    const double decade = std::pow(10.0, std::floor(std::log10(value)));
    double best = decade;
    for (const double step : {2 * decade, 5 * decade, 10 * decade}) {
        if (std::abs(std::log(step / value)) < std::abs(std::log(best / value))) {
            best = step;
        }
    }
    return best;
}

/// Offsets that move the resonance by about a quarter to four half widths, each side, and none.
std::vector<units::Capacitance> offsets_of(const Match& match, double q_unloaded) {
    const double half_width_F = match.tuning_capacitance.value() / q_unloaded;
    std::vector<double> steps;
    for (const double widths : {0.25, 0.5, 1.0, 2.0, 4.0}) {
        const double step = round_step(widths * half_width_F);
        if (step < 0.9 * match.tuning_capacitance.value() && (steps.empty() || step > 1.01 * steps.back())) {
            steps.push_back(step);
        }
    }
    std::vector<units::Capacitance> offsets{units::farads(0)};
    for (const double step : steps) {
        offsets.insert(offsets.begin(), units::farads(-step));
        offsets.push_back(units::farads(step));
    }
    return offsets;
}

FeedLine line_of(const design::FeedLine& given) {
    FeedLine line{given.length.value, given.impedance.value, {}};
    for (const design::LineLoss& point : given.loss) {
        line.loss.push_back({point.frequency.value, point.loss.value.dB_per_m});
    }
    return line;
}

void fill_curves(MatchReport& report, const CoupledLoop& coupled, double vswr_limit,
                 const auto& vswr_at_radio, const base::StopToken& stop) {
    const Match& match = *report.match;
    const loop::Resonance& own = *report.alone.resonance;
    const units::Frequency span =
        std::min(4.0 * own.bandwidth_half_power, units::Frequency(0.3 * match.frequency));
    for (const MatchPoint& point : coupled.curve(match, span, curve_points)) {
        report.curve.push_back({point, vswr_at_radio(point.vswr)});
    }
    if (stop.stop_requested()) {
        return;
    }
    for (const Mistuning& row : coupled.mistuning(match, offsets_of(match, own.q_unloaded))) {
        report.mistuning.push_back({row, vswr_at_radio(row.vswr)});
    }
    report.bandwidth = coupled.bandwidth(match, vswr_limit);
}

void add_match_notices(MatchReport& report, const design::Design& design) {
    if (report.match->vswr > poor_vswr) {
        report.notices.add({"match_poor", base::Severity::caution,
                            "The coupling does not match the line here, whatever the capacitor: another "
                            "size of coupling is needed.",
                            report.match->vswr / poor_vswr});
    }
    if (design.feed_line && design.feed_line->loss.empty() && design.feed_line->length.value.value() > 0) {
        report.notices.add({"feed_line_without_loss", base::Severity::caution,
                            "No loss is given for the feed line: it is taken as none.", 0});
    }
    if (!report.in_capacitor_range) {
        report.notices.add({"match_out_of_range", base::Severity::caution,
                            "The capacitor does not reach the capacitance of this match.", 1});
    }
}

} // namespace

MatchReport match_report(const design::Design& design, units::Frequency frequency, units::Power power,
                         double vswr_limit, const base::StopToken& stop) {
    MatchReport report;
    report.complete = false;
    report.line = design.feed_line ? design.feed_line->impedance.value : units::ohms(50);
    const CoupledLoop coupled(design, report.line);
    if (stop.stop_requested()) {
        return report;
    }
    report.alone = coupled.alone().at(frequency, power, vswr_limit);
    report.notices = report.alone.notices;
    if (!report.alone.resonance || stop.stop_requested()) {
        report.complete = !stop.stop_requested();
        return report;
    }
    report.notices.merge(coupled.notices(frequency));
    report.match = coupled.match(frequency, *report.alone.resonance);
    report.in_capacitor_range =
        loop::capacitor_at(design, frequency).can_supply(report.match->tuning_capacitance);
    report.efficiency = report.alone.resonance->efficiency * (1 - report.match->own_loss_share);
    units::Decibel matched{0};
    if (design.feed_line) {
        matched = matched_loss(line_of(*design.feed_line), frequency, &report.notices);
        const LineEnd end = line_end(matched, report.match->vswr);
        report.feed_line = LineShare{matched, end.total_loss};
    }
    const auto vswr_at_radio = [matched](double at_feed) {
        return matched.value > 0 ? line_end(matched, at_feed).vswr_at_radio : at_feed;
    };
    report.vswr_at_radio = vswr_at_radio(report.match->vswr);
    if (stop.stop_requested()) {
        return report;
    }
    fill_curves(report, coupled, vswr_limit, vswr_at_radio, stop);
    report.complete = !stop.stop_requested();
    add_match_notices(report, design);
    return report;
}

} // namespace loopwright::coupling
