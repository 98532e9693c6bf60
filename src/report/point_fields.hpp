#pragma once
// The figures of an operating point under their public names: one list, from which JSON, CSV and the
// reference of the command line come.
#include "loop/operating_point.hpp"
#include "report/table.hpp"

#include <string_view>
#include <vector>

namespace loopwright::report {

struct PointField {
    const char* path;                           ///< key; of an object with a dot: "resistance_ohm.total"
    const char* meaning;                        ///< for the reference
    Cell (*value)(const loop::OperatingPoint&); ///< SI; nothing where it does not apply or is not established
};

/// In the order of the reference, `schema` and `notices` left out. The names are a promise to scripts.
[[nodiscard]] const std::vector<PointField>& point_fields();

/// One figure by its path. Throws base::ProgramError for a path that is not in the list.
[[nodiscard]] Cell figure(const loop::OperatingPoint& point, std::string_view path);

} // namespace loopwright::report
