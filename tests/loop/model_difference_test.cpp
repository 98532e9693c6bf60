#include "loop/model_difference.hpp"

#include "base/error.hpp"
#include "loop/loop_model.hpp"

#include <gtest/gtest.h>

namespace loopwright::loop {
namespace {

ModelDifference difference_at(const design::Design& design, double megahertz) {
    const auto point = [&](Model model) {
        return make_model(design, model)->at(units::megahertz(megahertz), units::watts(5), 2.0);
    };
    return difference(point(Model::closed_form), point(Model::full_wave), design.site.ground);
}

bool has(const ModelDifference& difference, const std::string& code) {
    for (const DifferenceReason& reason : difference.reasons) {
        if (reason.code == code) {
            return true;
        }
    }
    return false;
}

TEST(ModelDifference, TheTwoAgreeOnASmallLoopInFreeSpace) {
    const ModelDifference d = difference_at({}, 7);
    ASSERT_TRUE(d.resistance_ratio);
    EXPECT_NEAR(*d.resistance_ratio, 1, 0.01);
    EXPECT_NEAR(*d.voltage_ratio, 1, 0.01);
    EXPECT_FALSE(has(d, "ground"));
}

TEST(ModelDifference, NamesTheGroundFirstNearIt) {
    design::Design low;
    low.site.ground.kind = design::GroundKind::soil;
    low.site.lowest_point = units::metres(0.3);
    const ModelDifference d = difference_at(low, 14);
    ASSERT_FALSE(d.reasons.empty());
    EXPECT_EQ(d.reasons.front().code, "ground");
    EXPECT_GT(*d.resistance_ratio, 1.5);
    EXPECT_LT(*d.efficiency_ratio, 0.7);
}

// A circle of 1 m is 0.3 wavelengths round at 28.5 MHz. Independent full-wave solutions give the current at
// the capacitor as about half of that opposite there, and 0.97 at 7.1 MHz.
TEST(ModelDifference, NamesTheCurrentWhereItIsNotEven) {
    const ModelDifference d = difference_at({}, 28.5);
    EXPECT_TRUE(has(d, "current_not_even"));
    EXPECT_FALSE(has(difference_at({}, 7.1), "current_not_even"));
}

// A good conductor half a wavelength below a standing loop sends back a wave that adds to it or takes from
// it.
TEST(ModelDifference, NamesTheWaveThatTheGroundSendsBack) {
    design::Design mirrored;
    mirrored.site.ground.kind = design::GroundKind::perfect;
    mirrored.site.lowest_point = units::metres(1);
    const ModelDifference d = difference_at(mirrored, 14);
    EXPECT_TRUE(has(d, "soil_reflects"));
    EXPECT_FALSE(has(d, "ground")) << "a mirror takes no power";
}

TEST(ModelDifference, SaysWhereOneOfTheTwoDoesNotHold) {
    const ModelDifference d = difference_at({}, 45);
    EXPECT_FALSE(d.resistance_ratio);
    EXPECT_TRUE(has(d, "closed_form_range"));
}

TEST(ModelDifference, RefusesPointsThatAreNoPair) {
    const OperatingPoint one;
    EXPECT_THROW(static_cast<void>(difference(one, one, {})), base::ProgramError);
}

} // namespace
} // namespace loopwright::loop
