#pragma once
// Measures that figures share.
#include <QList>

namespace loopwright::charts {

inline constexpr double pad_px = 4.0; ///< between words and what stands beside them

/// first, first + step, ... up to last; empty where last lies before first. step > 0.
[[nodiscard]] inline QList<double> places(double first, double last, double step) {
    QList<double> list;
    for (int i = 0; first + i * step <= last; ++i) {
        list.append(first + i * step);
    }
    return list;
}

} // namespace loopwright::charts
