#pragma once
// The survey with a model of the caller's making: for tests that need one that is slow, odd or fails.
#include "survey/survey.hpp"

#include <functional>
#include <memory>

namespace loopwright::survey::detail {

using ModelFactory = std::function<std::unique_ptr<loop::LoopModel>(const design::Design&, loop::Model)>;

/// As survey::run, with the model that `make` gives instead of loop::make_model.
[[nodiscard]] Survey run_with(const ModelFactory& make, const Request& request, const base::StopToken& stop,
                              const base::Progress& progress,
                              const std::function<void(const BandRow&)>& band_ready);

/// Ends included, ascending, each from-to step the same ratio; the ends are exactly those given. points 1:
/// `from` alone. Throws what survey::run says.
[[nodiscard]] std::vector<units::Frequency> curve_frequencies(units::Frequency from, units::Frequency to,
                                                              int points);

} // namespace loopwright::survey::detail
