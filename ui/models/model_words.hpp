#pragma once
// Which model a number is from, in words: the same ones on every page, in print and in exports.
#include "design/design.hpp"
#include "loop/operating_point.hpp"

#include <QString>

namespace loopwright::models {

/// "full wave", "closed form".
[[nodiscard]] QString model_name(loop::Model model);
/// What lies below the loop: "average ground", "soil of 13 and 5 mS/m", "perfect ground", "free space".
[[nodiscard]] QString ground_name(const design::Ground& ground);
/// Model and what it computes for: "full wave, over average ground", "closed form, in free space".
[[nodiscard]] QString model_and_ground(loop::Model model, const design::Ground& ground);

/// Whether figures of a model hold for the site, and what is to be thought of where they do not: a sentence.
[[nodiscard]] QString site_words(loop::Model model, const design::Ground& ground);

} // namespace loopwright::models
