// What a match costs over real ground: one frequency with curve and mistuning, and the sizes for 11 bands.
#include "coupling/coupling_size.hpp"
#include "coupling/match_report.hpp"

#include <benchmark/benchmark.h>

namespace loopwright::coupling {
namespace {

design::Design copper_loop() {
    design::Design d;
    d.capacitor.loss.q = 1000.0;
    d.capacitor.maximum = units::picofarads(3000);
    d.capacitor.minimum = units::picofarads(1);
    d.coupling = design::Coupling{};
    d.site.ground.kind = design::GroundKind::soil;
    return d;
}

void match_one_frequency(benchmark::State& state) {
    const design::Design d = copper_loop();
    for (auto _ : state) {
        benchmark::DoNotOptimize(match_report(d, units::megahertz(14.1), units::watts(5), 2.0));
    }
}
BENCHMARK(match_one_frequency)->Unit(benchmark::kMillisecond);

void sizes_for_eleven_bands(benchmark::State& state) {
    const design::Design d = copper_loop();
    std::vector<units::Frequency> bands;
    for (const double megahertz : {1.84, 3.57, 5.36, 7.07, 10.14, 14.07, 18.1, 21.07, 24.92, 28.07, 50.3}) {
        bands.push_back(units::megahertz(megahertz));
    }
    for (auto _ : state) {
        benchmark::DoNotOptimize(coupling_sizes(d, bands));
    }
}
BENCHMARK(sizes_for_eleven_bands)->Unit(benchmark::kMillisecond)->UseRealTime();

} // namespace
} // namespace loopwright::coupling

BENCHMARK_MAIN();
