#include "exposure/duty.hpp"

#include "band/emission.hpp"
#include "base/error.hpp"
#include "base/nearest.hpp"

#include <algorithm>
#include <cmath>

namespace loopwright::exposure {

namespace {

struct Timing {
    double slot_s, keyed_s; ///< 0: no slots
    double average_to_peak;
};

// Of emissions in slots the pauses are in the schedule itself; of all others the keyed share is part of the
// average. A figure that is common practice without a source earns no credit: 1 is used.
Timing timing_of(std::string_view id) {
    const auto emission = band::find_emission(id);
    if (!emission) {
        throw base::InputError("station.emission", std::string(id), base::listed(band::emission_ids()));
    }
    const double keyed = emission->has_slots() ? 1.0 : emission->keyed_share;
    const bool founded = emission->duty_status != band::Status::common_practice;
    return {emission->slot.value(), emission->sent.value(),
            founded ? keyed * emission->average_to_peak : 1.0};
}

Schedule slots(const Timing& timing, int period_slots, int sent_slots) {
    Schedule schedule{units::seconds(timing.slot_s * period_slots), {}, timing.average_to_peak};
    for (int i = 0; i < sent_slots; ++i) {
        // Spread evenly over the period's slots.
        const int slot = static_cast<int>(static_cast<long>(i) * period_slots / sent_slots);
        schedule.pulses.push_back({units::seconds(slot * timing.slot_s), units::seconds(timing.keyed_s)});
    }
    return schedule;
}

/// Time sent in [0, t) of the endless schedule.
double sent_before(const Schedule& schedule, double t) {
    const double period = schedule.period.value();
    const double whole = std::floor(t / period);
    const double rest = t - whole * period;
    double in_period = 0, in_rest = 0;
    for (const Pulse& pulse : schedule.pulses) {
        in_period += pulse.length.value();
        in_rest += std::clamp(rest - pulse.start.value(), 0.0, pulse.length.value());
    }
    return whole * in_period + in_rest;
}

} // namespace

Schedule schedule_of(std::string_view emission, const Use& use) {
    const Timing timing = timing_of(emission);
    if (use.habit == Habit::continuous) {
        return {units::seconds(1), {{units::seconds(0), units::seconds(1)}}, 1.0};
    }
    if (use.habit == Habit::listening_turns) {
        const double over_s = use.over.value();
        if (!(over_s >= 1 && over_s <= 86400)) {
            throw base::InputError("station.over", std::to_string(over_s) + " s", "1 s to 1 day");
        }
        return {units::seconds(2 * over_s), {{units::seconds(0), use.over}}, timing.average_to_peak};
    }
    if (timing.slot_s == 0) {
        throw base::InputError("station.habit", std::string(emission),
                               "a habit without slots: this emission has no time slots");
    }
    if (use.habit == Habit::every_slot) {
        return slots(timing, 1, 1);
    }
    if (use.habit == Habit::alternate_slots) {
        return slots(timing, 2, 1);
    }
    if (!(use.share > 0 && use.share <= 1)) {
        throw base::InputError("station.share", std::to_string(use.share), "a share above 0, at most 1");
    }
    constexpr int period_slots = 100;
    return slots(timing, period_slots,
                 std::max(1, static_cast<int>(std::ceil(use.share * period_slots - 1e-9))));
}

Use usual_use(std::string_view emission) {
    const bool slots = timing_of(emission).slot_s > 0;
    Use use;
    if (!slots) {
        use.habit = emission == "carrier" ? Habit::continuous : Habit::listening_turns;
    } else if (emission == "wspr") {
        use.habit = Habit::share_of_slots;
    } else {
        // js8 may send frame after frame.
        use.habit = emission == "js8" ? Habit::every_slot : Habit::alternate_slots;
    }
    return use;
}

double worst_window_average(const Schedule& schedule, units::Time window) {
    const double length = window.value();
    if (!(length > 0)) {
        return schedule.pulses.empty() ? 0.0 : 1.0;
    }
    const double period = schedule.period.value();
    double most = 0;
    const auto try_start = [&](double start) {
        const double from = start - period * std::floor(start / period);
        most = std::max(most, sent_before(schedule, from + length) - sent_before(schedule, from));
    };
    for (const Pulse& pulse : schedule.pulses) {
        try_start(pulse.start.value());                                 // the window opens with a pulse
        try_start(pulse.start.value() + pulse.length.value() - length); // or closes with one
    }
    return std::min(1.0, most / length) * schedule.average_to_peak;
}

double long_term_average(const Schedule& schedule) {
    return sent_before(schedule, schedule.period.value()) / schedule.period.value() *
           schedule.average_to_peak;
}

} // namespace loopwright::exposure
