#pragma once
// The radiation pattern of a loop where it stands, as JSON (docs/reference/cli.md), CSV and a text page.
#include "field/pattern.hpp"
#include "report/page.hpp"

#include <optional>
#include <string>

namespace loopwright::report {

struct PatternAnswer {
    design::Design design;
    units::Frequency frequency{};
    std::optional<field::Pattern> pattern; ///< nothing: not established, a notice says why
    base::Notices notices;
};
[[nodiscard]] std::string pattern_json(const PatternAnswer& answer);
/// Both cuts, one below the other: cut, angle, gain, the dipole's gain.
[[nodiscard]] Table pattern_data(const PatternAnswer& answer);
[[nodiscard]] Page pattern_page(const PatternAnswer& answer);

} // namespace loopwright::report
