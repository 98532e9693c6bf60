#pragma once
// What every number of the full-wave model must be read with.
#include "base/notice.hpp"
#include "design/design.hpp"

namespace loopwright::loop::detail {

/// of_design: what the design's parts say, see design_notices.hpp.
[[nodiscard]] base::Notices full_wave_notices(const design::Design& design, const base::Notices& of_design);

} // namespace loopwright::loop::detail
