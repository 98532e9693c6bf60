#include "survey/detail/card_band.hpp"

#include "band/band.hpp"
#include "loop/design_parts.hpp"
#include "survey/verdict.hpp"
#include "units/constants.hpp"

#include <algorithm>
#include <cmath>
#include <utility>

namespace loopwright::survey::detail {
namespace {

/// 1/w^2 [s^2]: what the needed capacitance goes with in a straight line.
double inverse_square(units::Frequency frequency) {
    const double omega = 2 * units::constants::pi * frequency.value();
    return 1 / (omega * omega);
}

units::Frequency usable_low(const CardRow& row) {
    return std::min(*row.usable_span, row.usable_span_range.low);
}

/// Whether the span of the row, unfavourable end, holds a stretch of frequencies.
bool holds(const CardRow& row, units::Frequency low, units::Frequency high) {
    const units::Frequency half = usable_low(row) / 2.0;
    return low >= row.tuned() - half && high <= row.tuned() + half;
}

bool holds_window(const CardRow& row, const CardRow& other) {
    const units::Frequency half = other.emission.working_width / 2.0;
    return holds(row, other.tuned() - half, other.tuned() + half);
}

} // namespace

CardBand::CardBand(design::Design design_there)
    : there(std::move(design_there)), network_(loop::network_of(there.capacitor, there.site)) {
    if (there.capacitor.dial) {
        dial_.emplace(there.capacitor);
    }
}

void CardBand::solve_edges(const CardRequest& request) {
    const units::Power power = request.design.station.power.value;
    const auto low = model->at(edges.low, power, request.vswr_limit);
    const auto high = model->at(edges.high, power, request.vswr_limit);
    if (low.resonance && high.resonance) {
        need_ = {high.resonance->tuning_capacitance, low.resonance->tuning_capacitance};
        per_square_ =
            (need_.high - need_.low).value() / (inverse_square(edges.low) - inverse_square(edges.high));
    }
}

tuning::Needed CardBand::needed_at(const loop::OperatingPoint& point) const {
    tuning::Needed needed;
    needed.whole = point.resonance->tuning_capacitance;
    needed.range = point.resonance->tuning_capacitance_range;
    needed.frequency = point.frequency;
    needed.farads_per_Hz = -2 * per_square_ * inverse_square(point.frequency) / point.frequency.value();
    return needed;
}

void CardBand::fill(CardRow& row, const CardRequest& request, const tuning::CalibratedDial* dials) const {
    row.plugged = plugged;
    row.point = model->at(row.tuned(), request.design.station.power.value, request.vswr_limit);
    if (!row.point.resonance) {
        return;
    }
    const loop::Resonance& r = *row.point.resonance;
    row.reachable = network_.capacitor().can_supply(r.tuning_capacitance);
    row.variable = network_.capacitor().variable_for(r.tuning_capacitance);
    row.usable_span = r.bandwidth_vswr;
    row.usable_span_range = r.bandwidth_vswr_range;
    row.whole_band = !row.band.empty() && holds(row, edges.low, edges.high);
    if (row.reachable) {
        if (const auto limit = voltage_limit(row.point, there)) {
            row.usable_voltage = limit->limit;
        }
        fill_dial(row, request, dials);
        return;
    }
    fill_shortfall(row, std::nullopt);
}

void CardBand::fill_shortfall(CardRow& row,
                              const std::optional<units::Interval<units::Capacitance>>& working) const {
    const loop::Resonance& r = *row.point.resonance;
    tuning::Need need;
    need.working = working;
    need.capacitance = r.tuning_capacitance;
    need.uncertain = r.tuning_capacitance_range;
    need.band = need_;
    need.frequency = row.tuned();
    need.voltage_peak = std::max(r.capacitor_voltage_peak, r.capacitor_voltage_peak_range.high);
    row.shortfall = tuning::shortfall(there.capacitor, there.site, need);
}

void CardBand::fill_dial(CardRow& row, const CardRequest& request,
                         const tuning::CalibratedDial* dials) const {
    if (!dial_) {
        return;
    }
    row.predicted = tuning::reading_for(*dial_, network_.capacitor(), needed_at(row.point));
    if (dials != nullptr && row.predicted) {
        if (const auto figure = dials->predicted(row.tuned())) {
            row.predicted->range = figure->range; // what hardware usually is off, besides the model
        }
        if (const auto figure = dials->used_points() > 0 ? dials->at(row.tuned()) : std::nullopt) {
            row.calibrated =
                tuning::Reading{figure->reading, figure->range, figure->reading_per_Hz, figure->within_stops};
        }
    }
    const auto& dial = row.dial();
    if (dial && dial->per_Hz != 0 && usable_low(row).value() > 0) {
        row.drive = tuning::judge_drive(dial_->dial(), dial->per_Hz, usable_low(row), request.vswr_limit);
    }
}

void compare_with_others(CardRow& row, const std::vector<CardRow>& all) {
    if (!row.reachable || !row.usable_span) {
        return;
    }
    row.digital_segment = !row.band.empty();
    for (const CardRow& other : all) {
        if (other.band != row.band || row.band.empty()) {
            continue;
        }
        const bool in = holds_window(row, other);
        const bool digital = !other.own && band::kind_of(other.emission) == band::UseKind::digital;
        row.digital_segment = row.digital_segment && (in || !digital);
        if (in && other.use != row.use) {
            row.shared_with.push_back(other.use);
        }
    }
}

std::optional<units::Interval<units::Capacitance>> needs_of(const std::string& band,
                                                            const std::vector<CardRow>& all) {
    std::optional<units::Interval<units::Capacitance>> needs;
    for (const CardRow& row : all) {
        if (row.band == band && row.point.resonance) {
            const auto& range = row.point.resonance->tuning_capacitance_range;
            needs = needs ? units::Interval<units::Capacitance>{std::min(needs->low, range.low),
                                                                std::max(needs->high, range.high)}
                          : range;
        }
    }
    return needs;
}

} // namespace loopwright::survey::detail
