// The closed-form model: one operating point of a prepared design, and with its geometry new each time.
#include "loop/loop_model.hpp"

#include <benchmark/benchmark.h>

namespace loopwright {
namespace {

design::Design circle() {
    design::Design d;
    d.conductor.metal.name = "copper";
    d.capacitor.loss.q = 1000;
    return d;
}

design::Design octagon() {
    design::Design d = circle();
    d.loop.outline = design::Outline::polygon;
    d.loop.size_is = design::SizeMeaning::across_flats;
    return d;
}

design::Design stack(int turns) {
    design::Design d = circle();
    d.loop.turns = turns;
    d.conductor.diameter = units::millimetres(8);
    return d;
}

void point_of_prepared(benchmark::State& state) {
    const auto model = loop::make_model(circle(), loop::Model::closed_form);
    double frequency = 7e6;
    for (auto _ : state) {
        frequency = frequency < 28e6 ? frequency * 1.001 : 7e6;
        benchmark::DoNotOptimize(model->at(units::hertz(frequency), units::watts(5), 2.0));
    }
    state.SetItemsProcessed(state.iterations());
}
BENCHMARK(point_of_prepared);

void point_with_new_geometry(benchmark::State& state, design::Design (*make)()) {
    design::Design design = make();
    double size = 0.8;
    for (auto _ : state) {
        size = size < 1.2 ? size * 1.001 : 0.8;
        design.loop.size = units::metres(size);
        const auto model = loop::make_model(design, loop::Model::closed_form);
        benchmark::DoNotOptimize(model->at(units::megahertz(7.1), units::watts(5), 2.0));
    }
    state.SetItemsProcessed(state.iterations());
}
BENCHMARK_CAPTURE(point_with_new_geometry, circle, circle);
BENCHMARK_CAPTURE(point_with_new_geometry, octagon, octagon);
BENCHMARK_CAPTURE(point_with_new_geometry, two_turns, [] { return stack(2); });
BENCHMARK_CAPTURE(point_with_new_geometry, six_turns, [] { return stack(6); });

} // namespace
} // namespace loopwright

BENCHMARK_MAIN();
