#include "survey/survey.hpp"

#include "base/error.hpp"
#include "fake_model.hpp"
#include "support/sanitized.hpp"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <atomic>
#include <chrono>
#include <cmath>
#include <mutex>
#include <set>
#include <thread>

namespace loopwright::survey {
namespace {

using Clock = std::chrono::steady_clock;
using std::chrono::milliseconds;

std::vector<std::string> names(const std::vector<band::Band>& bands) {
    std::vector<std::string> all;
    all.reserve(bands.size());
    for (const band::Band& band : bands) {
        all.push_back(band.name);
    }
    return all;
}

Request request_for(std::vector<std::string> bands, int points = 0) {
    Request request;
    request.design.station.bands = std::move(bands);
    request.points = points;
    return request;
}

TEST(Planned, AreTheStationsLowestFirstAndOnce) {
    design::Design design;
    design.station.bands = {"20m", "40m", "20m", "30m"};
    EXPECT_THAT(names(planned_bands(design)), testing::ElementsAre("40m", "30m", "20m"));
}

TEST(Planned, AreAllOfTheRegionWithoutAPlan) {
    EXPECT_THAT(names(planned_bands({})), testing::ElementsAre("160m", "80m", "60m", "40m", "30m", "20m",
                                                               "17m", "15m", "12m", "10m", "6m"));
}

TEST(Planned, RefuseABandThatTheRegionHasNot) {
    design::Design design;
    design.station.bands = {"40m", "41m"};
    try {
        static_cast<void>(planned_bands(design));
        FAIL();
    } catch (const base::InputError& error) {
        EXPECT_EQ(error.where(), "station.bands[1]");
        EXPECT_EQ(error.value(), "41m");
    }
}

TEST(Curve, HasExactEndsAndEvenRatios) {
    const auto f = detail::curve_frequencies(units::megahertz(1.8), units::megahertz(54), 101);
    ASSERT_EQ(f.size(), 101U);
    EXPECT_EQ(f.front().value(), 1.8e6);
    EXPECT_EQ(f.back().value(), 54e6);
    for (std::size_t i = 1; i < f.size(); ++i) {
        EXPECT_NEAR(f[i].value() / f[i - 1].value(), std::pow(30.0, 0.01), 1e-12);
    }
}

TEST(Curve, TakesOnePointAndNone) {
    EXPECT_EQ(detail::curve_frequencies(units::megahertz(7), units::megahertz(7), 1).size(), 1U);
    EXPECT_TRUE(detail::curve_frequencies(units::megahertz(7), units::megahertz(3), 0).empty());
}

TEST(Curve, RefusesWhatDoesNotAscend) {
    const auto seven = units::megahertz(7);
    EXPECT_THROW(static_cast<void>(detail::curve_frequencies(seven, seven, 2)), base::InputError);
    EXPECT_THROW(static_cast<void>(detail::curve_frequencies(seven, units::megahertz(3), 5)),
                 base::InputError);
    EXPECT_THROW(static_cast<void>(detail::curve_frequencies(units::hertz(0), seven, 5)), base::InputError);
    EXPECT_THROW(static_cast<void>(detail::curve_frequencies(seven, units::hertz(INFINITY), 5)),
                 base::InputError);
    EXPECT_THROW(static_cast<void>(detail::curve_frequencies(seven, units::hertz(NAN), 5)), base::InputError);
    EXPECT_THROW(static_cast<void>(detail::curve_frequencies(seven, seven, -1)), base::InputError);
    EXPECT_THROW(static_cast<void>(detail::curve_frequencies(seven, units::megahertz(8), 1'000'001)),
                 base::InputError);
}

// Upper sideband digital signals sit around 1.5 kHz above the dial (7.074 MHz on 40 m, customary).
TEST(Bands, AreTakenInTheMiddleOfTheEmissionsWindow) {
    const Survey survey = detail::run_with(factory(round_point), request_for({"40m"}), {}, {}, {});
    ASSERT_EQ(survey.bands.size(), 1U);
    EXPECT_DOUBLE_EQ(survey.bands[0].point.frequency.value(), 7.0755e6);
    EXPECT_EQ(survey.bands[0].point.power.value(), 5.0);
    EXPECT_EQ(survey.bands[0].verdict, BandVerdict::worthwhile);
    EXPECT_TRUE(survey.complete);
}

TEST(Bands, ArriveOneByOneAndProgressEndsAtOne) {
    std::mutex mutex;
    std::set<std::string> arrived;
    double furthest = 0;
    int calls = 0;
    const Survey survey = detail::run_with(
        factory(round_point), request_for({"80m", "40m", "20m"}, 40), {},
        [&](double share) {
            const std::lock_guard lock(mutex);
            ++calls;
            furthest = std::max(furthest, share);
        },
        [&](const BandRow& row) {
            const std::lock_guard lock(mutex);
            arrived.insert(row.band.name);
            EXPECT_FALSE(row.verdict_text.empty());
        });
    EXPECT_THAT(arrived, testing::ElementsAre("20m", "40m", "80m"));
    EXPECT_EQ(calls, 43);
    EXPECT_EQ(furthest, 1.0);
    EXPECT_EQ(survey.curve.size(), 40U);
    EXPECT_TRUE(std::is_sorted(survey.curve.begin(), survey.curve.end(),
                               [](const auto& a, const auto& b) { return a.frequency < b.frequency; }));
}

TEST(Bands, AreLeftOutWhenOnlyTheCurveIsAskedFor) {
    Request request = request_for({"40m"}, 3);
    request.with_bands = false;
    const Survey survey = detail::run_with(factory(round_point), request, {}, {}, {});
    EXPECT_TRUE(survey.bands.empty());
    EXPECT_EQ(survey.curve.size(), 3U);
    EXPECT_TRUE(survey.complete);
}

// A frequency that takes 20 ms; two thousand of them would take many seconds.
TEST(Stop, IsHeededWithin200Milliseconds) {
    const auto slow = [](units::Frequency f, units::Power p, double s) {
        std::this_thread::sleep_for(milliseconds(20));
        return round_point(f, p, s);
    };
    const base::StopToken stop;
    Clock::time_point stopped;
    std::thread person([&] {
        std::this_thread::sleep_for(milliseconds(100));
        stopped = Clock::now();
        stop.request_stop();
    });
    const Survey survey = detail::run_with(factory(slow), request_for({"40m", "20m"}, 2000), stop, {}, {});
    const auto returned = Clock::now();
    person.join();
    EXPECT_LT(std::chrono::duration_cast<milliseconds>(returned - stopped).count(), 200);
    EXPECT_FALSE(survey.complete);
    EXPECT_LT(survey.curve.size(), 2000U);
    EXPECT_TRUE(std::is_sorted(survey.curve.begin(), survey.curve.end(),
                               [](const auto& a, const auto& b) { return a.frequency < b.frequency; }));
}

constexpr int allowed_ms = support::sanitized ? 2000 : 200; // every access is checked there

// The slowest thing a person can ask for: full wave over soil, geometry and ground not seen before.
TEST(Stop, OfTheFullWaveIsHeededWithin200Milliseconds) {
    Request request;
    request.design.loop.size = units::metres(1.237);
    request.design.site.ground.kind = design::GroundKind::soil;
    request.points = 5000;
    for (const int wait_ms : {0, 5, 40, 150}) {
        request.design.loop.size.value += units::millimetres(1);
        const base::StopToken stop;
        Clock::time_point asked;
        std::thread stopper([&] {
            std::this_thread::sleep_for(milliseconds(wait_ms));
            asked = Clock::now();
            stop.request_stop();
        });
        const Survey survey = run(request, stop);
        const auto ended = Clock::now();
        stopper.join();
        EXPECT_FALSE(survey.complete);
        if (ended > asked) {
            const auto took = std::chrono::duration_cast<milliseconds>(ended - asked).count();
            EXPECT_LT(took, allowed_ms) << wait_ms;
        }
    }
}

TEST(Stop, BeforeTheStartComputesNothing) {
    std::atomic<int> calls = 0;
    const base::StopToken stop;
    stop.request_stop();
    const auto counting = [&](units::Frequency f, units::Power p, double s) {
        ++calls;
        return round_point(f, p, s);
    };
    const Survey survey = detail::run_with(factory(counting), request_for({"40m"}, 10), stop, {}, {});
    EXPECT_EQ(calls, 0);
    EXPECT_FALSE(survey.complete);
}

TEST(Errors, OfTheModelArePassedOn) {
    const auto refusing = [](units::Frequency, units::Power, double) -> loop::OperatingPoint {
        throw base::InputError("frequency", "x", "y");
    };
    EXPECT_THROW(static_cast<void>(detail::run_with(factory(refusing), request_for({"40m"}, 50), {}, {}, {})),
                 base::InputError);
}

TEST(Errors, OfTheDesignAreRefused) {
    Request request = request_for({"40m"});
    request.design.loop.size = units::metres(-1);
    EXPECT_THROW(static_cast<void>(run(request)), base::InputError);
}

TEST(Highest, IsTheWorstBandThatTheCapacitorReaches) {
    const auto rising = [](units::Frequency f, units::Power p, double s) {
        loop::OperatingPoint point = round_point(f, p, s);
        point.resonance->capacitor_voltage_peak = units::volts(f.value() / 1e4);
        if (f.value() > 20e6) {
            point.resonance->in_capacitor_range = false;
        }
        if (f.value() < 4e6) {
            point.resonance.reset();
        }
        return point;
    };
    const Survey survey =
        detail::run_with(factory(rising), request_for({"80m", "40m", "20m", "15m"}), {}, {}, {});
    const BandRow* highest = highest_voltage(survey);
    ASSERT_NE(highest, nullptr);
    EXPECT_EQ(highest->band.name, "20m");
    EXPECT_EQ(highest_voltage(Survey{}), nullptr);
}

TEST(Parallel, GivesWhatTheModelGivesOneByOne) {
    Request request = request_for({"40m", "20m"}, 37);
    request.from = units::megahertz(3.5);
    request.to = units::megahertz(14.5);
    const Survey survey = run(request);
    const auto model = loop::make_model(request.design, request.model);
    ASSERT_EQ(survey.curve.size(), 37U);
    for (const loop::OperatingPoint& point : survey.curve) {
        const loop::OperatingPoint alone = model->at(point.frequency, point.power, 2.0);
        ASSERT_EQ(point.resonance.has_value(), alone.resonance.has_value());
        EXPECT_EQ(point.resonance->q_unloaded, alone.resonance->q_unloaded);
        EXPECT_EQ(point.resonance->tuning_capacitance.value(), alone.resonance->tuning_capacitance.value());
    }
}

} // namespace
} // namespace loopwright::survey
