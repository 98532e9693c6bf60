#pragma once
// Measures that every part of the window shares.

namespace loopwright {

inline constexpr int unit_px = 8;       ///< distances between parts are whole or half units
inline constexpr int patience_ms = 250; ///< how long a result of an older state may pass for the present one

} // namespace loopwright
