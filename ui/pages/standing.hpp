#pragma once
// Symbol and word for how a number stands: colour alone never says it.
#include "base/notice.hpp"
#include "models/headline.hpp"

#include <QString>

namespace loopwright::pages {

/// Symbol with a blank behind it, empty for Standing::plain.
[[nodiscard]] QString standing_mark(models::Standing standing);
/// Symbol and word in front of a notice: "▲ Caution: ".
[[nodiscard]] QString severity_mark(base::Severity severity);

} // namespace loopwright::pages
