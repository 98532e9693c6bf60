#include "base/error.hpp"
#include "design/soil.hpp"

#include <gtest/gtest.h>

namespace loopwright::design {

// ITU-R P.527-3: sea water 70, 5 S/m.
TEST(Soil, AClassNameDecidesOverTheFieldsBesideIt) {
    Ground ground;
    ground.kind = GroundKind::soil;
    EXPECT_EQ(soil_of(ground).relative_permittivity, 13);
    ground.class_name = "sea water"; // as a choice in the window leaves it
    EXPECT_EQ(soil_of(ground).relative_permittivity, 70);
    EXPECT_EQ(soil_of(ground).conductivity.value(), 5);
    ground.class_name = "swamp";
    EXPECT_THROW((void)soil_of(ground), base::InputError);
}

} // namespace loopwright::design
