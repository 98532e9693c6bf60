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
    static_assert(RingModes::singly + 1 < RingKernel::low, "orders of the kernel");
    for (std::size_t n = 0; n < scalar.size(); ++n) {
        scalar[n] = kernel.of(n);
    }
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

// A place of the integral, in the phase t = n alpha: weight of dt, sin t / t.
struct PhasePoint {
    double phase, weight, spread, log_phase;
};

template <class Sink>
void panel(double from, double to, const Sink& sink) {
    const double half = 0.5 * (to - from);
    for (const PanelPoint& at : panel_points) {
        const double phase = 0.5 * (from + to) + half * at.place;
        sink(PhasePoint{phase, half * at.weight, std::sin(phase) / phase, std::log(phase)});
    }
}

// From a whole number of half turns on with sin^2 = 1/2, in y = from/t from 0 to 1. What cos 2t adds begins
// with an eighth of the slope there, of terms that fall as t^-3 (thick wires) to t^-4.
template <class Sink>
void tail(double from, const Sink& sink) {
    sink(PhasePoint{from, -3.5 / (8 * from), 1 / from, std::log(from)});
    for (const PanelPoint& at : panel_points) {
        const double phase = from / (0.5 * (1 + at.place));
        sink(PhasePoint{phase, 0.5 * at.weight * phase * phase / from, std::sqrt(0.5) / phase,
                        std::log(phase)});
    }
}

// The last three quarters of the first turn and the tail behind it.
class FixedPhases {
public:
    FixedPhases() {
        std::size_t count = 0;
        const auto keep = [&](const PhasePoint& point) { points_.at(count++) = point; };
        for (int quarter = 1; quarter < 4; ++quarter) {
            panel(0.5 * pi * quarter, 0.5 * pi * (quarter + 1), keep);
        }
        tail(2 * pi, keep);
    }
    template <class Sink>
    void from_quarter(std::size_t quarter, const Sink& sink) const {
        std::for_each(points_.begin() + std::ptrdiff_t((quarter - 1) * panel_points.size()), points_.end(),
                      sink);
    }

private:
    std::array<PhasePoint, 4 * panel_points.size() + 1> points_{};
};

} // namespace

RingModes ring_modes(double ratio, double alpha) noexcept {
    static const FixedPhases fixed;
    RingModes modes;
    const RingKernel kernel(ratio);
    one_by_one(modes, kernel, alpha);
    const double scale = 1 / alpha;
    const double log_alpha = std::log(alpha);
    const auto add = [&](const PhasePoint& at) {
        const std::size_t i = modes.size++;
        const double order = at.phase * scale;
        modes.order[i] = order;
        modes.weight[i] = at.weight * scale;
        modes.spread[i] = at.spread;
        modes.scalar[i] = modes.vector[i] = kernel.beyond(order, at.log_phase - log_alpha);
        modes.yield[i] = 1 / (order * order * modes.scalar[i]);
    };
    // Panels are no longer than a quarter turn nor than 2.5 times where they begin.
    double from = (double(RingModes::singly) - 0.5) * alpha;
    const auto next = [](double t, double step) { return step * (std::floor(t / step) + 1); };
    const double step = from < 2 * pi ? 0.5 * pi : pi;
    const double fixed_from = next(from, step);
    while (2.5 * from < fixed_from && modes.size + 8 * panel_points.size() < RingModes::capacity) {
        panel(from, 2.5 * from, add);
        from *= 2.5;
    }
    panel(from, fixed_from, add);
    if (from < 1.5 * pi) {
        fixed.from_quarter(static_cast<std::size_t>(std::lround(fixed_from / (0.5 * pi))), add);
    } else {
        tail(fixed_from, add);
    }
    return modes;
}

} // namespace loopwright::loop::detail
