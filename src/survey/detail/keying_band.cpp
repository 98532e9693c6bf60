#include "survey/detail/keying_band.hpp"

#include "base/error.hpp"
#include "base/nearest.hpp"
#include "base/stopped.hpp"
#include "design/limit_ids.hpp"
#include "exposure/duty.hpp"
#include "exposure/station.hpp"
#include "loop/fitted_capacitor.hpp"
#include "loop/full_wave.hpp"
#include "survey/detail/remembered_surroundings.hpp"
#include "survey/detail/unfavourable.hpp"

#include <algorithm>
#include <cmath>

namespace loopwright::survey::detail {

namespace {

using exposure::Surroundings;
using exposure::Threshold;

/// Those asked for by id, or those of the station; its own ones besides.
std::vector<exposure::Limit> limits_of(const KeyingRequest& request) {
    const design::Station& station = request.design.station;
    if (request.limits.empty()) {
        return exposure::limits_of(station);
    }
    std::vector<exposure::Limit> all;
    for (const std::string& id : request.limits) {
        const exposure::Limit* limit = exposure::find_limit(id);
        if (limit == nullptr) {
            throw base::InputError("limits", id, base::listed(design::limit_ids()));
        }
        all.push_back(*limit);
    }
    for (std::size_t i = 0; i < station.own_limits.size(); ++i) {
        all.push_back(exposure::own_limit(station.own_limits[i], i));
    }
    return all;
}

void fill_distances(KeyingBand& band, const KeyingRequest& request, const std::vector<HeldLimit>& limits,
                    Surroundings& around, const Unfavourable& ends) {
    const design::Design& design = request.design;
    for (const HeldLimit& limit : limits) {
        KeyingDistance d;
        d.limit = limit.id;
        d.standard = limit.standard;
        d.table = limit.fields.table;
        d.tier = limit.tier;
        d.from_memory = limit.fields.from_memory;
        d.electric_limit = limit.fields.electric;
        d.magnetic_limit = limit.fields.magnetic;
        d.duty = limit.duty;
        d.averaged_power = limit.duty * band.point.power;
        const Threshold threshold = threshold_of(limit.fields, d.averaged_power);
        d.farthest = around.farthest(threshold);
        if (d.farthest) {
            const double nominal_m = d.farthest->distance.value();
            const Shifts shifts = ends.distance_m(limit.fields, d.averaged_power, *d.farthest);
            d.range = {units::metres(std::max(0.0, nominal_m + shifts.less)),
                       units::metres(nominal_m + shifts.more)};
            if (const auto mean = around.farthest_body_average(threshold)) {
                d.body_average = mean->distance;
            }
        }
        if (design.site.people_distance) {
            d.power_for_people =
                ends.power_for_people(limit.fields, design.site.people_distance->value) / limit.duty;
        }
        if (design.station.reach) {
            d.power_for_tuning = ends.power_for_tuning(limit.fields, design.station.reach->value);
        }
        band.distances.push_back(std::move(d));
    }
}

/// Volts go with the root of the power.
std::optional<loop::ConductorVoltage> for_power(std::optional<loop::ConductorVoltage> volts,
                                                units::Power power) {
    if (volts) {
        const double root = std::sqrt(power.value());
        volts->highest_rms *= root;
        volts->at_middle_rms *= root;
        for (loop::TouchPoint& point : volts->points) {
            point.rms *= root;
            point.peak *= root;
        }
    }
    return volts;
}

/// See hand_reach_m.
std::optional<units::Voltage> in_reach(const std::optional<loop::ConductorVoltage>& touch,
                                       const design::Site& site) {
    std::optional<units::Voltage> highest;
    const bool all = site.ground.kind == design::GroundKind::free_space;
    const double top_m = site.standing_level.value.value() + hand_reach_m;
    for (const loop::TouchPoint& point : touch ? touch->points : std::vector<loop::TouchPoint>{}) {
        if (all || point.position_m[2] <= top_m) {
            highest = highest ? std::max(*highest, point.rms) : point.rms;
        }
    }
    return highest;
}

void fill_capacitor(KeyingBand& band, const design::Design& design, const Shifts& volts) {
    const loop::Resonance& r = *band.point.resonance;
    const units::Voltage peak = r.capacitor_voltage_peak;
    units::Interval<units::Voltage> range{peak, peak};
    if (r.capacitor_voltage_peak_range.high.value() > 0) {
        range = {std::min(peak, r.capacitor_voltage_peak_range.low),
                 std::max(peak, r.capacitor_voltage_peak_range.high)};
    }
    range.low = std::max(range.low + units::volts(volts.less), units::volts(0));
    range.high = range.high + units::volts(volts.more);
    band.voltage_peak = range;
    band.load = loop::network_at(design, band.point.frequency)
                    .load(range.high, r.tuning_capacitance, band.point.frequency);
    if (band.load) {
        band.usable_voltage = band.load->allowed_peak();
        if (band.usable_voltage) {
            band.power_for_capacitor =
                capacitor::power_at_voltage(band.point.power, range.high, *band.usable_voltage);
        }
    }
}

} // namespace

std::vector<HeldLimit> held_limits(const KeyingRequest& request, units::Frequency frequency) {
    const exposure::Schedule schedule = exposure::schedule_of(request.design.station);
    std::vector<HeldLimit> held;
    for (const exposure::Limit& limit : limits_of(request)) {
        for (const auto tier : {exposure::Tier::general_public, exposure::Tier::occupational}) {
            if (const auto fields = exposure::at(limit, tier, frequency)) {
                const auto window = limit.averaging(tier);
                held.push_back({limit.id, limit.standard, tier, *fields,
                                window ? exposure::worst_window_average(schedule, *window) : 1.0});
            }
        }
    }
    return held;
}

namespace {

/// Throws base::Stopped after a stop.
void fill(KeyingBand& band, const KeyingRequest& request, const base::StopToken& stop) {
    const std::vector<HeldLimit> limits = held_limits(request, band.point.frequency);
    Shifts volts;
    const auto shared = surroundings_of(request.design, band.point.frequency, stop);
    const std::lock_guard lock(shared->mutex);
    if (shared->around) {
        shared->around->heed(stop);
        const Unfavourable ends(request, band, *shared, stop);
        fill_distances(band, request, limits, *shared->around, ends);
        volts = ends.volts();
    }
    base::leave_if_stopped(stop);
    if (shared->around) {
        band.touch = for_power(shared->touch(), band.point.power);
        band.touch_in_reach_rms = in_reach(band.touch, request.design.site);
    }
    const exposure::Schedule schedule = exposure::schedule_of(request.design.station);
    band.heating = loop::heating(request.design, band.point,
                                 exposure::worst_window_average(schedule, units::seconds(1800)));
    fill_capacitor(band, request.design, volts);
    if (const auto gain = band.point.resonance->gain_max) {
        band.erp = std::pow(10.0, gain->value / 10) / 1.64 * band.point.power;
    }
    if (request.design.site.people_distance) {
        band.fcc_exempt_erp =
            exposure::fcc_exemption_erp(band.point.frequency, request.design.site.people_distance->value);
    }
}

} // namespace

bool fill_band(KeyingBand& band, const KeyingRequest& request, const base::StopToken& stop) {
    if (!band.point.resonance) {
        return true;
    }
    try {
        fill(band, request, stop);
    } catch (const base::Stopped&) {
        return false;
    }
    return true;
}

} // namespace loopwright::survey::detail
