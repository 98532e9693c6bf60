// Every emission that a design accepts, in every habit it can have: averages by hand from the timing of the
// protocols (12.64 of 15 s, 5.04 of 7.5 s, 110.6 of 120 s: published descriptions) and FCC OET Bulletin 65
// Supplement B, Table 2 (0.4, 0.2, 0.5, 1), and against a simulation of the schedule in steps of 20 ms, in
// which every edge of these timings is a whole step, so that the two agree to rounding.
#include "band/emission.hpp"
#include "exposure/duty.hpp"

#include <algorithm>
#include <cmath>
#include <gtest/gtest.h>
#include <map>
#include <string>
#include <vector>

namespace loopwright::exposure {
namespace {

constexpr double tick_s = 0.02;
const std::vector<double> windows_s{6, 60, 360, 1800};

std::size_t ticks(double seconds) {
    return static_cast<std::size_t>(std::llround(seconds / tick_s));
}

/// Largest share of any window that is sent, by sliding it tick by tick over the schedule repeated.
double most_sent_by_ticks(const Schedule& schedule, double window_s) {
    const std::size_t period = ticks(schedule.period.value()), window = ticks(window_s);
    std::vector<char> on(period, 0);
    for (const Pulse& pulse : schedule.pulses) {
        const std::size_t first = ticks(pulse.start.value());
        std::fill_n(on.begin() + static_cast<std::ptrdiff_t>(first), ticks(pulse.length.value()), char(1));
    }
    long sent = 0;
    for (std::size_t i = 0; i < window; ++i) {
        sent += on[i % period];
    }
    long most = sent;
    for (std::size_t start = 0; start < period; ++start) {
        sent += on[(start + window) % period] - on[start];
        most = std::max(most, sent);
    }
    return static_cast<double>(most) * tick_s / window_s * schedule.average_to_peak;
}

std::vector<Use> uses_of(const band::Emission& emission) {
    std::vector<Use> uses{usual_use(emission.id),
                          {Habit::continuous, 0, {}},
                          {Habit::listening_turns, 0, units::seconds(180)},
                          {Habit::listening_turns, 0, units::seconds(47)}};
    if (emission.has_slots()) {
        for (const Habit habit : {Habit::alternate_slots, Habit::every_slot}) {
            uses.push_back({habit, 0, {}});
        }
        for (const double share : {0.05, 0.2, 0.33, 0.5, 1.0}) {
            uses.push_back({Habit::share_of_slots, share, {}});
        }
    }
    return uses;
}

} // namespace

TEST(EmissionDuty, AgreesWithTheSimulatedSchedule) {
    for (const band::Emission& emission : band::emissions()) {
        for (const Use& use : uses_of(emission)) {
            const Schedule schedule = schedule_of(emission.id, use);
            for (const double window_s : windows_s) {
                EXPECT_NEAR(worst_window_average(schedule, units::seconds(window_s)),
                            most_sent_by_ticks(schedule, window_s), 1e-9)
                    << emission.id << " habit " << static_cast<int>(use.habit) << ' ' << use.share << ' '
                    << window_s;
            }
        }
    }
}

TEST(EmissionDuty, UsualUseByHand) {
    // {over 6 min, over 30 min}. Turns of 3 min: half of every 6 min. Alternate slots of 15 s: 12 in 6 min,
    // 60 in 30 min; of 7.5 s: 24 and 120. JS8 in every slot: 24 and 120. Beacon, one slot in five (600 s):
    // one in 6 min, three in 30 min.
    const std::map<std::string, std::pair<double, double>> expected{
        {"carrier", {1, 1}},
        {"cw", {0.2, 0.2}},
        {"ssb", {0.1, 0.1}},
        {"ssb_processed", {0.25, 0.25}},
        {"rtty", {0.5, 0.5}},
        {"psk31", {0.5, 0.5}}, // 1 while sending: its 0.8 has no source and earns no credit
        {"ft8", {12 * 12.64 / 360, 60 * 12.64 / 1800}},
        {"ft4", {24 * 5.04 / 360, 120 * 5.04 / 1800}},
        {"js8", {24 * 12.64 / 360, 120 * 12.64 / 1800}},
        {"wspr", {110.6 / 360, 3 * 110.6 / 1800}}};
    ASSERT_EQ(expected.size(), band::emissions().size());
    for (const band::Emission& emission : band::emissions()) {
        const Schedule schedule = schedule_of(emission.id, usual_use(emission.id));
        const auto& [six, thirty] = expected.at(emission.id);
        EXPECT_NEAR(worst_window_average(schedule, units::seconds(360)), six, 1e-12) << emission.id;
        EXPECT_NEAR(worst_window_average(schedule, units::seconds(1800)), thirty, 1e-12) << emission.id;
    }
}

TEST(EmissionDuty, BeaconsByHand) {
    const auto average = [](const Use& use, double window_s) {
        return worst_window_average(schedule_of("wspr", use), units::seconds(window_s));
    };
    EXPECT_NEAR(average({Habit::every_slot, 0, {}}, 360), 3 * 110.6 / 360, 1e-12);
    EXPECT_NEAR(average({Habit::every_slot, 0, {}}, 1800), 15 * 110.6 / 1800, 1e-12);
    // Every other slot: two in 6 min, pulses at 0, 240, ... 1680 s: eight in 30 min.
    EXPECT_NEAR(average({Habit::alternate_slots, 0, {}}, 360), 2 * 110.6 / 360, 1e-12);
    EXPECT_NEAR(average({Habit::alternate_slots, 0, {}}, 1800), 8 * 110.6 / 1800, 1e-12);
    // A window shorter than the pulse is sent in whole: the worst window, not the mean.
    EXPECT_NEAR(average({Habit::share_of_slots, 0.05, {}}, 60), 1, 1e-12);
}

TEST(EmissionDuty, NeverBelowTheLongTermMeanAndNeverAboveThePeak) {
    for (const band::Emission& emission : band::emissions()) {
        for (const Use& use : uses_of(emission)) {
            const Schedule schedule = schedule_of(emission.id, use);
            EXPECT_EQ(worst_window_average(schedule, units::seconds(0)), 1.0) << "no credit at an instant";
            for (const double window_s : windows_s) {
                const double worst = worst_window_average(schedule, units::seconds(window_s));
                EXPECT_GE(worst, long_term_average(schedule) * (1 - 1e-12)) << emission.id;
                EXPECT_LE(worst, 1.0);
            }
        }
    }
}

TEST(EmissionDuty, EveryTimingNamesItsSource) {
    for (const band::Emission& emission : band::emissions()) {
        EXPECT_FALSE(emission.duty_source.empty()) << emission.id;
        if (emission.has_slots()) {
            EXPECT_NEAR(emission.sent.value() / emission.slot.value(), emission.keyed_share, 1e-12);
        }
    }
    // What its protocol says: symbols over their rate.
    EXPECT_NEAR(band::find_emission("ft8")->sent.value(), 79 * 0.160, 1e-9);
    EXPECT_NEAR(band::find_emission("ft4")->sent.value(), 105 / 20.8333, 1e-4);
    EXPECT_NEAR(band::find_emission("wspr")->sent.value(), 162 / 1.4648, 0.05);
}

} // namespace loopwright::exposure
