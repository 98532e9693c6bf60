// Cost of one internal impedance, of the proximity loss and of what is prepared once a design.
#include "capacitor/capacitor.hpp"
#include "conductor/conductor.hpp"
#include "conductor/curvature.hpp"
#include "conductor/proximity.hpp"

#include <benchmark/benchmark.h>

namespace {

using namespace loopwright;

conductor::ConductorSpec copper(conductor::Form form) {
    conductor::ConductorSpec spec;
    spec.form = form;
    spec.conductivity = units::siemens_per_metre(58e6);
    spec.temperature_coefficient = units::per_kelvin(0.00393);
    return spec;
}

// Frequencies that differ at every call, near the given one: no branch or value is learnt by heart.
void ask(benchmark::State& state, const conductor::ConductorSpec& spec, double frequency_Hz) {
    const conductor::Conductor conductor(spec);
    double f_Hz = frequency_Hz;
    for (auto _ : state) {
        benchmark::DoNotOptimize(conductor.internal_impedance_ohm_per_m(f_Hz));
        f_Hz = f_Hz < 1.2 * frequency_Hz ? f_Hz * 1.001 : frequency_Hz;
    }
}

void wire_2mm_7MHz(benchmark::State& state) {
    auto spec = copper(conductor::Form::wire);
    spec.diameter = units::millimetres(2);
    ask(state, spec, 7e6);
}
void wire_2mm_50kHz(benchmark::State& state) {
    auto spec = copper(conductor::Form::wire);
    spec.diameter = units::millimetres(2);
    ask(state, spec, 50e3);
}
void tube_22x1mm_7MHz(benchmark::State& state) {
    auto spec = copper(conductor::Form::tube);
    spec.diameter = units::millimetres(22);
    spec.wall = units::millimetres(1);
    ask(state, spec, 7e6);
}
void tube_15x0_5mm_1_8MHz(benchmark::State& state) { // wall 10 skin depths: the cross product
    auto spec = copper(conductor::Form::tube);
    spec.diameter = units::millimetres(15);
    spec.wall = units::millimetres(0.5);
    ask(state, spec, 1.8e6);
}
void tube_10mm_x_35um_7MHz(benchmark::State& state) { // wall 1.4 skin depths: the Taylor series
    auto spec = copper(conductor::Form::tube);
    spec.diameter = units::millimetres(10);
    spec.wall = units::millimetres(0.035);
    ask(state, spec, 7e6);
}
void strip_30x2mm_7MHz(benchmark::State& state) {
    auto spec = copper(conductor::Form::strip);
    spec.width = units::millimetres(30);
    spec.thickness = units::millimetres(2);
    ask(state, spec, 7e6);
}
void prepare_strip(benchmark::State& state) {
    auto spec = copper(conductor::Form::strip);
    spec.width = units::millimetres(30);
    spec.thickness = units::millimetres(2);
    for (auto _ : state) {
        benchmark::DoNotOptimize(conductor::Conductor(spec));
    }
}
void prepare_ring(benchmark::State& state) {
    for (auto _ : state) {
        benchmark::DoNotOptimize(conductor::ring_current(units::metres(0.5), units::metres(0.011)));
    }
}
void prepare_proximity(benchmark::State& state) {
    const double spacing = static_cast<double>(state.range(1)) / 100.0;
    for (auto _ : state) {
        benchmark::DoNotOptimize(conductor::ProximityLoss(static_cast<int>(state.range(0)), spacing));
    }
}
void proximity_added(benchmark::State& state) {
    const conductor::ProximityLoss loss(3, 2.0);
    double q = 40.0;
    for (auto _ : state) {
        benchmark::DoNotOptimize(loss.added(q));
        q = q < 60.0 ? q * 1.001 : 40.0;
    }
}
void capacitor_series_loss(benchmark::State& state) {
    capacitor::CapacitorSpec spec;
    spec.minimum = units::picofarads(12);
    spec.maximum = units::picofarads(150);
    const capacitor::Capacitor capacitor(spec);
    double f_Hz = 7e6;
    for (auto _ : state) {
        benchmark::DoNotOptimize(capacitor.series_loss(units::picofarads(80), units::hertz(f_Hz)));
        f_Hz = f_Hz < 9e6 ? f_Hz * 1.001 : 7e6;
    }
}

BENCHMARK(wire_2mm_7MHz);
BENCHMARK(wire_2mm_50kHz);
BENCHMARK(tube_22x1mm_7MHz);
BENCHMARK(tube_15x0_5mm_1_8MHz);
BENCHMARK(tube_10mm_x_35um_7MHz);
BENCHMARK(strip_30x2mm_7MHz);
BENCHMARK(prepare_strip);
BENCHMARK(prepare_ring);
BENCHMARK(prepare_proximity)->Args({2, 200})->Args({4, 150})->Args({12, 105});
BENCHMARK(proximity_added);
BENCHMARK(capacitor_series_loss);

} // namespace

BENCHMARK_MAIN();
