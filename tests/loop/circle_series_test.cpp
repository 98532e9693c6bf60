// One circular turn by Fourier series: its kernel and its powers against integrals taken numerically, its
// series against finer and finer cuts of the general path, its fields against Bessel functions.
#include "geometry/winding.hpp"
#include "loop/detail/ring_kernel.hpp"
#include "loop/detail/ring_modes.hpp"
#include "loop/detail/ring_series.hpp"
#include "loop/detail/tube_kernel.hpp"
#include "loop/inductance.hpp"
#include "loop/radiation.hpp"
#include "units/constants.hpp"

#include <boost/math/quadrature/gauss.hpp>
#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>
#include <random>

namespace loopwright::loop::detail {
namespace {

using units::metres;
using units::constants::free_space_impedance_ohm;
using units::constants::pi;
using units::constants::speed_of_light_m_s;

/// int f(t) cos(n t) dt round the circle for an even f that may be logarithmic at 0: panels that shrink to 0.
template <class Function>
double cosine_coefficient(const Function& f, std::size_t n) {
    using Rule = boost::math::quadrature::gauss<double, 30>;
    const double order = double(n);
    const auto term = [&](double t) { return f(t) * std::cos(order * t); };
    double sum = 0;
    double to = pi;
    while (to > 1e-12) {
        const double from = std::max(to / 1.5 > 1e-12 ? to / 1.5 : 0.0, to - 8 / (order + 1));
        sum += Rule::integrate(term, from, to);
        to = from;
    }
    return 2 * sum;
}

/// The series of a circle the general way. parts: 1 for the cut that designs are given, more for finer ones.
LoopSeries by_spans(const CircularTurn& turn, double inductance_H, double parts) {
    geometry::Winding winding;
    winding.size = metres(2 * turn.radius_m);
    winding.gap = metres(turn.gap_m);
    const Cutting cutting{2 * parts, 1 + 1 / parts, 1 / (24 * parts)};
    return prepare_loop(geometry::wire_path(winding), turn.wire_radius_m, inductance_H, {}, {}, cutting)
        .series;
}

/// Largest differences of two series.
struct SeriesDifference {
    double charge = 0, shapes = 0;       // own capacitance, relative; means of products of the currents
    double radiation = 0, reactance = 0; // of any element, over that of the uniform current
};

SeriesDifference difference(const LoopSeries& a, const LoopSeries& b, double k) {
    SeriesDifference result;
    result.charge = std::abs(a.self_capacitance_F / b.self_capacitance_F - 1);
    for (std::size_t e = 0; e < a.mean.size(); ++e) {
        const auto more = [](double& held, double apart) { held = std::max(held, std::abs(apart)); };
        more(result.shapes, a.mean[e] - b.mean[e]);
        more(result.radiation, (a.radiation_ohm(k)[e] - b.radiation_ohm(k)[e]) / b.radiation_ohm(k)[0]);
        more(result.reactance, (a.reactance_ohm(k)[e] - b.reactance_ohm(k)[e]) / b.reactance_ohm(k)[0]);
    }
    return result;
}

class RandomCircles {
public:
    CircularTurn next() {
        CircularTurn turn;
        turn.radius_m = between(0.2, 3);
        turn.wire_radius_m = turn.radius_m * std::exp(between(std::log(3e-4), std::log(0.1)));
        turn.gap_m = turn.radius_m * std::exp(between(std::log(4e-3), std::log(0.6)));
        return turn;
    }

private:
    double between(double low, double high) { return std::uniform_real_distribution<>(low, high)(engine_); }
    std::mt19937 engine_{20261127};
};

} // namespace

TEST(CircleSeries, KernelIsTheIntegralRoundTheCircle) {
    struct Row {
        double ratio, error; // what ring_kernel.hpp states
    };
    for (const Row& row :
         {Row{1e-4, 1e-8}, Row{2e-3, 1e-8}, Row{0.02, 1.2e-8}, Row{0.1, 6e-6}, Row{0.25, 2e-4}}) {
        const RingKernel kernel(row.ratio);
        const auto at = [&](double t) { return tube_kernel(2 * std::sin(0.5 * t), row.ratio); };
        for (const std::size_t n : {0U, 1U, 2U, 3U, 7U, 20U, 33U, 60U, 200U, 700U}) {
            const double direct = cosine_coefficient(at, n);
            const double series =
                n < RingKernel::low ? kernel.of(n) : kernel.beyond(double(n), std::log(double(n)));
            EXPECT_NEAR(series, direct, row.error * direct) << row.ratio << ' ' << n;
        }
    }
}

TEST(CircleSeries, PowersAreTheIntegralsRoundTheCircle) {
    for (const double h : {1e-7, 5e-4, 0.06}) {
        const auto powers = ring_powers(h);
        for (std::size_t p = 0; p < powers.size(); ++p) {
            const auto at = [&](double t) { return std::pow(h + 1 - std::cos(t), 0.5 * double(p)); };
            for (const std::size_t n : {0U, 1U, 2U, 3U, 4U, 11U, 25U}) {
                EXPECT_NEAR(powers[p][n], cosine_coefficient(at, n), 2e-12) << h << ' ' << p << ' ' << n;
            }
        }
    }
}

// What stands for all orders, against 200 000 of them one by one.
TEST(CircleSeries, FewTermsSumAllOrders) {
    for (const double ratio : {1e-3, 0.022, 0.2}) {
        const double share = ratio < 0.1 ? 1e-5 : 4e-5;
        const RingKernel kernel(ratio);
        for (const double alpha : {5e-4, 0.02, 0.2, 0.78}) {
            double all = 0;
            double alternating = 0;
            for (std::size_t n = 200000; n > 0; --n) {
                const double order = double(n);
                const double spread = std::sin(order * alpha) / (order * alpha);
                const double scalar =
                    n < RingKernel::low ? kernel.of(n) : kernel.beyond(order, std::log(order));
                all += spread * spread / (order * order * scalar);
                alternating += (n % 2 == 0 ? 1 : -1) * spread / (order * order * scalar);
            }
            const RingModes modes = ring_modes(ratio, alpha);
            double sum = 0;
            double alternating_sum = 0;
            for (std::size_t i = 0; i < modes.size; ++i) {
                const double term = modes.spread[i] / (modes.order[i] * modes.order[i] * modes.scalar[i]);
                sum += modes.weight[i] * term * modes.spread[i];
                alternating_sum += i < RingModes::singly ? modes.alternating[i] * term : 0;
            }
            EXPECT_NEAR(sum, all, (ratio < 0.01 ? 2e-6 : share) * all) << ratio << ' ' << alpha;
            EXPECT_NEAR(alternating_sum, alternating, share * std::abs(alternating)) << ratio << ' ' << alpha;
        }
    }
}

// The general way comes nearer with every finer cut, and starts within the errors that the model states.
TEST(CircleSeries, IsWhatFinerCutsTendTo) {
    RandomCircles circles;
    SeriesDifference coarse_worst;
    SeriesDifference fine_worst;
    for (int trial = 0; trial < 12; ++trial) {
        const CircularTurn turn = circles.next();
        const double inductance_H =
            circle_inductance_thin(metres(turn.radius_m), metres(turn.wire_radius_m)).value();
        const double k = 0.3 / turn.radius_m;
        const LoopSeries series = prepare_circle(turn, inductance_H, {}).series;
        EXPECT_NEAR(series.length_m, 2 * pi * turn.radius_m, 1e-14 * series.length_m);
        EXPECT_EQ(series.inductance_H, inductance_H);
        const SeriesDifference coarse = difference(by_spans(turn, inductance_H, 1), series, k);
        const SeriesDifference fine = difference(by_spans(turn, inductance_H, 6), series, k);
        const auto keep = [](SeriesDifference& worst, const SeriesDifference& one) {
            worst.charge = std::max(worst.charge, one.charge);
            worst.shapes = std::max(worst.shapes, one.shapes);
            worst.radiation = std::max(worst.radiation, one.radiation);
            worst.reactance = std::max(worst.reactance, one.reactance);
        };
        keep(coarse_worst, coarse);
        keep(fine_worst, fine);
    }
    // Of the cut that designs are given: the model states 1 % of the own capacitance, 0.2 % of the
    // resistance.
    EXPECT_LT(coarse_worst.charge, 0.006);
    EXPECT_LT(coarse_worst.shapes, 0.002);
    EXPECT_LT(coarse_worst.radiation, 0.005);
    EXPECT_LT(coarse_worst.reactance, 0.003);
    // The power sums of the general way have a grid of their own, that no cut makes finer.
    EXPECT_LT(fine_worst.charge, 2e-4);
    EXPECT_LT(fine_worst.shapes, 5e-5);
    EXPECT_LT(fine_worst.radiation, 0.002);
    EXPECT_LT(fine_worst.reactance, 0.0015);
}

// The uniform current: Foster's integral (radiation.hpp) for the resistance; in a direction at the angle t
// from the axis the field int (s.e) exp(jk n.r) ds is 2 pi R J1(kR sin t), both by Bessel functions.
TEST(CircleSeries, UniformCurrentSendsWhatBesselFunctionsSay) {
    const CircularTurn turn{0.5, 0.011, 0.02};
    const std::vector<geometry::Vector3> directions{
        {0, 0, 1}, {0.6, 0.8, 0}, {0.48, 0.64, 0.6}, {0.36, -0.8, 0.48}};
    const PreparedLoop loop = prepare_circle(turn, 2.5e-6, directions);
    for (const double wavelengths : {0.02, 0.1, 0.2}) {
        const double k = wavelengths / turn.radius_m;
        const auto frequency = units::hertz(k * speed_of_light_m_s / (2 * pi));
        const std::vector<Ring> rings{{metres(turn.radius_m), metres(0)}};
        const double foster_ohm = rings_radiation(rings, frequency).value();
        EXPECT_NEAR(loop.series.radiation_ohm(k)[0], foster_ohm,
                    2e-3 * wavelengths * wavelengths * foster_ohm);
        for (const FarDirection& direction : loop.directions) {
            const double y = direction.direction().y; // along the axis
            const double field_m =
                2 * pi * turn.radius_m * std::cyl_bessel_j(1, wavelengths * std::sqrt(1 - y * y));
            EXPECT_NEAR(direction.power(k, {1, 0, 0}), field_m * field_m, 1e-5 * field_m * field_m);
        }
    }
}

// Field and circuit are computed apart, for all three currents: the power through a sphere is the radiation
// resistance.
TEST(CircleSeries, FarFieldCarriesTheRadiatedPower) {
    using Rule = boost::math::quadrature::gauss<double, 20>;
    constexpr std::size_t around = 16;
    std::vector<geometry::Vector3> directions;
    std::vector<double> weights;
    for (std::size_t i = 0; i < Rule::abscissa().size(); ++i) {
        for (std::size_t j = 0; j < 2 * around; ++j) {
            const double z = (j < around ? 1 : -1) * Rule::abscissa()[i];
            const double azimuth = 2 * pi * double(j) / double(around);
            const double rho = std::sqrt(1 - z * z);
            directions.push_back({rho * std::cos(azimuth), rho * std::sin(azimuth), z});
            weights.push_back(Rule::weights()[i] * 2 * pi / double(around));
        }
    }
    const PreparedLoop loop = prepare_circle({0.5, 0.011, 0.02}, 2.5e-6, directions);
    const double k = 0.2 / 0.5;
    for (const CurrentVector& c :
         {CurrentVector{1, 0, 0}, CurrentVector{0, 1, 0}, CurrentVector{0, 0, 1},
          CurrentVector{std::complex<double>{0.6, 0.01}, {0.4, -0.01}, {0.1, 0.02}}}) {
        double through_sphere_m2 = 0;
        for (std::size_t i = 0; i < weights.size(); ++i) {
            through_sphere_m2 += weights[i] * loop.directions[i].power(k, c);
        }
        const double power = free_space_impedance_ohm * k * k / (16 * pi * pi) * through_sphere_m2;
        double circuit = 0;
        const Symmetric<double> r = loop.series.radiation_ohm(k);
        for (std::size_t i = 0; i < currents; ++i) {
            for (std::size_t n = 0; n < currents; ++n) {
                circuit += r[entry(i, n)] * std::real(c[i] * std::conj(c[n]));
            }
        }
        EXPECT_NEAR(power, circuit, 1e-5 * circuit);
    }
}

// No current over the gap in the mean but the uniform one, u is 1 opposite and v - u is 0: what the equations
// of the circuit rest on, for gaps from a thousandth of the radius to a quarter of the circle.
TEST(CircleSeries, HoldsFromNarrowToWideGaps) {
    double last_F = 1;
    for (const double gap_m : {5e-4, 5e-3, 0.05, 0.2, 0.78}) {
        const CircularTurn turn{0.5, 0.011, gap_m};
        const LoopSeries series = prepare_circle(turn, 2.5e-6, {}).series;
        const LoopSeries direct = by_spans(turn, 2.5e-6, 6);
        EXPECT_NEAR(series.self_capacitance_F, direct.self_capacitance_F, 4e-4 * direct.self_capacitance_F)
            << gap_m;
        EXPECT_NEAR(series.elastance_1_F[entry(1, 1)], direct.elastance_1_F[entry(1, 1)],
                    4e-4 * direct.elastance_1_F[entry(1, 1)])
            << gap_m;
        EXPECT_NEAR(series.mean[entry(0, 1)], direct.mean[entry(0, 1)], 2e-4) << gap_m;
        EXPECT_NEAR(series.mean[entry(0, 2)], direct.mean[entry(0, 2)], 2e-4) << gap_m;
        EXPECT_LT(series.self_capacitance_F, last_F) << gap_m; // a wider gap spreads the charge
        last_F = series.self_capacitance_F;
    }
}

} // namespace loopwright::loop::detail
