#pragma once
// The exposure limits as JSON (docs/reference/cli.md), CSV and a text page.
#include "exposure/limits.hpp"
#include "report/match.hpp"
#include "report/page.hpp"

#include <optional>
#include <string>
#include <vector>

namespace loopwright::report {

struct LimitsAnswer {
    std::vector<exposure::Limit> limits;
    std::optional<units::Frequency> frequency; ///< given: the values there as well
};
[[nodiscard]] std::string limits_json(const LimitsAnswer& answer);
/// Without a frequency a row for each row of the tables, else a row for each tier.
[[nodiscard]] Table limits_data(const LimitsAnswer& answer);
[[nodiscard]] Page limits_page(const LimitsAnswer& answer);

/// "824/f", "87/√f", "300/f^0.7", "28": a row's law with f in MHz.
[[nodiscard]] std::string law_text(double coefficient, double exponent);

/// For the reference: the keys of limits_json, `schema` left out.
[[nodiscard]] const std::vector<KeyMeaning>& limits_keys();

} // namespace loopwright::report
