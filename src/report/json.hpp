#pragma once
// Results as JSON under the public names (docs/reference/cli.md).
#include "loop/operating_point.hpp"
#include "survey/keying.hpp"
#include "survey/survey.hpp"

#include <string>

namespace loopwright::report {

/// One object, indented by two blanks, with a line feed at its end. Every key is there; null where a figure
/// does not apply or is not established. Numbers are SI, shortest exact digits. Throws base::ProgramError
/// where a number is not finite.
[[nodiscard]] std::string point_json(const loop::OperatingPoint& point);

/// The curve of a survey: an object with `rows`, each with the keys of a point.
[[nodiscard]] std::string sweep_json(const survey::Survey& survey);

/// The bands of a survey: an object with `bands`, each with the keys of a point besides `band`, `verdict`,
/// `verdict_text`, `further` [{`verdict`, `text`}] and `distance_m` with `..._high` and `distance_limit`:
/// null without the report before keying of the same design.
[[nodiscard]] std::string bands_json(const survey::Survey& survey, const survey::Keying* keying = nullptr);

} // namespace loopwright::report
