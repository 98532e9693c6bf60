#include "conductor/joints.hpp"

#include "base/error.hpp"

#include <cstddef>
#include <string>

namespace loopwright::conductor {

units::Resistance joints_resistance(const std::vector<JointGroup>& joints) {
    units::Resistance sum{};
    for (std::size_t i = 0; i < joints.size(); ++i) {
        const JointGroup& group = joints[i];
        const std::string where = "joints[" + std::to_string(i) + "].";
        if (group.count < 0 || group.count > 10000) {
            throw base::InputError(where + "count", std::to_string(group.count),
                                   "a whole number from 0 to 10000");
        }
        const double each_ohm = group.resistance.value();
        if (!(each_ohm >= 0.0 && each_ohm <= 1000.0)) {
            throw base::InputError(where + "resistance", std::to_string(each_ohm) + " ohm",
                                   "a resistance from 0 to 1000 ohm");
        }
        sum += static_cast<double>(group.count) * group.resistance;
    }
    return sum;
}

} // namespace loopwright::conductor
