#include "loop/detail/ring_modes.hpp"

#include "units/constants.hpp"

#include <algorithm>
#include <cmath>

namespace loopwright::loop::detail {
namespace {

using units::constants::pi;

// Gauss points and weights for -1 to 1 (A&S 25.4.30).
struct PanelPoint {
    double place, weight;
};
constexpr std::array<PanelPoint, 5> panel_points{{{-0.9061798459386640, 0.2369268850561891},
                                                  {-0.5384693101056831, 0.4786286704993665},
                                                  {0.0, 0.5688888888888889},
                                                  {0.5384693101056831, 0.4786286704993665},
                                                  {0.9061798459386640, 0.2369268850561891}}};

void one_by_one(RingModes& modes, const RingKernel& kernel, double alpha) noexcept {
    std::array<double, RingModes::singly + 2> scalar{};
    static_assert(RingModes::singly + 1 <= RingKernel::low, "orders of the kernel");
    for (std::size_t n = 0; n <= RingModes::singly; ++n) {
        scalar[n] = kernel.of(n);
    }
    scalar[RingModes::singly + 1] = kernel.beyond(double(RingModes::singly + 1));
    modes.scalar_0 = scalar[0];
    modes.vector_0 = scalar[1];
    // sin(n alpha) by turning on.
    const double sine_1 = std::sin(alpha);
    const double cosine_1 = std::cos(alpha);
    double sine = 0;
    double cosine = 1;
    for (std::size_t n = 1; n <= RingModes::singly; ++n) {
        const double next = sine * cosine_1 + cosine * sine_1;
        cosine = cosine * cosine_1 - sine * sine_1;
        sine = next;
        const std::size_t i = n - 1;
        modes.order[i] = double(n);
        modes.weight[i] = 1;
        modes.spread[i] = sine / (double(n) * alpha);
        modes.scalar[i] = scalar[n];
        modes.yield[i] = 1 / (double(n * n) * scalar[n]);
        modes.vector[i] = 0.5 * (scalar[n - 1] + scalar[n + 1]);
        modes.alternating[i] = n % 2 == 0 ? 1 : -1;
    }
    // The sum beyond 32.5 is the integral and F'/24; the alternating one -F/2, both from the neighbours.
    constexpr std::size_t last = RingModes::singly - 1;
    modes.weight[last - 1] = 1 - 1.0 / 24;
    modes.weight[last] = 1.0 / 24;
    modes.alternating[last - 1] = 1 - 0.25;
    modes.alternating[last] = -0.25;
    modes.size = RingModes::singly;
}

void add_mode(RingModes& modes, const RingKernel& kernel, double order, double weight,
              double spread) noexcept {
    const std::size_t i = modes.size++;
    modes.order[i] = order;
    modes.weight[i] = weight;
    modes.spread[i] = spread;
    modes.scalar[i] = modes.vector[i] = kernel.beyond(order);
    modes.yield[i] = 1 / (order * order * modes.scalar[i]);
}

} // namespace

RingModes ring_modes(double ratio, double alpha) noexcept {
    RingModes modes;
    const RingKernel kernel(ratio);
    one_by_one(modes, kernel, alpha);
    // Panels of the phase t = n alpha: no longer than a quarter turn nor than 2.5 times where they begin. The
    // last one ends at the first half turn from the full turn on.
    const auto next = [](double t, double step) { return step * (std::floor(t / step + 1e-9) + 1); };
    double from = (double(RingModes::singly) - 0.5) * alpha;
    const double last = std::max(2 * pi, next(from, pi));
    while (from < last - 1e-9 && modes.size + 2 * panel_points.size() < RingModes::capacity) {
        const double to = std::min(next(from, 0.5 * pi), 2.5 * from);
        const double half = 0.5 * (to - from);
        for (const PanelPoint& at : panel_points) {
            const double phase = 0.5 * (from + to) + half * at.place;
            add_mode(modes, kernel, phase / alpha, half * at.weight / alpha, std::sin(phase) / phase);
        }
        from = to;
    }
    // The rest with sin^2 = 1/2, in y = from/t from 0 to 1. What cos 2t adds begins with an eighth of the
    // slope there, of terms that fall as t^-3 (thick wires) to t^-4.
    add_mode(modes, kernel, from / alpha, -3.5 / (8 * from * alpha), 1 / from);
    for (const PanelPoint& at : panel_points) {
        const double y = 0.5 * (1 + at.place);
        add_mode(modes, kernel, from / (y * alpha), 0.5 * at.weight * from / (alpha * y * y),
                 std::sqrt(0.5) * y / from);
    }
    return modes;
}

} // namespace loopwright::loop::detail
