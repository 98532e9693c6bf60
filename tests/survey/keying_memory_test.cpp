// What the sheet before keying remembers changes no figure: after edits it is, to the last digit, the sheet
// computed with nothing remembered. Needs no outside source: both sides are ours.
#include "base/job.hpp"
#include "survey/carrier_request.hpp"
#include "survey/detail/remembered_surroundings.hpp"
#include "survey/keying.hpp"

#include <chrono>
#include <functional>
#include <gtest/gtest.h>
#include <string>
#include <thread>
#include <vector>

namespace loopwright::survey {
namespace {

using units::metres;

KeyingRequest remembered_request() {
    KeyingRequest request = carrier_request("20m", "icnirp_1998");
    design::Design& d = request.design;
    d.site.people_distance = metres(3);
    d.station.reach = metres(1.5);
    d.station.emission = "ft8";
    request.limits = {"icnirp_1998", "fcc_1_1310"};
    request.intervals = true;
    return request;
}

/// Every figure that depends on a field, each with its place.
void expect_same(const Keying& got, const Keying& anew, const std::string& after) {
    ASSERT_EQ(got.bands.size(), anew.bands.size()) << after;
    for (std::size_t b = 0; b < got.bands.size(); ++b) {
        const KeyingBand &one = got.bands[b], &other = anew.bands[b];
        const std::string where = after + ", " + one.band;
        EXPECT_EQ(one.voltage_peak.low, other.voltage_peak.low) << where;
        EXPECT_EQ(one.voltage_peak.high, other.voltage_peak.high) << where;
        EXPECT_EQ(one.touch_in_reach_rms, other.touch_in_reach_rms) << where;
        EXPECT_EQ(one.power_for_capacitor, other.power_for_capacitor) << where;
        EXPECT_EQ(one.verdict, other.verdict) << where;
        ASSERT_EQ(one.distances.size(), other.distances.size()) << where;
        for (std::size_t i = 0; i < one.distances.size(); ++i) {
            const KeyingDistance &d = one.distances[i], &e = other.distances[i];
            ASSERT_EQ(d.farthest.has_value(), e.farthest.has_value()) << where;
            if (d.farthest) {
                EXPECT_EQ(d.farthest->distance, e.farthest->distance) << where << ", " << d.limit;
                EXPECT_EQ(d.farthest->azimuth, e.farthest->azimuth) << where << ", " << d.limit;
                EXPECT_EQ(d.farthest->height, e.farthest->height) << where << ", " << d.limit;
            }
            EXPECT_EQ(d.range.low, e.range.low) << where << ", " << d.limit;
            EXPECT_EQ(d.range.high, e.range.high) << where << ", " << d.limit;
            EXPECT_EQ(d.body_average, e.body_average) << where << ", " << d.limit;
            EXPECT_EQ(d.power_for_people, e.power_for_people) << where << ", " << d.limit;
            EXPECT_EQ(d.power_for_tuning, e.power_for_tuning) << where << ", " << d.limit;
        }
    }
}

struct Edited {
    std::string what;
    std::function<void(KeyingRequest&)> edit;
};

/// One after the other, the memory growing; then each from nothing.
void expect_edits_change_nothing(KeyingRequest request, const std::vector<Edited>& edits) {
    detail::forget_surroundings();
    std::vector<KeyingRequest> asked{request};
    std::vector<Keying> got{keying(request)};
    for (const Edited& one : edits) {
        one.edit(request);
        asked.push_back(request);
        got.push_back(keying(request));
    }
    for (std::size_t i = 0; i < asked.size(); ++i) {
        detail::forget_surroundings();
        expect_same(got[i], keying(asked[i]), i == 0 ? "as it began" : edits[i - 1].what);
    }
}

std::vector<Edited> edits_of_the_station() {
    return {
        {"more power", [](auto& r) { r.design.station.power = units::watts(37); }},
        {"much more power", [](auto& r) { r.design.station.power = units::watts(400); }},
        {"voice", [](auto& r) { r.design.station.emission = "ssb"; }},
        {"a carrier", [](auto& r) { r.design.station.emission = "carrier"; }},
        {"a stricter limit",
         [](auto& r) {
             r.limits = {"icnirp_2020", "eu_1999_519"};
         }},
        {"people farther away", [](auto& r) { r.design.site.people_distance = metres(6); }},
        {"a longer reach", [](auto& r) { r.design.station.reach = metres(2.5); }},
        {"hardly any power", [](auto& r) { r.design.station.power = units::watts(0.3); }},
        {"nominal only", [](auto& r) { r.intervals = false; }},
        {"with intervals again", [](auto& r) { r.intervals = true; }},
        {"slots",
         [](auto& r) {
             r.design.station.emission = "ft8";
             r.design.station.use = design::Use{design::Habit::every_slot, 0.2, units::seconds(180)};
         }},
    };
}

TEST(KeyingMemory, EditsOfTheStationOverSoil) {
    expect_edits_change_nothing(remembered_request(), edits_of_the_station());
}

TEST(KeyingMemory, EditsOfTheStationOverAMirrorWithALoopOnItsSide) {
    KeyingRequest request = remembered_request();
    request.design.station.bands = {"20m", "10m"};
    request.design.site.ground.kind = design::GroundKind::perfect;
    request.design.site.plane = design::Plane::horizontal;
    request.design.site.lowest_point = metres(2);
    request.design.site.standing_level = metres(3);
    expect_edits_change_nothing(request, edits_of_the_station());
}

TEST(KeyingMemory, EditsOfTheStationInFreeSpace) {
    KeyingRequest request = remembered_request();
    request.design.site.ground.kind = design::GroundKind::free_space;
    request.design.capacitor.loss.q.reset();
    expect_edits_change_nothing(request, edits_of_the_station());
}

std::vector<Edited> edits_of_the_loop() {
    return {
        {"size", [](auto& r) { r.design.loop.size = metres(1.1); }},
        {"conductor", [](auto& r) { r.design.conductor.metal.name = "aluminium 1350"; }},
        {"diameter", [](auto& r) { r.design.conductor.diameter = units::millimetres(12); }},
        {"joints",
         [](auto& r) {
             r.design.joints.emplace_back(design::Joint{4, units::ohms(0.003)});
         }},
        {"loss of the capacitor", [](auto& r) { r.design.capacitor.loss.q = 300.0; }},
        {"height", [](auto& r) { r.design.site.lowest_point = metres(1.7); }},
        {"soil", [](auto& r) { r.design.site.ground.class_name = "very dry ground"; }},
        {"tilt", [](auto& r) { r.design.site.tilt = units::degrees(30); }},
        {"plane", [](auto& r) { r.design.site.plane = design::Plane::horizontal; }},
        {"standing level", [](auto& r) { r.design.site.standing_level = metres(1.5); }},
        {"bands",
         [](auto& r) {
             r.design.station.bands = {"40m", "15m"};
         }},
        {"limits",
         [](auto& r) {
             r.limits = {"icnirp_2020", "ieee_c95_1_2019"};
         }},
        {"frequencies",
         [](auto& r) {
             r.frequencies = {units::megahertz(14.3), units::megahertz(28.9)};
         }},
    };
}

/// The figures of the first band that go by fields of every kind.
std::vector<double> figures(const Keying& keying) {
    const KeyingBand& band = keying.bands.at(0);
    const KeyingDistance& d = band.distances.at(0);
    return {d.farthest.value().distance.value(), d.range.high.value(), band.voltage_peak.high.value(),
            d.power_for_people.value().value(), d.power_for_tuning.value().value()};
}

// Each edit from the same beginning, which is remembered, and each with figures of its own: a remembered one
// would show.
TEST(KeyingMemory, NoEditOfTheLoopGetsFiguresOfTheLoopBefore) {
    detail::forget_surroundings();
    const Keying before = keying(remembered_request());
    std::vector<Keying> got;
    for (const Edited& one : edits_of_the_loop()) {
        KeyingRequest request = remembered_request();
        one.edit(request);
        got.push_back(keying(request));
    }
    expect_same(keying(remembered_request()), before, "undone");
    for (std::size_t i = 0; i < got.size(); ++i) {
        detail::forget_surroundings();
        KeyingRequest request = remembered_request();
        edits_of_the_loop()[i].edit(request);
        const Keying anew = keying(request);
        expect_same(got[i], anew, edits_of_the_loop()[i].what);
        EXPECT_NE(figures(anew), figures(before)) << edits_of_the_loop()[i].what;
    }
}

// Stopped anywhere, what is made by then stays sound.
TEST(KeyingMemory, AStopLeavesItUnharmed) {
    detail::forget_surroundings();
    const Keying anew = keying(remembered_request());
    for (const int wait_ms : {1, 5, 15, 30, 60, 100}) {
        detail::forget_surroundings();
        const base::StopToken stop;
        std::chrono::steady_clock::time_point stopped{};
        std::thread stopper([&] {
            std::this_thread::sleep_for(std::chrono::milliseconds(wait_ms));
            stopped = std::chrono::steady_clock::now();
            stop.request_stop();
        });
        const Keying left = keying(remembered_request(), stop);
        const auto ended = std::chrono::steady_clock::now();
        stopper.join();
        if (!left.complete) {
            EXPECT_LT(ended - stopped, std::chrono::milliseconds(200)) << wait_ms;
        }
        expect_same(keying(remembered_request()), anew, "stopped after " + std::to_string(wait_ms) + " ms");
    }
}

// Several askers at once, as the sheet, the outlines and the strip are.
TEST(KeyingMemory, SeveralThreadsGetTheSame) {
    detail::forget_surroundings();
    const std::vector<double> watts{3, 10, 40, 150};
    std::vector<Keying> got(watts.size());
    std::vector<std::thread> askers;
    askers.reserve(watts.size());
    const auto at_power = [](double power_W) {
        KeyingRequest request = remembered_request();
        request.design.station.power = units::watts(power_W);
        return request;
    };
    for (std::size_t i = 0; i < watts.size(); ++i) {
        askers.emplace_back([&, i] { got[i] = keying(at_power(watts[i])); });
    }
    for (std::thread& asker : askers) {
        asker.join();
    }
    for (std::size_t i = 0; i < watts.size(); ++i) {
        detail::forget_surroundings();
        expect_same(got[i], keying(at_power(watts[i])), std::to_string(watts[i]) + " W");
    }
}

} // namespace
} // namespace loopwright::survey
