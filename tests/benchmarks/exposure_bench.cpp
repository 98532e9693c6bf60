// Distances and field maps over soil.
#include "exposure/limits.hpp"
#include "exposure/surroundings.hpp"
#include "field/field_map.hpp"
#include "survey/keying.hpp"

#include <benchmark/benchmark.h>

namespace loopwright {
namespace {

design::Design over_soil() {
    design::Design d;
    d.conductor.metal.name = "copper";
    d.capacitor.loss.q = 1000;
    d.capacitor.maximum = units::picofarads(2000);
    d.capacitor.minimum = units::picofarads(2);
    d.capacitor.rating.peak_voltage = units::volts(4000);
    d.site.ground.kind = design::GroundKind::soil;
    d.site.ground.class_name = "average ground";
    d.station.bands = {"160m", "80m", "60m", "40m", "30m", "20m", "17m", "15m", "12m", "10m", "6m"};
    return d;
}

survey::KeyingRequest request(bool intervals) {
    survey::KeyingRequest r;
    r.design = over_soil();
    r.limits = {"fcc_1_1310", "icnirp_2020", "icnirp_1998"};
    r.intervals = intervals;
    return r;
}

void nudge(units::Length& length) {
    static int count = 0;
    length += units::millimetres(1e-3 * (1 + ++count % 7));
}

// Aim: 300 ms on two cores, 11 bands, two tiers, three standards.
void distances_after_an_edit_of_geometry(benchmark::State& state) {
    auto r = request(false);
    for (auto _ : state) {
        nudge(r.design.loop.size.value);
        benchmark::DoNotOptimize(survey::keying(r));
    }
}
BENCHMARK(distances_after_an_edit_of_geometry)->Unit(benchmark::kMillisecond)->UseRealTime();

// Aim: 30 ms to the screen.
void distances_after_an_edit_of_power(benchmark::State& state, bool intervals) {
    auto r = request(intervals);
    double watts = 5;
    benchmark::DoNotOptimize(survey::keying(r)); // what is remembered from then on
    for (auto _ : state) {
        r.design.station.power.value = units::watts(watts = watts > 50 ? 5 : watts * 1.01);
        benchmark::DoNotOptimize(survey::keying(r));
    }
}
BENCHMARK_CAPTURE(distances_after_an_edit_of_power, nominal, false)
    ->Unit(benchmark::kMillisecond)
    ->UseRealTime();
BENCHMARK_CAPTURE(distances_after_an_edit_of_power, with_intervals, true)
    ->Unit(benchmark::kMillisecond)
    ->UseRealTime();

// A sheet that tells the powers for people and for the hand that tunes too.
survey::KeyingRequest with_people() {
    auto r = request(true);
    r.design.site.people_distance = units::metres(3);
    r.design.station.reach = units::metres(1.5);
    return r;
}

void sheet_after_an_edit_of_power(benchmark::State& state) {
    auto r = with_people();
    double watts = 5;
    benchmark::DoNotOptimize(survey::keying(r)); // what is remembered from then on
    for (auto _ : state) {
        r.design.station.power.value = units::watts(watts = watts > 50 ? 5 : watts * 1.01);
        benchmark::DoNotOptimize(survey::keying(r));
    }
}
BENCHMARK(sheet_after_an_edit_of_power)->Unit(benchmark::kMillisecond)->UseRealTime();

void sheet_after_an_edit_of_duty(benchmark::State& state) {
    auto r = with_people();
    design::Use use;
    use.habit = design::Habit::listening_turns;
    int step = 0;
    benchmark::DoNotOptimize(survey::keying(r));
    for (auto _ : state) {
        use.over = units::seconds(20 + ++step % 300);
        r.design.station.use = use;
        benchmark::DoNotOptimize(survey::keying(r));
    }
}
BENCHMARK(sheet_after_an_edit_of_duty)->Unit(benchmark::kMillisecond)->UseRealTime();

// Between two emissions whose middles lie apart, so at other frequencies: both stay remembered.
void sheet_after_an_edit_of_emission(benchmark::State& state) {
    auto r = with_people();
    bool voice = false;
    for (const char* emission : {"ssb", "cw"}) {
        r.design.station.emission = emission;
        benchmark::DoNotOptimize(survey::keying(r));
    }
    for (auto _ : state) {
        voice = !voice;
        r.design.station.emission = voice ? "ssb" : "cw";
        benchmark::DoNotOptimize(survey::keying(r));
    }
}
BENCHMARK(sheet_after_an_edit_of_emission)->Unit(benchmark::kMillisecond)->UseRealTime();

// Where the fields were not asked for before: a power far from any before, with every other geometry.
void sheet_after_a_great_leap_of_power(benchmark::State& state) {
    auto r = with_people();
    for (auto _ : state) {
        state.PauseTiming();
        nudge(r.design.loop.size.value);
        r.design.station.power.value = units::watts(5);
        benchmark::DoNotOptimize(survey::keying(r));
        r.design.station.power.value = units::watts(100);
        state.ResumeTiming();
        benchmark::DoNotOptimize(survey::keying(r));
    }
}
BENCHMARK(sheet_after_a_great_leap_of_power)->Unit(benchmark::kMillisecond)->UseRealTime();

void distances_with_intervals(benchmark::State& state) {
    auto r = request(true);
    for (auto _ : state) {
        nudge(r.design.loop.size.value);
        benchmark::DoNotOptimize(survey::keying(r));
    }
}
BENCHMARK(distances_with_intervals)->Unit(benchmark::kMillisecond)->UseRealTime();

// Aim: 400 ms.
void field_map_of_200_by_200(benchmark::State& state) {
    field::MapRequest r;
    r.points = 200;
    for (auto _ : state) {
        benchmark::DoNotOptimize(field::field_map(over_soil(), units::megahertz(7.1), units::watts(5), r));
    }
}
BENCHMARK(field_map_of_200_by_200)->Unit(benchmark::kMillisecond)->UseRealTime();

void one_point_of_the_quick_field(benchmark::State& state) {
    const field::QuickField field(loop::FullWave(over_soil()).solved(units::megahertz(7.1)).value(),
                                  units::metres(10), units::metres(3));
    double x = 0.8;
    for (auto _ : state) {
        x = x > 3 ? 0.8 : x + 0.01;
        benchmark::DoNotOptimize(field.at_1W({x, 0.5, 1.0}));
    }
}
BENCHMARK(one_point_of_the_quick_field)->Unit(benchmark::kMicrosecond);

} // namespace
} // namespace loopwright

BENCHMARK_MAIN();
