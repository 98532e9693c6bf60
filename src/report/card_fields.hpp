#pragma once
// The figures of a row of the retune card under their public names: one list, from which JSON, CSV and the
// reference of the command line come.
#include "report/table.hpp"
#include "survey/card.hpp"

#include <vector>

namespace loopwright::report {

struct CardField {
    const char* path;                      ///< key; of an object with a dot: "fixed_capacitor.capacitance_F"
    const char* meaning;                   ///< for the reference
    Cell (*value)(const survey::CardRow&); ///< SI; nothing where it does not apply
};

/// In the order of the reference. The names are a promise to scripts.
[[nodiscard]] const std::vector<CardField>& card_fields();

/// "upper", "lower", "none".
[[nodiscard]] const char* name_of(band::Sideband sideband) noexcept;

/// All remarks of a row, with semicolons between; may be empty.
[[nodiscard]] std::string remark_of(const survey::CardRow& row);

} // namespace loopwright::report
