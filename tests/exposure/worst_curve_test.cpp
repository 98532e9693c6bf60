// The remembered curve of the worst field against curves known in closed form.
#include "exposure/detail/worst_curve.hpp"

#include <algorithm>
#include <cmath>
#include <gtest/gtest.h>
#include <limits>

namespace loopwright::exposure::detail {
namespace {

struct Counted {
    int asked = 0;
    WorstCurve curve;
    template <class Square>
    WorstCurve::Make maker(const Square& square) {
        return [this, square](double d, const WorstSample*, const WorstSample*) {
            ++asked;
            return WorstSample{square(d), 0.1 * d, 0.5};
        };
    }
};

// A magnetic dipole's near field falls with the sixth power of the distance, far away with the second.
double dipole(double d) {
    return (1 + d * d + d * d * d * d) / std::pow(d, 6);
}

TEST(WorstCurve, FindsWhereADipolesFieldCrosses) {
    Counted counted;
    const auto make = counted.maker(dipole);
    for (const double at : {1.02, 1.05, 1.1, 1.145}) {
        const auto got = counted.curve.crossing(1.0, 1.15, dipole(at), make);
        EXPECT_NEAR(got.distance_m, at, 2e-4);
        EXPECT_NEAR(got.place.azimuth_rad, 0.1 * at, 2e-3);
        EXPECT_FALSE(got.at_touch);
    }
}

// What was looked at once is not looked at again, and gives the same.
TEST(WorstCurve, Remembers) {
    Counted counted;
    const auto make = counted.maker(dipole);
    const double first = counted.curve.crossing(1.0, 1.15, dipole(1.07), make).distance_m;
    const int asked = counted.asked;
    EXPECT_GT(asked, 2);
    EXPECT_EQ(counted.curve.crossing(1.0, 1.15, dipole(1.07), make).distance_m, first);
    EXPECT_NEAR(counted.curve.crossing(1.0, 1.15, dipole(1.0702), make).distance_m, 1.0702, 2e-4);
    EXPECT_EQ(counted.asked, asked);
}

// Another place becomes the worst: the bound that the header states.
TEST(WorstCurve, AKinkMovesTheCrossingLittle) {
    Counted counted;
    const auto steep = [](double d) { return std::pow(d, -6.0); };
    const auto flat = [](double d) { return std::pow(1.06, -4.0) * std::pow(d, -2.0); };
    const auto kinked = [&](double d) { return std::max(steep(d), flat(d)); };
    const WorstCurve::Make make = [&](double d, const WorstSample*, const WorstSample*) {
        return WorstSample{kinked(d), steep(d) > flat(d) ? 1.5 : 0.0, 0.5};
    };
    for (const double at : {1.03, 1.055, 1.06, 1.065, 1.1}) {
        EXPECT_NEAR(counted.curve.crossing(1.0, 1.15, kinked(at), make).distance_m, at, 1e-3 * at) << at;
    }
}

TEST(WorstCurve, TheOutermostOfSeveral) {
    Counted counted;
    const auto wavy = [](double d) { return 2 + std::sin(40 * d); }; // down through 2 at 40 d = odd pi
    const auto make = counted.maker(wavy);
    for (int i = 0; i <= 20; ++i) {
        static_cast<void>(counted.curve.at(1.0 + 0.0125 * i, make));
    }
    EXPECT_NEAR(counted.curve.crossing(1.0, 1.25, 2.0, make).distance_m, 15 * 3.14159265358979 / 40, 2e-3);
}

TEST(WorstCurve, StopsWhereTheModelSaysNothing) {
    Counted counted;
    const auto make = counted.maker([](double d) {
        return d < 0.72 ? std::numeric_limits<double>::infinity() : 0.5 * std::pow(d, -6.0);
    });
    const auto got = counted.curve.crossing(0.7, 0.8, 1e3, make);
    EXPECT_TRUE(got.at_touch);
    EXPECT_NEAR(got.distance_m, 0.72, 1.1e-3);
}

} // namespace
} // namespace loopwright::exposure::detail
