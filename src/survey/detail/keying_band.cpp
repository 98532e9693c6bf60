#include "survey/detail/keying_band.hpp"

#include "base/error.hpp"
#include "base/nearest.hpp"
#include "base/stopped.hpp"
#include "design/limit_ids.hpp"
#include "design/soil.hpp"
#include "design/validation.hpp"
#include "exposure/duty.hpp"
#include "exposure/station.hpp"
#include "loop/fitted_capacitor.hpp"
#include "loop/full_wave.hpp"
#include "survey/detail/remembered_surroundings.hpp"

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

/// For `power` of averaged power.
Threshold threshold_of(const exposure::FieldLimit& fields, units::Power power) {
    const double root = std::sqrt(power.value());
    return {fields.electric.value() / root, fields.magnetic.value() / root};
}

double low_or(const units::Interval<units::Resistance>& range, units::Resistance nominal) {
    return range.low.value() > 0 ? std::min(range.low, nominal).value() : nominal.value();
}
double high_or(const units::Interval<units::Resistance>& range, units::Resistance nominal) {
    return std::max(range.high, nominal).value();
}

/// What the place may be instead: soil drier and wetter, the loop a little lower and higher.
std::vector<design::Design> variants_of(const design::Design& design) {
    std::vector<design::Design> all;
    const design::Site& site = design.site;
    if (site.ground.kind == design::GroundKind::free_space) {
        return all;
    }
    if (site.ground.kind == design::GroundKind::soil) {
        const ground::Soil soil = design::soil_of(site.ground);
        for (const double factor : {0.5, 2.0}) {
            design::Design other = design;
            other.site.ground.class_name.clear();
            other.site.ground.relative_permittivity =
                std::max(1.0, soil.relative_permittivity * std::pow(factor, 0.5));
            other.site.ground.conductivity = factor * soil.conductivity;
            all.push_back(other);
        }
    }
    const double lowest = site.lowest_point.value.value();
    for (const double by : {-1.0, 1.0}) {
        design::Design other = design;
        other.site.lowest_point = units::metres(std::max(0.05, lowest + by * std::max(0.05, 0.1 * lowest)));
        if (design::refusals(other).empty()) {
            all.push_back(other);
        }
    }
    return all;
}

/// Distance under a threshold, nothing beyond 100 m.
std::optional<double> distance_m(Surroundings& around, const Threshold& threshold) {
    const auto found = around.farthest(threshold);
    return found ? std::optional(found->distance.value()) : std::nullopt;
}

/// The unfavourable and the favourable shifts of each cause, added: all at once.
struct Shifts {
    double less = 0, more = 0;
    void add(double shift) {
        less += std::min(0.0, shift);
        more += std::max(0.0, shift);
    }
    /// Of several values of one cause.
    void add_pair(double first, double second) {
        less += std::min({0.0, first, second});
        more += std::max({0.0, first, second});
    }
};

void fill_distances(KeyingBand& band, const KeyingRequest& request, const std::vector<HeldLimit>& limits,
                    Surroundings& around) {
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
            d.range = {d.farthest->distance, d.farthest->distance};
            if (const auto mean = around.farthest_body_average(threshold)) {
                d.body_average = mean->distance;
            }
        }
        const Threshold per_watt = threshold_of(limit.fields, units::watts(1));
        if (design.site.people_distance) {
            const double share = around.worst_share(per_watt, design.site.people_distance->value);
            d.power_for_people = units::watts(1 / share / limit.duty);
        }
        if (design.station.reach) {
            const auto at = around.capacitor_place_m();
            const double share =
                around.worst_share_around(per_watt, {at[0], at[1]}, design.station.reach->value);
            d.power_for_tuning = units::watts(1 / share);
        }
        band.distances.push_back(std::move(d));
    }
}

/// Losses: the same currents with more or less power left for them.
void add_loss_shifts(std::vector<Shifts>& shifts, const KeyingBand& band,
                     const std::vector<HeldLimit>& limits, Surroundings& around) {
    const loop::Resonance& r = *band.point.resonance;
    const double total = r.resistance.total().value();
    const double more = total / low_or(r.total_resistance_range, r.resistance.total());
    const double less = total / high_or(r.total_resistance_range, r.resistance.total());
    for (std::size_t i = 0; i < limits.size(); ++i) {
        const KeyingDistance& d = band.distances[i];
        if (!d.farthest || (more == 1 && less == 1)) {
            continue;
        }
        const double nominal = d.farthest->distance.value();
        const auto with = [&](double factor) {
            return distance_m(around, threshold_of(limits[i].fields, factor * d.averaged_power));
        };
        shifts[i].add_pair(with(more).value_or(2 * exposure::farthest_established_m) - nominal,
                           with(less).value_or(nominal) - nominal);
    }
}

