#pragma once
// What every number of the full-wave model must be read with.
#include "base/notice.hpp"
#include "design/design.hpp"

namespace loopwright::loop::detail {

/// of_design: what the design's parts say, see design_notices.hpp.
[[nodiscard]] base::Notices full_wave_notices(const design::Design& design, const base::Notices& of_design);

/// What a point is read with, by how far the model got.
struct PointNotices {
    base::Notices established, beyond, self_resonant;
    explicit PointNotices(const base::Notices& of_model);
};

} // namespace loopwright::loop::detail
