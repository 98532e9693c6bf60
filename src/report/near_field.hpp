#pragma once
// Fields near a loop at points asked for, as JSON (docs/reference/cli.md), CSV and a text page.
#include "base/notice.hpp"
#include "report/page.hpp"
#include "units/quantities.hpp"

#include <array>
#include <optional>
#include <string>
#include <vector>

namespace loopwright::report {

struct FieldPoint {
    std::array<units::Length, 3> position; ///< x, y, z
    /// rms; nothing nearer than 0.2 m to the conductor where a plane was asked for.
    std::optional<units::ElectricField> electric;
    std::optional<units::MagneticField> magnetic;
};
struct FieldAnswer {
    design::Design design;
    units::Frequency frequency{};
    units::Power power{};
    std::vector<FieldPoint> points; ///< empty: not established, a notice says why
    base::Notices notices;
};
[[nodiscard]] std::string field_json(const FieldAnswer& answer);
[[nodiscard]] Table field_data(const FieldAnswer& answer);
[[nodiscard]] Page field_page(const FieldAnswer& answer);

} // namespace loopwright::report
