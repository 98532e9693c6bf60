// The thin-wire solver by stages: fill once a geometry, series and solution a frequency, ground; and the same
// matrix given to LAPACK (OpenBLAS where it is installed) and to Eigen.
#include "wire/detail/full_matrix.hpp"
#include "wire/detail/moments.hpp"
#include "wire/detail/port_solve.hpp"
#include "wire/detail/symmetric_factor.hpp"
#include "wire/ground_matrix.hpp"
#include "wire/solver.hpp"

#include <Eigen/LU>
#include <benchmark/benchmark.h>
#include <cmath>
#include <map>
#include <numbers>

namespace {

using namespace loopwright;
using Complex = std::complex<double>;

/// A 1 m loop of 22 mm tube with two gaps; 24 elements around make some 50 unknowns.
wire::WireModel loop() {
    geometry::Piece::Turning turning;
    turning.angle_change = 2 * std::numbers::pi;
    turning.radius_start_m = 0.5;
    return {{{{{geometry::Piece::turning(turning), 0}}, 0.011, true}},
            {{0, std::numbers::pi / 2, 0.02}, {0, 0, 0.02}},
            {}};
}

/// Elements around and refinement that give about the wanted number of unknowns.
wire::MeshOptions options_for(std::int64_t unknowns) {
    wire::MeshOptions options;
    while (wire::Mesh(loop(), options).nodes() < static_cast<std::size_t>(unknowns)) {
        options.refinement *= 1.02;
    }
    return options;
}

const wire::Solver& solver_of(std::int64_t unknowns) {
    static std::map<std::int64_t, wire::Solver> made;
    return made.try_emplace(unknowns, loop(), options_for(unknowns), units::megahertz(30)).first->second;
}

const wire::Loading loading{{{0.02, 0.02}}, {}};

void count(benchmark::State& state, const wire::Mesh& mesh) {
    state.counters["unknowns"] = static_cast<double>(mesh.nodes());
}

void geometry_fill(benchmark::State& state) {
    const wire::MeshOptions options = options_for(state.range(0));
    for (auto _ : state) {
        const wire::Solver solver(loop(), options, units::megahertz(30));
        benchmark::DoNotOptimize(&solver.mesh());
    }
    count(state, wire::Mesh(loop(), options));
}

void static_matrices_alone(benchmark::State& state) {
    const wire::Mesh& mesh = solver_of(state.range(0)).mesh();
    for (auto _ : state) {
        benchmark::DoNotOptimize(wire::detail::moments_of(mesh, 2));
    }
    count(state, mesh);
}

void frequency_all(benchmark::State& state) {
    const wire::Solver& solver = solver_of(state.range(0));
    for (auto _ : state) {
        benchmark::DoNotOptimize(solver.solve(units::megahertz(14), loading));
    }
    count(state, solver.mesh());
}

void frequency_series(benchmark::State& state) {
    const wire::Solver& solver = solver_of(state.range(0));
    for (auto _ : state) {
        benchmark::DoNotOptimize(solver.free_space(units::megahertz(14)));
    }
}

void frequency_direct(benchmark::State& state) {
    const wire::Solver& solver = solver_of(state.range(0));
    for (auto _ : state) {
        benchmark::DoNotOptimize(solver.free_space_direct(units::megahertz(14)));
    }
}

void frequency_factor(benchmark::State& state) {
    const wire::FieldMatrix z = solver_of(state.range(0)).free_space(units::megahertz(14));
    for (auto _ : state) {
        const wire::detail::SymmetricFactor factor(z.re, z.im, z.unknowns);
        benchmark::DoNotOptimize(&factor);
    }
}

void ground_pairs(benchmark::State& state) {
    const wire::Mesh& mesh = solver_of(state.range(0)).mesh();
    for (auto _ : state) {
        benchmark::DoNotOptimize(wire::GroundPairs(mesh, 1.5).pairs());
    }
}

void ground_direct(benchmark::State& state) {
    const wire::GroundMatrices ground(solver_of(state.range(0)), {}, {.origin = {0, 0, 1.5}});
    for (auto _ : state) {
        benchmark::DoNotOptimize(ground.direct(units::megahertz(14)));
    }
}

void ground_interpolated(benchmark::State& state) {
    const wire::GroundMatrices ground(solver_of(state.range(0)), {}, {.origin = {0, 0, 1.5}});
    benchmark::DoNotOptimize(ground.at(units::megahertz(14)));
    for (auto _ : state) {
        benchmark::DoNotOptimize(ground.at(units::megahertz(14)));
    }
}

void frequency_over_ground(benchmark::State& state) {
    const wire::Solver& solver = solver_of(state.range(0));
    const wire::GroundMatrices ground(solver, {}, {.origin = {0, 0, 1.5}});
    benchmark::DoNotOptimize(ground.at(units::megahertz(14)));
    for (auto _ : state) {
        const wire::FieldMatrix added = ground.at(units::megahertz(14));
        benchmark::DoNotOptimize(solver.solve(units::megahertz(14), loading, &added));
    }
}

void compare_eigen_lu(benchmark::State& state) {
    const Eigen::MatrixXcd z =
        wire::detail::full_matrix(solver_of(state.range(0)).free_space(units::megahertz(14)));
    for (auto _ : state) {
        benchmark::DoNotOptimize(z.partialPivLu());
    }
}

#ifdef LOOPWRIGHT_LAPACK
extern "C" {
void zgetrf_(const int* m, const int* n, Complex* a, const int* lda, int* pivots, int* info);
void zsytrf_(const char* uplo, const int* n, Complex* a, const int* lda, int* pivots, Complex* work,
             const int* lwork, int* info, std::size_t uplo_length);
}

void compare_lapack_zgetrf(benchmark::State& state) {
    const Eigen::MatrixXcd z =
        wire::detail::full_matrix(solver_of(state.range(0)).free_space(units::megahertz(14)));
    const auto n = static_cast<int>(z.rows());
    std::vector<int> pivots(static_cast<std::size_t>(n));
    int info = 0;
    for (auto _ : state) {
        Eigen::MatrixXcd copy = z;
        zgetrf_(&n, &n, copy.data(), &n, pivots.data(), &info);
        benchmark::DoNotOptimize(copy.data());
    }
}

void compare_lapack_zsytrf(benchmark::State& state) {
    const Eigen::MatrixXcd z =
        wire::detail::full_matrix(solver_of(state.range(0)).free_space(units::megahertz(14)));
    const auto n = static_cast<int>(z.rows());
    const int room = 64 * n;
    std::vector<int> pivots(static_cast<std::size_t>(n));
    std::vector<Complex> work(static_cast<std::size_t>(room));
    int info = 0;
    for (auto _ : state) {
        Eigen::MatrixXcd copy = z;
        zsytrf_("L", &n, copy.data(), &n, pivots.data(), work.data(), &room, &info, 1);
        benchmark::DoNotOptimize(copy.data());
    }
}
BENCHMARK(compare_lapack_zgetrf)->Arg(60)->Arg(120)->Arg(240)->Unit(benchmark::kMicrosecond);
BENCHMARK(compare_lapack_zsytrf)->Arg(60)->Arg(120)->Arg(240)->Unit(benchmark::kMicrosecond);
#endif

BENCHMARK(geometry_fill)->Arg(60)->Arg(120)->Arg(240)->Unit(benchmark::kMillisecond);
BENCHMARK(static_matrices_alone)->Arg(60)->Arg(120)->Arg(240)->Unit(benchmark::kMillisecond);
BENCHMARK(frequency_all)->Arg(60)->Arg(120)->Arg(240)->Unit(benchmark::kMicrosecond);
BENCHMARK(frequency_series)->Arg(60)->Arg(120)->Arg(240)->Unit(benchmark::kMicrosecond);
BENCHMARK(frequency_factor)->Arg(60)->Arg(120)->Arg(240)->Unit(benchmark::kMicrosecond);
BENCHMARK(frequency_direct)->Arg(60)->Unit(benchmark::kMicrosecond);
BENCHMARK(frequency_over_ground)->Arg(60)->Arg(120)->Unit(benchmark::kMicrosecond);
BENCHMARK(ground_pairs)->Arg(60)->Unit(benchmark::kMicrosecond);
BENCHMARK(ground_direct)->Arg(60)->Unit(benchmark::kMicrosecond);
BENCHMARK(ground_interpolated)->Arg(60)->Unit(benchmark::kMicrosecond);
BENCHMARK(compare_eigen_lu)->Arg(60)->Arg(120)->Arg(240)->Unit(benchmark::kMicrosecond);

} // namespace

BENCHMARK_MAIN();
