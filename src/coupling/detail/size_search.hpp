#pragma once
// What the searches for the size of a coupling share.
#include "base/job.hpp"
#include "design/design.hpp"
#include "loop/operating_point.hpp"

#include <functional>
#include <optional>
#include <vector>

namespace loopwright::coupling::detail {

using Resonances = std::vector<std::optional<loop::Resonance>>;

/// Of the loop without its coupling; fewer than asked for after a stop.
[[nodiscard]] Resonances resonances_of(const design::Design& design,
                                       const std::vector<units::Frequency>& frequencies,
                                       const base::StopToken& stop);

/// Places of the frequencies that one size for all is for: those that the capacitor reaches, where it reaches
/// none those that any capacitor tunes.
[[nodiscard]] std::vector<std::size_t> counted(const Resonances& own);

/// The argument of the least value: an even look over the range, then Brent's minimum.
[[nodiscard]] double least_at(const std::function<double(double)>& function, double low, double high);

} // namespace loopwright::coupling::detail
