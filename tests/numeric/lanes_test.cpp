// Functions on four lanes against those of the C library.
#include "numeric/lanes.hpp"

#include <cmath>
#include <gtest/gtest.h>
#include <random>

namespace loopwright::numeric {
namespace {

TEST(Lanes, AgreeWithTheLibrary) {
    std::mt19937 random(3);
    std::uniform_real_distribution<double> exponent(-9, 9), angle(-500, 500);
    for (int i = 0; i < 2000; ++i) {
        Lanes x{}, a{}, root{}, log{}, sine{}, cosine{};
        for (int n = 0; n < lane_count; ++n) {
            x[n] = std::pow(10, exponent(random));
            a[n] = angle(random);
        }
        lanes_sqrt(x, root);
        lanes_log(x, log);
        lanes_sin_cos(a, sine, cosine);
        for (int n = 0; n < lane_count; ++n) {
            EXPECT_NEAR(root[n] / std::sqrt(x[n]), 1, 1e-15) << x[n];
            EXPECT_NEAR(log[n], std::log(x[n]), 1e-10) << x[n];
            EXPECT_NEAR(sine[n], std::sin(a[n]), 1e-9) << a[n];
            EXPECT_NEAR(cosine[n], std::cos(a[n]), 1e-9) << a[n];
        }
    }
}

TEST(Lanes, ExactAtWholeTurnsAndOne) {
    const Lanes x{1.0, 2.0, 1.4142135623730951, 0.5};
    Lanes log{}, sine{}, cosine{};
    lanes_log(x, log);
    EXPECT_EQ(log[0], 0);
    EXPECT_NEAR(log[1], 0.6931471805599453, 1e-15); // Abramowitz and Stegun, table 1.1 (from memory)
    lanes_sin_cos(Lanes{0, 0, 0, 0}, sine, cosine);
    EXPECT_EQ(sine[0], 0);
    EXPECT_EQ(cosine[0], 1);
}

} // namespace
} // namespace loopwright::numeric
