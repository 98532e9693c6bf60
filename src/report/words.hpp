#pragma once
// Names of enumerations for people and for scripts.
#include "loop/operating_point.hpp"
#include "survey/survey.hpp"

#include <optional>
#include <string>
#include <string_view>

namespace loopwright::report {

/// "closed-form", "full-wave": what --model and the key `model` say.
[[nodiscard]] const char* name_of(loop::Model model) noexcept;
[[nodiscard]] std::optional<loop::Model> model_named(std::string_view name) noexcept;

/// A verdict in at most 17 characters, for a column ("over the rating"); never calls a band harmless.
[[nodiscard]] const char* words_of(survey::BandVerdict verdict) noexcept;

/// A quantity as units::shown has it, with ordinary blanks for a terminal or a mail.
[[nodiscard]] std::string with_plain_blanks(std::string text);

} // namespace loopwright::report
