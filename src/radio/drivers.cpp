#include "radio/connection.hpp"

#include <algorithm>
#include <hamlib/rig.h>
#include <tuple>

namespace loopwright::radio {

namespace {

int collect(const struct rig_caps* caps, rig_ptr_t list) {
    if (caps->port_type == RIG_PORT_SERIAL && caps->get_freq != nullptr) {
        static_cast<std::vector<Driver>*>(list)->push_back(
            {static_cast<int>(caps->rig_model), caps->mfg_name, caps->model_name});
    }
    return 1; // go on
}

} // namespace

std::vector<Driver> known_drivers() {
    rig_set_debug(RIG_DEBUG_NONE);
    rig_load_all_backends();
    std::vector<Driver> found;
    rig_list_foreach(&collect, &found);
    std::sort(found.begin(), found.end(), [](const Driver& a, const Driver& b) {
        return std::tie(a.maker, a.model, a.number) < std::tie(b.maker, b.model, b.number);
    });
    return found;
}

} // namespace loopwright::radio
