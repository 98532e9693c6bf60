// What an edit of a calibration point costs: from the points to every figure of the page.
#include "tuning/calibration_report.hpp"
#include "tuning/design_dial.hpp"

#include <benchmark/benchmark.h>

namespace loopwright {
namespace {

design::Design calibrated(int points) {
    design::Design design;
    design.conductor.metal.name = "copper";
    design.capacitor.loss.q = 1000;
    design.capacitor.stray = units::picofarads(4);
    design.capacitor.dial.emplace();
    design.station.bands = {"40m", "30m", "20m", "17m", "15m"};
    const auto dial = tuning::calibrated_dial(design);
    auto& calibration = design.calibration.emplace();
    for (int i = 0; i < points; ++i) {
        const units::Frequency f = units::megahertz(9 + 11.0 * i / points);
        const double wave = 0.4 * ((7 * i) % 5 - 2); // readings scatter by a degree
        calibration.points.push_back({dial.at(f)->reading + 2 + wave, f});
    }
    return design;
}

// Aim: well under 10 ms for the points a person measures.
void fit(benchmark::State& state) {
    design::Design design = calibrated(static_cast<int>(state.range(0)));
    const auto curve = tuning::design_curve(design);
    for (auto _ : state) {
        design.calibration->points.front().reading += 1e-3;
        benchmark::DoNotOptimize(tuning::calibrated_dial(design, curve));
    }
}
BENCHMARK(fit)->Arg(4)->Arg(10)->Arg(30)->Arg(300)->Unit(benchmark::kMillisecond);

void whole_report(benchmark::State& state) {
    design::Design design = calibrated(static_cast<int>(state.range(0)));
    const auto curve = tuning::design_curve(design);
    for (auto _ : state) {
        design.calibration->points.front().reading += 1e-3;
        benchmark::DoNotOptimize(tuning::calibration_report(design, curve));
    }
}
BENCHMARK(whole_report)->Arg(6)->Unit(benchmark::kMillisecond);

} // namespace
} // namespace loopwright

BENCHMARK_MAIN();
