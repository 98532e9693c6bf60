#include "design/soil.hpp"

#include "base/error.hpp"
#include "base/nearest.hpp"
#include "ground/ground_classes.hpp"

namespace loopwright::design {

ground::Soil soil_of(const Ground& ground) {
    if (ground.class_name.empty()) {
        return {ground.relative_permittivity, ground.conductivity.value};
    }
    const auto known = ground::find_ground_class(ground.class_name);
    if (!known) {
        throw base::InputError("site.ground", ground.class_name, base::listed(ground::ground_class_names()));
    }
    return known->soil;
}

} // namespace loopwright::design
