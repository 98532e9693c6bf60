// How often the stated 95 % interval of a dial figure holds the truth, over hardware drawn at random. The
// seeds were fixed before the first run.
#include "tuning/made_hardware.hpp"

#include <gtest/gtest.h>

#include <algorithm>
#include <chrono>
#include <functional>

namespace loopwright::tuning {
namespace {

constexpr int trials = 1000;

struct Coverage {
    int held = 0;
    double mean_width = 0;   ///< readings
    double median_width = 0; ///< readings
};

using Draw = std::function<Truth(std::mt19937_64&)>;
/// Fills in the points of a trial.
using Measure = std::function<std::vector<design::CalibrationPoint>(const Truth&, std::mt19937_64&)>;

Coverage coverage(const Hardware& file, const Draw& draw, const Measure& measure, std::uint64_t seed) {
    std::mt19937_64 random(seed);
    Coverage result;
    std::vector<double> widths;
    for (int trial = 0; trial < trials; ++trial) {
        const Truth truth = draw(random);
        const auto points = measure(truth, random);
        const double asked_Hz = frequency_between(lowest_Hz, highest_Hz, random);
        const auto figure = calibrate(file, points).at(units::hertz(asked_Hz));
        if (!figure) {
            ADD_FAILURE() << "no figure at " << asked_Hz;
            return result;
        }
        const double real = truth.reading(asked_Hz);
        result.held += real >= figure->range.low && real <= figure->range.high ? 1 : 0;
        widths.push_back(figure->range.high - figure->range.low);
        result.mean_width += widths.back() / trials;
    }
    std::nth_element(widths.begin(), widths.begin() + trials / 2, widths.end());
    result.median_width = widths[trials / 2];
    return result;
}

double log_normal(double median, double factor, std::mt19937_64& random) {
    std::normal_distribution<double> normal;
    return median * std::pow(factor, normal(random));
}

/// As docs/theory/calibration.md states the prior (the wide share left out).
Truth stated(std::mt19937_64& random, MadeLaw law = MadeLaw::capacitance) {
    static const Waves waves(0.3);
    std::normal_distribution<double> normal;
    Truth truth;
    truth.law = law;
    truth.stray_F += 3e-12 * normal(random);
    truth.inductance = std::exp(0.02 * normal(random));
    truth.capacitor = std::exp(0.03 * normal(random));
    truth.offset = 0.01 * normal(random);
    truth.noise = log_normal(0.003, 2.5, random);
    truth.at = waves.at();
    truth.deviation = waves.drawn(log_normal(0.01, 2.5, random), random);
    return truth;
}

Measure clean(int count) {
    return [count](const Truth& truth, std::mt19937_64& random) {
        std::vector<design::CalibrationPoint> points;
        points.reserve(static_cast<std::size_t>(count));
        for (int i = 0; i < count; ++i) {
            points.push_back(measured(truth, frequency_between(lowest_Hz, highest_Hz, random), random));
        }
        return points;
    };
}

/// The last `wrong` of them read anything on the dial.
Measure spoiled(int count, int wrong) {
    return [count, wrong](const Truth& truth, std::mt19937_64& random) {
        std::uniform_real_distribution<double> anywhere(0, made_travel);
        auto points = clean(count)(truth, random);
        for (int i = 0; i < wrong; ++i) {
            points[static_cast<std::size_t>(count - 1 - i)].reading = anywhere(random);
        }
        return points;
    };
}

void report(const Coverage& coverage) {
    ::testing::Test::RecordProperty("held_of_1000", coverage.held);
    std::printf("             held %d of 1000, width mean %.3f median %.3f of 180\n", coverage.held,
                coverage.mean_width, coverage.median_width);
}

class Clean : public ::testing::TestWithParam<int> {};

TEST_P(Clean, FourAndMorePointsHoldTheTruthAsStated) {
    const auto result = coverage(
        made_file(), [](auto& random) { return stated(random); }, clean(GetParam()),
        20260000 + static_cast<std::uint64_t>(GetParam()));
    report(result);
    EXPECT_GE(result.held, 930);
    EXPECT_LE(result.held, 970);
}
INSTANTIATE_TEST_SUITE_P(Points, Clean, ::testing::Values(4, 6, 12));

class Few : public ::testing::TestWithParam<int> {};

TEST_P(Few, FewerPointsHoldTheTruth) {
    const auto result = coverage(
        made_file(), [](auto& random) { return stated(random); }, clean(GetParam()),
        20261000 + static_cast<std::uint64_t>(GetParam()));
    report(result);
    EXPECT_GE(result.held, 930);
}
INSTANTIATE_TEST_SUITE_P(Points, Few, ::testing::Values(0, 1, 2, 3));

struct Spoil {
    int points, wrong;
};
class Spoiled : public ::testing::TestWithParam<Spoil> {};

TEST_P(Spoiled, WithMistakenPointsTheTruthIsHeld) {
    const auto result = coverage(
        made_file(), [](auto& random) { return stated(random); },
        spoiled(GetParam().points, GetParam().wrong),
        20262000 + static_cast<std::uint64_t>(10 * GetParam().points + GetParam().wrong));
    report(result);
    EXPECT_GE(result.held, 930);
}
INSTANTIATE_TEST_SUITE_P(Points, Spoiled, ::testing::Values(Spoil{4, 1}, Spoil{6, 1}, Spoil{8, 2}));

// Law of straight-line frequency: the dial bends with the stray, the fit has to be linearised where it lands.
TEST(Coverage, OfALawThatBends) {
    const auto result = coverage(
        made_file(MadeLaw::frequency), [](auto& random) { return stated(random, MadeLaw::frequency); },
        clean(6), 20263006);
    report(result);
    EXPECT_GE(result.held, 930);
    EXPECT_LE(result.held, 970);
}

} // namespace
} // namespace loopwright::tuning
