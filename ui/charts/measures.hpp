#pragma once
// Measures that figures share.

namespace loopwright::charts {

inline constexpr double pad_px = 4.0; ///< between words and what stands beside them

} // namespace loopwright::charts
