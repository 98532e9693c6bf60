#include "tuning/drive.hpp"

#include "base/error.hpp"

#include <cmath>
#include <complex>
#include <gtest/gtest.h>

namespace loopwright::tuning {
namespace {

// Yaghjian and Best, IEEE Trans. Antennas Propag. 53 (2005), FBW Q = (s - 1)/sqrt(s): 0.4082 for 1.5, 0.7071
// for 2, 1.0000 for 2.618, 2.0000 for 5.83 (computed from the published formula); at FBW Q = 2 half of the
// power comes back: s = 3 + sqrt(8).
TEST(Drive, VswrOffResonanceIsThatOfTheResonator) {
    EXPECT_NEAR(vswr_within_span(1, 2), 2, 1e-12);
    EXPECT_NEAR(vswr_within_span(1, 3 + std::sqrt(8.0)), 3 + std::sqrt(8.0), 1e-12);
    EXPECT_NEAR(vswr_within_span(0.4082 / 0.7071, 2), 1.5, 2e-4);
    EXPECT_NEAR(vswr_within_span(2.0 / 0.7071, 2), 5.83, 2e-3);
    EXPECT_EQ(vswr_within_span(0, 2), 1);
    for (const double share : {0.1, 0.5, 0.9, 1.7}) {
        const std::complex<double> z(1, share * (3 - 1) / std::sqrt(3.0));
        const double reflection = std::abs((z - 1.0) / (z + 1.0));
        EXPECT_NEAR(vswr_within_span(share, 3), (1 + reflection) / (1 - reflection), 1e-12);
    }
}

// 40 kHz of span and 100 kHz a degree: a hand that sets half a degree moves 50 kHz; half of the span, 20 kHz,
// takes 0.2 degrees a step, so 2.5 turns of the knob for one: 3:1.
TEST(Drive, SaysWhatReductionItTakes) {
    design::Dial dial;
    dial.hand_step = 0.5;
    const double per_Hz = -1 / 100e3;
    const Drive bare = judge_drive(dial, per_Hz, units::kilohertz(40), 2);
    EXPECT_NEAR(bare.step_frequency.value(), 50e3, 1e-6);
    EXPECT_NEAR(bare.share, 1.25, 1e-12);
    EXPECT_FALSE(bare.resolves);
    ASSERT_TRUE(bare.needed_reduction);
    EXPECT_EQ(*bare.needed_reduction, 3);
    dial.reduction = *bare.needed_reduction;
    const Drive geared = judge_drive(dial, per_Hz, units::kilohertz(40), 2);
    EXPECT_TRUE(geared.resolves);
    EXPECT_FALSE(geared.needed_reduction);
    EXPECT_LE(geared.worst_vswr, vswr_within_span(0.5, 2));
    dial.reduction = *bare.needed_reduction - 1;
    EXPECT_FALSE(judge_drive(dial, per_Hz, units::kilohertz(40), 2).resolves);
    // Exactly enough is enough.
    dial.reduction = 2.5;
    EXPECT_TRUE(judge_drive(dial, per_Hz, units::kilohertz(40), 2).resolves);
}

TEST(Drive, RefusesWhatHasNoMeaning) {
    design::Dial dial;
    EXPECT_THROW((void)judge_drive(dial, 0, units::kilohertz(1), 2), base::ProgramError);
    EXPECT_THROW((void)judge_drive(dial, 1, units::kilohertz(0), 2), base::ProgramError);
    EXPECT_THROW((void)judge_drive(dial, 1, units::kilohertz(1), 1), base::ProgramError);
    dial.reduction = 0;
    EXPECT_THROW((void)judge_drive(dial, 1, units::kilohertz(1), 2), base::ProgramError);
}

} // namespace
} // namespace loopwright::tuning
