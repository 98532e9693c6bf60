// Duty averaging: by hand from each emission's timing, against the published worked examples, and against a
// simulation in steps of a tenth of a second.
#include "base/error.hpp"
#include "exposure/duty.hpp"

#include <algorithm>
#include <cmath>
#include <gtest/gtest.h>
#include <vector>

namespace loopwright::exposure {
namespace {

constexpr double six_minutes = 360, thirty_minutes = 1800;

TEST(Duty, SlotModesByHand) {
    // 360 s hold 12 periods of 30 s; a window that opens with a pulse holds 12 pulses of 12.64 s: 151.68 of
    // 360 s.
    const Schedule ft8 = schedule_of("ft8", usual_use("ft8"));
    EXPECT_NEAR(worst_window_average(ft8, units::seconds(six_minutes)), 12 * 12.64 / 360, 1e-12);
    EXPECT_NEAR(long_term_average(ft8), 0.421333, 1e-6);
    // 7.5 s slots: 24 periods of 15 s.
    EXPECT_NEAR(worst_window_average(schedule_of("ft4", usual_use("ft4")), units::seconds(six_minutes)),
                24 * 5.04 / 360, 1e-12);
    // Two-minute beacons sent in one of five slots: 360 s hold one whole pulse, and the next is 600 s later.
    EXPECT_NEAR(worst_window_average(schedule_of("wspr", usual_use("wspr")), units::seconds(six_minutes)),
                110.6 / 360, 1e-12);
    // 1800 s = 3 periods of 600 s: exactly 3 pulses.
    EXPECT_NEAR(worst_window_average(schedule_of("wspr", usual_use("wspr")), units::seconds(thirty_minutes)),
                3 * 110.6 / 1800, 1e-12);
}

TEST(Duty, WorkedExamplesOfOet65SupplementB) {
    // FCC OET Bulletin 65 Supplement B, Ed. 97-01, pp. 13-14 (read in a verbatim extract).
    // 1500 W PEP voice at 20 %, 7 min on and 7 min off: 300 W over 6 min (6 of 6); 16 of 30 min: exact 160 W.
    const Schedule voice = schedule_of("ssb", {Habit::listening_turns, 0, units::seconds(420)});
    EXPECT_NEAR(1500 * worst_window_average(voice, units::seconds(six_minutes)), 300, 1e-9);
    EXPECT_NEAR(1500 * worst_window_average(voice, units::seconds(thirty_minutes)), 160, 1e-9);
    // 500 W telegraphy at 40 %, 45 of 360 s: 25 W.
    const Schedule keyed{units::seconds(360), {{units::seconds(0), units::seconds(45)}}, 0.4};
    EXPECT_NEAR(500 * worst_window_average(keyed, units::seconds(six_minutes)), 25, 1e-9);
    EXPECT_NEAR(500 * worst_window_average(keyed, units::seconds(thirty_minutes)), 25, 1e-9);
    // 250 W FM, 5 of 6 min: 208.3 W; 15 of 30 min: 125 W.
    const Schedule five{units::seconds(360), {{units::seconds(0), units::seconds(300)}}, 1.0};
    EXPECT_NEAR(250 * worst_window_average(five, units::seconds(six_minutes)), 208.3, 0.05);
    const Schedule fifteen{units::seconds(1800), {{units::seconds(0), units::seconds(900)}}, 1.0};
    EXPECT_NEAR(250 * worst_window_average(fifteen, units::seconds(thirty_minutes)), 125, 1e-9);
}

TEST(Duty, PeakIsNeverAveragedAndACarrierIsAlwaysOn) {
    EXPECT_EQ(worst_window_average(schedule_of("ssb", usual_use("ssb")), units::seconds(0)), 1.0);
    EXPECT_EQ(
        worst_window_average(schedule_of("carrier", usual_use("carrier")), units::seconds(thirty_minutes)),
        1.0);
    EXPECT_EQ(
        worst_window_average(schedule_of("cw", {Habit::continuous, 0, {}}), units::seconds(six_minutes)),
        1.0);
}

/// The largest window average found by sliding the window in steps over a sampled schedule.
double simulated(const Schedule& schedule, double window_s) {
    const double step = 0.1;
    const auto samples =
        static_cast<std::size_t>(std::llround((2 * schedule.period.value() + window_s) / step));
    std::vector<double> sent(samples + 1, 0.0);
    for (std::size_t i = 0; i < samples; ++i) {
        const double t = std::fmod((static_cast<double>(i) + 0.5) * step, schedule.period.value());
        const bool on = std::any_of(schedule.pulses.begin(), schedule.pulses.end(), [&](const Pulse& p) {
            return t >= p.start.value() && t < p.start.value() + p.length.value();
        });
        sent[i + 1] = sent[i] + (on ? step : 0.0);
    }
    const auto width = static_cast<std::size_t>(std::llround(window_s / step));
    double most = 0;
    for (std::size_t i = 0; i + width <= samples; ++i) {
        most = std::max(most, sent[i + width] - sent[i]);
    }
    return most / window_s * schedule.average_to_peak;
}

TEST(Duty, AgreesWithASimulationOfTheSchedule) {
    const Use third{Habit::share_of_slots, 0.33, {}};
    const std::vector<Schedule> schedules{
        schedule_of("ft8", usual_use("ft8")),
        schedule_of("ft8", {Habit::every_slot, 0, {}}),
        schedule_of("ft4", usual_use("ft4")),
        schedule_of("ft8", third),
        schedule_of("js8", usual_use("js8")),
        schedule_of("cw", {Habit::listening_turns, 0, units::seconds(100)}),
        schedule_of("rtty", {Habit::listening_turns, 0, units::seconds(45)})};
    for (const Schedule& schedule : schedules) {
        for (const double window : {60.0, six_minutes, thirty_minutes}) {
            // Each edge is sampled to half a step; a window of 60 s holds at most 16 edges.
            EXPECT_NEAR(worst_window_average(schedule, units::seconds(window)), simulated(schedule, window),
                        0.005)
                << schedule.period.value() << ' ' << window;
        }
    }
}

TEST(Duty, RefusesWhatCannotBe) {
    EXPECT_THROW((void)schedule_of("cw", {Habit::alternate_slots, 0, {}}), base::InputError);
    EXPECT_THROW((void)schedule_of("ft8", {Habit::share_of_slots, 0.0, {}}), base::InputError);
    EXPECT_THROW((void)schedule_of("no_such", {}), base::InputError);
}

} // namespace
} // namespace loopwright::exposure
