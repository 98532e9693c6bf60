#pragma once
// Values to loop over in properties.
#include <cmath>
#include <vector>

namespace loopwright::support {

/// first, first + step, ... up to last.
inline std::vector<double> even(double first, double last, double step) {
    std::vector<double> values;
    const int count = static_cast<int>(std::floor((last - first) / step + 1e-9)) + 1;
    for (int i = 0; i < count; ++i) {
        values.push_back(first + i * step);
    }
    return values;
}

/// first, first * ratio, ... up to last; ratio > 1.
inline std::vector<double> geometric(double first, double last, double ratio) {
    std::vector<double> values;
    const int count = static_cast<int>(std::floor(std::log(last / first) / std::log(ratio) + 1e-9)) + 1;
    for (int i = 0; i < count; ++i) {
        values.push_back(first * std::pow(ratio, i));
    }
    return values;
}

} // namespace loopwright::support