/// Capacitor voltage for 1 W, but for a factor that variants share: its current over omega C.
double volts_per_watt(const Surroundings& around) {
    const loop::SolvedLoop& loop = around.field().loop();
    const wire::Gap& gap = loop.solution.mesh().model().ports.at(1); // the capacitor's
    return std::abs(loop.solution.current_at(loop.currents, gap)) /
           (loop.tuning_capacitance.value() * std::sqrt(loop.total.value()));
}

/// How far the distance moves when the fields become those of `other`: by the share at the nominal place and
/// the slope of the share there, since the field falls as a power of the distance over a few per cent.
double moved_m(const KeyingDistance& d, const Threshold& threshold, const Surroundings& around,
               const Surroundings& other) {
    exposure::Farthest place = *d.farthest, farther = place;
    farther.distance = 1.05 * place.distance;
    const double here = around.share_at(threshold, place), there = around.share_at(threshold, farther);
    const double changed = other.share_at(threshold, place);
    if (place.distance.value() <= 0 || std::isinf(here) || std::isinf(changed) || here <= there) {
        return 0; // set by the nearness of the conductor, which moves with nothing here
    }
    const double power = std::log(here / there) / std::log(1.05);
    return place.distance.value() * (std::pow(changed / here, 1 / power) - 1);
}

/// Each pair of variants is one cause.
void add_place_shifts(std::vector<Shifts>& shifts, Shifts& volts, const KeyingBand& band,
                      const KeyingRequest& request, const std::vector<HeldLimit>& limits,
                      const Surroundings& around, const base::StopToken& stop) {
    const std::vector<design::Design> variants = variants_of(request.design);
    std::vector<std::vector<double>> by_limit(limits.size());
    std::vector<double> by_volts;
    for (const design::Design& variant : variants) {
        const auto shared = surroundings_of(variant, band.point.frequency, false, stop);
        if (!shared->around) {
            continue;
        }
        // The same power splits otherwise: currents go with the root of the resistance, and so do volts.
        by_volts.push_back(band.point.resonance->capacitor_voltage_peak.value() *
                           (volts_per_watt(*shared->around) / volts_per_watt(around) - 1));
        for (std::size_t i = 0; i < limits.size(); ++i) {
            if (band.distances[i].farthest) {
                const Threshold threshold = threshold_of(limits[i].fields, band.distances[i].averaged_power);
                by_limit[i].push_back(moved_m(band.distances[i], threshold, around, *shared->around));
            }
        }
    }
    const auto add_pairs = [](Shifts& sum, const std::vector<double>& values) {
        for (std::size_t n = 0; n + 1 < values.size(); n += 2) {
            sum.add_pair(values[n], values[n + 1]);
        }
        if (values.size() % 2 == 1) {
            sum.add(values.back());
        }
    };
    add_pairs(volts, by_volts);
    for (std::size_t i = 0; i < limits.size(); ++i) {
        add_pairs(shifts[i], by_limit[i]);
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

void take_shifts(KeyingBand& band, const std::vector<Shifts>& shifts) {
    for (std::size_t i = 0; i < band.distances.size(); ++i) {
        KeyingDistance& d = band.distances[i];
        if (d.farthest) {
            const double nominal = d.farthest->distance.value();
            d.range = {units::metres(std::max(0.0, nominal + shifts[i].less)),
                       units::metres(nominal + shifts[i].more)};
        }
    }
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
    std::vector<Shifts> shifts(limits.size());
    Shifts volts;
    const auto shared = surroundings_of(request.design, band.point.frequency, true, stop);
    const std::lock_guard lock(shared->mutex);
    if (shared->around) {
        shared->around->heed(stop);
        fill_distances(band, request, limits, *shared->around);
        if (request.intervals) {
            add_loss_shifts(shifts, band, limits, *shared->around);
            add_place_shifts(shifts, volts, band, request, limits, *shared->around, stop);
            take_shifts(band, shifts);
        }
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
