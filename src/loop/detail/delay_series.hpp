#pragma once
// The delay along the loop as a series in the wave number, (L.12) and (L.13).
#include "loop/detail/loop_series.hpp"

#include <array>
#include <cstddef>

namespace loopwright::loop::detail {

/// Double integrals over the whole path, p from 0 to powers - 1: f_i f_k R^p ds.ds' [m^(p + 2)] of the
/// currents, by p and entry(); f_i' f_k' R^p ds ds' of their charges, by p and 11 12 22 (the uniform current
/// has none).
struct DelayMoments {
    static constexpr std::size_t powers = 7;
    static constexpr std::size_t current_products = 6, charge_products = 3;
    std::array<double, powers * current_products> current{};
    std::array<double, powers * charge_products> charge{};
};

/// Adds radiation and the delay of the reactive field to `radiation` and `reactance`.
void add_delays(const DelayMoments& moments, LoopSeries& series) noexcept;

} // namespace loopwright::loop::detail
