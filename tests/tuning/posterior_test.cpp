// The closed forms behind the calibration against their plain definitions, and the curve it stands on.
#include "tuning/detail/posterior.hpp"

#include "loop/full_wave.hpp"
#include "tuning/detail/relation.hpp"
#include "tuning/tuning_curve.hpp"

#include <Eigen/Dense>
#include <gtest/gtest.h>

#include <cmath>

namespace loopwright::tuning::detail {
namespace {

using Eigen::MatrixXd;
using Eigen::VectorXd;

constexpr double noise = 0.3;
constexpr double smooth_size = 0.7;

Sizes one_size() {
    Sizes sizes;
    sizes.noise = {{noise, 1}};
    sizes.parts = {{1, smooth_size, 1}};
    sizes.smooth_from = 2;
    return sizes;
}

MatrixXd rows() {
    MatrixXd j(5, 4);
    j << 1, 0.2, -0.3, 0.5, 1, 0.9, 0.4, -0.1, 1, -0.5, 0.8, 0.2, 1, 0.1, 0.1, 0.9, 1, 1.4, -0.6, 0.3;
    return j;
}

VectorXd readings() {
    VectorXd y(5);
    y << 0.3, 1.2, -0.4, 0.8, 1.9;
    return y;
}

Sums sums_of(const MatrixXd& j, const VectorXd& y, Eigen::Index without = -1) {
    Sums sums(j.cols());
    for (Eigen::Index i = 0; i < j.rows(); ++i) {
        if (i != without) {
            sums.add(j.row(i).transpose(), y[i], 1);
        }
    }
    return sums;
}

TEST(Posterior, IsThatOfThePlainFormulas) {
    const MatrixXd j = rows();
    const VectorXd y = readings();
    VectorXd prior(4);
    prior << 1, 1, smooth_size * smooth_size, smooth_size * smooth_size;
    const MatrixXd precision =
        j.transpose() * j / (noise * noise) + MatrixXd(prior.cwiseInverse().asDiagonal());
    const MatrixXd covariance = precision.inverse();
    const VectorXd mean = covariance * j.transpose() * y / (noise * noise);
    const MatrixXd of_y = j * prior.asDiagonal() * j.transpose() + noise * noise * MatrixXd::Identity(5, 5);
    const double evidence =
        -0.5 * (y.dot(of_y.inverse() * y) + std::log(of_y.determinant()) + 5 * std::log(2 * M_PI));
    const Posterior posterior(sums_of(j, y), one_size());
    EXPECT_NEAR(posterior.log_evidence(), evidence, 1e-10);
    EXPECT_NEAR((posterior.mean() - mean).norm(), 0, 1e-12);
    const VectorXd asked = (VectorXd(4) << 1, 0.5, 0.2, -0.4).finished();
    const Mixture mixture = posterior.of(asked);
    ASSERT_EQ(mixture.size(), 1U);
    EXPECT_NEAR(mixture[0].mean, asked.dot(mean), 1e-12);
    EXPECT_NEAR(mixture[0].deviation, std::sqrt(asked.dot(covariance * asked)), 1e-12);
    // 97.5 % of a normal distribution: 1.959964 standard deviations (any table).
    EXPECT_NEAR(quantile(mixture, 0.975, false), mixture[0].mean + 1.959964 * mixture[0].deviation, 1e-4);
}

TEST(Posterior, WithoutAPointIsAFitOfTheOthers) {
    const MatrixXd j = rows();
    const VectorXd y = readings();
    Sizes sizes = one_size();
    sizes.noise = {{0.1, 0.3}, {0.3, 0.5}, {0.9, 0.2}};
    const Posterior all(sums_of(j, y), sizes);
    for (Eigen::Index i = 0; i < 5; ++i) {
        const Posterior others(sums_of(j, y, i), sizes);
        const Mixture a = all.without(j.row(i).transpose(), y[i]);
        const Mixture b = others.of(j.row(i).transpose());
        EXPECT_NEAR(log_density(a, y[i]), log_density(b, y[i]), 1e-6);
        EXPECT_NEAR(quantile(a, 0.1, true), quantile(b, 0.1, true), 1e-4);
        // p(all) = p(others) p(the point | others)
        EXPECT_NEAR(all.log_evidence(), others.log_evidence() + log_density(b, y[i]), 1e-6);
    }
}

TEST(Posterior, VariancesAfterMorePointsAreThoseOfAFitWithThem) {
    const MatrixXd j = rows();
    const VectorXd y = readings();
    const Posterior three(sums_of(j.topRows(3), y.head(3)), one_size());
    const Posterior five(sums_of(j, y), one_size());
    const VectorXd asked = (VectorXd(4) << 1, 0.5, 0.2, -0.4).finished();
    const MatrixXd after = three.variances_after(asked, j.row(3).transpose(), j.row(4).transpose());
    EXPECT_NEAR(after(0, 0), std::pow(five.of(asked)[0].deviation, 2), 1e-12);
}

// The sines against the covariance that they stand for, exp(-d^2/2 l^2), over the whole dial.
TEST(Relation, TheSmoothDeviationHasItsCovariance) {
    for (double a = 0; a <= 1.001; a += 0.1) {
        for (double b = 0; b <= 1.001; b += 0.1) {
            const double d = (a - b) / 0.3;
            EXPECT_NEAR(Relation::smooth(a, 0.3).dot(Relation::smooth(b, 0.3)), std::exp(-d * d / 2), 0.01)
                << a << " " << b;
        }
    }
}

TEST(TuningCurve, FollowsTheModelBetweenItsPoints) {
    design::Design design;
    design.conductor.metal.name = "copper";
    design.capacitor.loss.q = 1000;
    const loop::FullWave model(design);
    const TuningCurve curve(model, {units::megahertz(3.5), units::megahertz(32)});
    for (const double f : {3.6e6, 7.05e6, 10.13e6, 14.2e6, 21.3e6, 28.9e6}) {
        const double solved = model.solved(units::hertz(f))->tuning_capacitance.value();
        const double read = curve.needed(units::hertz(f))->value();
        EXPECT_NEAR(read / solved, 1, 2e-4) << f;
        EXPECT_NEAR(curve.resonance(units::farads(read))->value(), f, 1e-6 * f);
        EXPECT_LT(*curve.steepness(units::hertz(f)), -2);
    }
    EXPECT_FALSE(curve.needed(units::megahertz(3)));
    EXPECT_FALSE(curve.needed(units::megahertz(200)));
}

} // namespace
} // namespace loopwright::tuning::detail
