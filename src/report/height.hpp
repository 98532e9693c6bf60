#pragma once
// What height does to a loop, as JSON (docs/reference/cli.md), CSV and a text page.
#include "report/page.hpp"
#include "survey/height.hpp"

#include <string>

namespace loopwright::report {

[[nodiscard]] std::string height_json(const survey::HeightSweep& sweep);
[[nodiscard]] Table height_data(const survey::HeightSweep& sweep);
[[nodiscard]] Page height_page(const survey::HeightSweep& sweep);

} // namespace loopwright::report
