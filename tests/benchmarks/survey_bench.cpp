// A survey of 11 bands and a dense curve, both models, after the edits a person makes: wall time on all
// cores.
#include "survey/card.hpp"
#include "survey/height.hpp"
#include "survey/survey.hpp"

#include <benchmark/benchmark.h>

namespace loopwright {
namespace {

survey::Request over_soil(int points) {
    survey::Request request;
    request.design.conductor.metal.name = "copper";
    request.design.capacitor.loss.q = 1000;
    request.design.site.ground.kind = design::GroundKind::soil;
    request.design.site.ground.class_name = "average ground";
    request.points = points;
    request.to = units::megahertz(30);
    return request;
}

constexpr int curve_points = 11 * 21;

/// Nudged, so that nothing from before serves.
void nudge(units::Length& length) {
    static int count = 0;
    length += units::millimetres(1e-3 * (1 + ++count % 7));
}

void closed_form_11_bands_101_points(benchmark::State& state) {
    survey::Request request = over_soil(11 * 101);
    request.model = loop::Model::closed_form;
    for (auto _ : state) {
        nudge(request.design.loop.size.value);
        benchmark::DoNotOptimize(survey::run(request));
    }
}
BENCHMARK(closed_form_11_bands_101_points)
    ->Unit(benchmark::kMillisecond)
    ->MeasureProcessCPUTime()
    ->UseRealTime();

void full_wave_11_bands_101_points(benchmark::State& state) {
    survey::Request request = over_soil(11 * 101);
    for (auto _ : state) {
        nudge(request.design.loop.size.value);
        benchmark::DoNotOptimize(survey::run(request));
    }
}
BENCHMARK(full_wave_11_bands_101_points)
    ->Unit(benchmark::kMillisecond)
    ->MeasureProcessCPUTime()
    ->UseRealTime();

// Aim: 90 ms on two cores.
void full_wave_after_an_edit_of_geometry(benchmark::State& state) {
    survey::Request request = over_soil(curve_points);
    for (auto _ : state) {
        nudge(request.design.loop.size.value);
        benchmark::DoNotOptimize(survey::run(request));
    }
}
BENCHMARK(full_wave_after_an_edit_of_geometry)
    ->Unit(benchmark::kMillisecond)
    ->MeasureProcessCPUTime()
    ->UseRealTime();

void full_wave_after_an_edit_of_height(benchmark::State& state) {
    survey::Request request = over_soil(curve_points);
    for (auto _ : state) {
        nudge(request.design.site.lowest_point.value);
        benchmark::DoNotOptimize(survey::run(request));
    }
}
BENCHMARK(full_wave_after_an_edit_of_height)
    ->Unit(benchmark::kMillisecond)
    ->MeasureProcessCPUTime()
    ->UseRealTime();

// A good one, and one so poor that the edges of the band are looked for on the ports' admittances.
void full_wave_after_an_edit_of_capacitor_loss(benchmark::State& state) {
    survey::Request request = over_soil(curve_points);
    request.design.capacitor.loss.q = static_cast<double>(state.range(0));
    benchmark::DoNotOptimize(survey::run(request)); // what is kept
    for (auto _ : state) {
        request.design.capacitor.loss.q = *request.design.capacitor.loss.q * 1.000001;
        benchmark::DoNotOptimize(survey::run(request));
    }
}
BENCHMARK(full_wave_after_an_edit_of_capacitor_loss)
    ->Arg(1000)
    ->Arg(100)
    ->Unit(benchmark::kMillisecond)
    ->MeasureProcessCPUTime()
    ->UseRealTime();

void full_wave_after_an_edit_of_power(benchmark::State& state) {
    survey::Request request = over_soil(curve_points);
    for (auto _ : state) {
        request.design.station.power.value *= 1.000001;
        benchmark::DoNotOptimize(survey::run(request));
    }
}
BENCHMARK(full_wave_after_an_edit_of_power)
    ->Unit(benchmark::kMillisecond)
    ->MeasureProcessCPUTime()
    ->UseRealTime();

/// 11 bands, some 6 frequencies each, with a dial.
survey::CardRequest whole_card() {
    survey::CardRequest request;
    request.design = over_soil(0).design;
    request.design.capacitor.dial = design::Dial{};
    return request;
}

// Aim: 20 ms, the survey kept: after an edit of the dial's law, scale or drive.
void card_after_an_edit_of_the_dial(benchmark::State& state) {
    survey::CardRequest request = whole_card();
    std::size_t rows = survey::card(request).rows.size();
    for (auto _ : state) {
        request.design.capacitor.dial->hand_step *= 1.000001;
        rows = survey::card(request).rows.size();
        benchmark::DoNotOptimize(rows);
    }
    state.counters["rows"] = static_cast<double>(rows);
}
BENCHMARK(card_after_an_edit_of_the_dial)
    ->Unit(benchmark::kMillisecond)
    ->MeasureProcessCPUTime()
    ->UseRealTime();

// The ground's matrices kept, every point solved anew.
void card_after_an_edit_of_capacitor_loss(benchmark::State& state) {
    survey::CardRequest request = whole_card();
    for (auto _ : state) {
        request.design.capacitor.loss.q = *request.design.capacitor.loss.q * 1.000001;
        benchmark::DoNotOptimize(survey::card(request));
    }
}
BENCHMARK(card_after_an_edit_of_capacitor_loss)
    ->Unit(benchmark::kMillisecond)
    ->MeasureProcessCPUTime()
    ->UseRealTime();

void height_sweep_of_24(benchmark::State& state) {
    survey::HeightRequest request;
    request.design = over_soil(0).design;
    for (auto _ : state) {
        nudge(request.design.loop.size.value);
        benchmark::DoNotOptimize(survey::height_sweep(request));
    }
}
BENCHMARK(height_sweep_of_24)->Unit(benchmark::kMillisecond)->MeasureProcessCPUTime()->UseRealTime();

} // namespace
} // namespace loopwright

BENCHMARK_MAIN();
