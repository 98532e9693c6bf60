#pragma once
// The closed-form model: one uniform current and the one that the loop's own charge asks for.
#include "loop/loop_model.hpp"

namespace loopwright::loop {

/// Up to this many wavelengths of conductor the model stands behind its numbers.
inline constexpr double closed_form_range_wavelengths = 0.40;

/// Relative error of the model's radiation resistance and current shape at a conductor of so many
/// wavelengths, inputs taken as exact. From comparison with a Fourier series solution of circular loops, see
/// docs/theory.
[[nodiscard]] double closed_form_relative_error(double perimeter_in_wavelengths, int turns) noexcept;

[[nodiscard]] std::unique_ptr<LoopModel> make_closed_form(const design::Design& design);

} // namespace loopwright::loop
