#include "survey/height.hpp"

#include "base/error.hpp"
#include "loop/loop_model.hpp"
#include "support/sanitized.hpp"

#include <gtest/gtest.h>

#include <atomic>
#include <chrono>
#include <thread>

namespace loopwright::survey {
namespace {

HeightRequest over_average_ground() {
    HeightRequest request;
    request.design.site.ground.kind = design::GroundKind::soil;
    request.design.site.ground.class_name = "average ground";
    request.points = 6;
    return request;
}

TEST(HeightSweep, RowsAreTheModelAtThatHeight) {
    const HeightRequest request = over_average_ground();
    const HeightSweep sweep = height_sweep(request);
    ASSERT_TRUE(sweep.complete);
    ASSERT_EQ(sweep.rows.size(), 6U);
    EXPECT_EQ(sweep.rows.front().lowest_point, request.from);
    EXPECT_EQ(sweep.rows.back().lowest_point, request.to);
    design::Design d = request.design;
    d.site.lowest_point = {sweep.rows[2].lowest_point, {}};
    const auto point = loop::make_model(d, loop::Model::full_wave)
                           ->at(request.frequency, d.station.power.value, request.vswr_limit);
    // The everyday model interpolates the ground in frequency; the sweep fills it directly.
    EXPECT_NEAR(sweep.rows[2].point.resonance->efficiency / point.resonance->efficiency, 1.0, 1e-4);
    EXPECT_NEAR(sweep.rows[2].point.resonance->q_unloaded / point.resonance->q_unloaded, 1.0, 1e-3);
}

// Near the ground the soil takes most of the power; with height its share falls (Wait's magnetic dipole over
// a half-space has the same course).
TEST(HeightSweep, TheGroundTakesLessFurtherUp) {
    const HeightSweep sweep = height_sweep(over_average_ground());
    double before = 1;
    for (const HeightRow& row : sweep.rows) {
        const loop::ResistanceParts& r = row.point.resonance->resistance;
        const double share = *r.ground / r.total();
        EXPECT_LT(share, before);
        before = share;
    }
}

TEST(HeightSweep, StopsAndSaysHowFarItIs) {
    const base::StopToken stopped;
    stopped.request_stop();
    EXPECT_FALSE(height_sweep(over_average_ground(), stopped).complete);
    std::atomic<int> calls = 0;
    std::atomic<double> highest = 0;
    static_cast<void>(height_sweep(over_average_ground(), {}, [&](double share) {
        ++calls;
        double seen = highest;
        while (share > seen && !highest.compare_exchange_weak(seen, share)) {
        }
    }));
    EXPECT_EQ(calls, 6);
    EXPECT_EQ(highest, 1.0);
}

constexpr int stop_ms = support::sanitized ? 2000 : 200; // every access is checked there

TEST(HeightSweep, HeedsAStopWithin200Milliseconds) {
    using std::chrono::milliseconds;
    using std::chrono::steady_clock;
    HeightRequest request = over_average_ground();
    request.points = 1000;
    const base::StopToken stop;
    steady_clock::time_point asked;
    std::thread person([&] {
        std::this_thread::sleep_for(milliseconds(100));
        asked = steady_clock::now();
        stop.request_stop();
    });
    const HeightSweep sweep = height_sweep(request, stop);
    const auto ended = steady_clock::now();
    person.join();
    EXPECT_FALSE(sweep.complete);
    EXPECT_LT(sweep.rows.size(), 1000U);
    EXPECT_LT(std::chrono::duration_cast<milliseconds>(ended - asked).count(), stop_ms);
}

TEST(HeightSweep, RefusesWhatMakesNoSense) {
    HeightRequest none = over_average_ground();
    none.design.site.ground = {};
    EXPECT_THROW(static_cast<void>(height_sweep(none)), base::InputError);
    HeightRequest low = over_average_ground();
    low.from = units::metres(0.01);
    EXPECT_THROW(static_cast<void>(height_sweep(low)), base::InputError);
    HeightRequest down = over_average_ground();
    down.to = units::metres(0.05);
    EXPECT_THROW(static_cast<void>(height_sweep(down)), base::InputError);
    HeightRequest one = over_average_ground();
    one.points = 1;
    EXPECT_THROW(static_cast<void>(height_sweep(one)), base::InputError);
}

} // namespace
} // namespace loopwright::survey
