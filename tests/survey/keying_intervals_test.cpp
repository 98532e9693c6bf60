// The ends of the intervals before keying, each cause recomputed by itself; and the powers for people and for
// the hand that tunes, recomputed from the fields.
#include "exposure/duty.hpp"
#include "exposure/station.hpp"
#include "field/loop_field.hpp"
#include "loop/full_wave.hpp"
#include "survey/keying.hpp"
#include "units/text.hpp"

#include <algorithm>
#include <cmath>
#include <gmock/gmock.h>
#include <gtest/gtest.h>
#include <numbers>
#include <vector>

namespace loopwright::survey {
namespace {

using units::metres;

KeyingRequest one_band(design::GroundKind ground) {
    KeyingRequest request;
    design::Design& d = request.design;
    d.capacitor.minimum = units::picofarads(5);
    d.capacitor.maximum = units::picofarads(500);
    d.capacitor.rating.peak_voltage = units::volts(20000);
    d.site.ground.kind = ground;
    d.site.lowest_point = metres(1.2);
    d.station.emission = "carrier";
    d.station.power = units::watts(10);
    d.station.bands = {"40m"};
    request.limits = {"icnirp_1998"};
    return request;
}

KeyingBand first_band(const KeyingRequest& request) {
    return keying(request).bands.at(0);
}

const KeyingDistance& public_distance(const KeyingBand& band) {
    return band.distances.at(0); // one limit, public first
}

exposure::Threshold at_power(const KeyingDistance& d, double averaged_W) {
    const double root = std::sqrt(averaged_W);
    return {d.electric_limit.value() / root, d.magnetic_limit.value() / root};
}

exposure::Surroundings fields_of(const design::Design& d, units::Frequency frequency) {
    return {loop::FullWave(d).solved(frequency).value(), d.site.standing_level.value};
}

// In free space only losses vary. The same currents with the total resistance at its ends: the power counts
// as much more or less.
TEST(KeyingIntervals, OfLossesAreThoseOfThePower) {
    const KeyingRequest request = one_band(design::GroundKind::free_space); // no loss of the capacitor given
    const KeyingBand band = first_band(request);
    const KeyingDistance& d = public_distance(band);
    const loop::Resonance& r = band.point.resonance.value();
    const double total = r.resistance.total().value();
    ASSERT_LT(r.total_resistance_range.low.value(), 0.95 * total);
    ASSERT_GT(r.total_resistance_range.high.value(), 1.05 * total);
    auto around = fields_of(request.design, band.point.frequency);
    const double watts = d.averaged_power.value();
    const double more = watts * total / r.total_resistance_range.low.value(),
                 less = watts * total / r.total_resistance_range.high.value();
    EXPECT_NEAR(d.range.high.value(), around.farthest(at_power(d, more))->distance.value(), 0.003);
    EXPECT_NEAR(d.range.low.value(), around.farthest(at_power(d, less))->distance.value(), 0.003);
    EXPECT_GT(d.range.high.value(), d.farthest->distance.value() + 0.01);
    EXPECT_EQ(band.voltage_peak.high, r.capacitor_voltage_peak_range.high);
}

/// Two designs of one cause.
using Pair = std::array<design::Design, 2>;

Pair soils(const design::Design& design) {
    Pair pair{design, design};
    for (std::size_t i = 0; i < 2; ++i) {
        design::Ground& ground = pair[i].site.ground;
        ground.conductivity = units::siemens_per_metre(i == 0 ? 0.0025 : 0.010); // half and twice
        ground.relative_permittivity = 13 * (i == 0 ? std::sqrt(0.5) : std::sqrt(2.0));
    }
    return pair;
}

Pair heights(const design::Design& design) {
    Pair pair{design, design};
    pair[0].site.lowest_point = metres(0.9 * 1.2);
    pair[1].site.lowest_point = metres(1.1 * 1.2);
    return pair;
}

/// Both ends: the shifts of the causes, added.
struct Ends {
    double less = 0, more = 0;
    void add(double least, double most) {
        less += std::min(0.0, least);
        more += std::max(0.0, most);
    }
};

// Every variant solved anew, its distance searched anew; the report goes by the first order.
TEST(KeyingIntervals, OfTheSiteAreThoseOfTheVariantsSolvedAnew) {
    KeyingRequest request = one_band(design::GroundKind::soil);
    request.design.capacitor.loss.q = 1000.0;
    request.design.site.ground.relative_permittivity = 13;
    request.design.site.ground.conductivity = units::siemens_per_metre(0.005);
    const KeyingBand band = first_band(request);
    const KeyingDistance& d = public_distance(band);
    const loop::Resonance& r = band.point.resonance.value();
    const double watts = d.averaged_power.value(), nominal = d.farthest->distance.value();
    const double peak = r.capacitor_voltage_peak.value();
    auto around = fields_of(request.design, band.point.frequency);
    const auto with_resistance = [&](units::Resistance total) {
        const double share = (r.resistance.total() / total).value();
        return around.farthest(at_power(d, watts * share))->distance.value() - nominal;
    };
    Ends distance, volts;
    distance.add(with_resistance(r.total_resistance_range.high),
                 with_resistance(r.total_resistance_range.low));
    volts.add(r.capacitor_voltage_peak_range.low.value() - peak,
              r.capacitor_voltage_peak_range.high.value() - peak);
    double least_cause = 1e9, least_volts = 1e9;
    for (const Pair& pair : {soils(request.design), heights(request.design)}) {
        std::vector<double> moved, changed;
        for (const design::Design& variant : pair) {
            auto other = fields_of(variant, band.point.frequency);
            moved.push_back(other.farthest(at_power(d, watts))->distance.value() - nominal);
            const auto point = loop::FullWave(variant).at(band.point.frequency, band.point.power, 2.0);
            changed.push_back(point.resonance->capacitor_voltage_peak.value() - peak);
        }
        const auto [nearest, farthest] = std::minmax(moved[0], moved[1]);
        const auto [lowest, highest] = std::minmax(changed[0], changed[1]);
        distance.add(nearest, farthest);
        volts.add(lowest, highest);
        least_cause = std::min({least_cause, farthest, -nearest});
        least_volts = std::min({least_volts, highest, -lowest});
    }
    ASSERT_GT(least_cause, 0.004); // each cause can be told from rounding, at both ends
    ASSERT_GT(least_volts, 0.004 * peak);
    EXPECT_NEAR(d.range.high.value(), nominal + distance.more, 0.001);
    EXPECT_NEAR(d.range.low.value(), nominal + distance.less, 0.001);
    EXPECT_NEAR(band.voltage_peak.high.value() / (peak + volts.more), 1, 1e-3);
    EXPECT_NEAR(band.voltage_peak.low.value() / (peak + volts.less), 1, 1e-3);
}

// A loop low over a mirror: no soil to vary, the height by 5 cm at least, and never below 5 cm. The volts of
// the two heights solved anew.
TEST(KeyingIntervals, ALowLoopIsMovedByFiveCentimetres) {
    struct Low {
        double lowest_m, lower_m, higher_m;
    };
    for (const Low& low : {Low{0.2, 0.15, 0.25}, Low{0.08, 0.05, 0.13}}) {
        KeyingRequest request = one_band(design::GroundKind::perfect);
        request.design.capacitor.loss.q = 1000.0;
        request.design.site.lowest_point = metres(low.lowest_m);
        const KeyingBand band = first_band(request);
        const loop::Resonance& r = band.point.resonance.value();
        const double nominal = r.capacitor_voltage_peak.value();
        double least = nominal, most = nominal;
        for (const double height_m : {low.lower_m, low.higher_m}) {
            design::Design other = request.design;
            other.site.lowest_point = metres(height_m);
            const double volts = loop::FullWave(other)
                                     .at(band.point.frequency, band.point.power, 2.0)
                                     .resonance->capacitor_voltage_peak.value();
            least = std::min(least, volts);
            most = std::max(most, volts);
        }
        ASSERT_GT(most - least, 0.004 * nominal) << low.lowest_m;
        EXPECT_NEAR(band.voltage_peak.high.value() - r.capacitor_voltage_peak_range.high.value(),
                    most - nominal, 1e-4 * nominal)
            << low.lowest_m;
        EXPECT_NEAR(band.voltage_peak.low.value() - r.capacitor_voltage_peak_range.low.value(),
                    least - nominal, 1e-4 * nominal)
            << low.lowest_m;
    }
}

/// Largest share of the limit [1/W] on people all round a place, from the direct integrals.
double share_round(const field::LoopField& field, const KeyingDistance& d, double x_m, double y_m,
                   double reach_m) {
    double most = 0;
    for (int azimuth = 0; azimuth < 360; azimuth += 5) {
        const double a = azimuth * std::numbers::pi / 180;
        for (int i = 0; i <= 20; ++i) {
            const auto at = field.at(metres(x_m + reach_m * std::cos(a)), metres(y_m + reach_m * std::sin(a)),
                                     metres(std::max(0.001, 0.1 * i)));
            const double e = at.electric().value() / d.electric_limit.value(),
                         m = at.magnetic().value() / d.magnetic_limit.value();
            most = std::max({most, e * e, m * m});
        }
    }
    return most;
}

// A loop on its side: its capacitor is half a metre off the axis, and the reach counts from there. A carrier,
// whatever the emission of the design is; for people the duty counts.
TEST(KeyingIntervals, PowersForTuningAndForPeopleAreThoseOfTheFields) {
    KeyingRequest request = one_band(design::GroundKind::perfect);
    request.intervals = false;
    request.design.capacitor.loss.q = 1000.0;
    request.design.site.plane = design::Plane::horizontal;
    request.design.station.emission = "ft8";
    request.design.station.reach = metres(1.5);
    request.design.site.people_distance = metres(2.5);
    const KeyingBand band = first_band(request);
    const KeyingDistance& d = public_distance(band);
    ASSERT_LT(d.duty, 0.9);
    const field::LoopField field(loop::FullWave(request.design).solved(band.point.frequency).value(),
                                 units::watts(1));
    ASSERT_TRUE(d.power_for_tuning && d.power_for_people);
    // The capacitor lies toward +y, half the size out.
    EXPECT_NEAR(d.power_for_tuning->value() * share_round(field, d, 0, 0.5, 1.5), 1, 0.04);
    EXPECT_NEAR(d.power_for_people->value() * d.duty * share_round(field, d, 0, 0, 2.5), 1, 0.02);
}

// With intervals the powers are those that the verdict passes: at the power told for people it does, 2 %
// above it does not. For tuning: the losses' end of the power, and no more than any variant of the site
// solved anew allows.
TEST(KeyingIntervals, PowersTakeTheUnfavourableEnd) {
    KeyingRequest request = one_band(design::GroundKind::soil);
    request.design.capacitor.loss.q = 1000.0;
    request.design.site.ground.relative_permittivity = 13;
    request.design.site.ground.conductivity = units::siemens_per_metre(0.005);
    request.design.station.reach = metres(1.5);
    request.design.site.people_distance = metres(2.5);
    const KeyingBand band = first_band(request);
    const units::Power told = least_power_for_people(band).value();
    KeyingRequest at = request;
    at.design.station.power = told;
    EXPECT_EQ(first_band(at).verdict, KeyingVerdict::within);
    at.design.station.power = 1.02 * told;
    EXPECT_EQ(first_band(at).verdict, KeyingVerdict::exceeded);
    const auto greatest = greatest_power(band);
    ASSERT_TRUE(greatest);
    EXPECT_TRUE(greatest->by_people);
    EXPECT_EQ(greatest->power, told);

    request.intervals = false;
    const KeyingBand nominal = first_band(request);
    EXPECT_GT(least_power_for_people(nominal)->value(), 1.01 * told.value());
    const loop::Resonance& r = band.point.resonance.value();
    const double losses = (r.total_resistance_range.low / r.resistance.total()).value();
    double least = losses * least_power_for_tuning(nominal)->value();
    for (const Pair& pair : {soils(request.design), heights(request.design)}) {
        double worst = 1;
        for (const design::Design& variant : pair) {
            KeyingRequest other = request;
            other.design = variant;
            worst = std::min(worst, least_power_for_tuning(first_band(other))->value() /
                                        least_power_for_tuning(nominal)->value());
        }
        least *= worst;
    }
    ASSERT_LT(least, 0.97 * losses * least_power_for_tuning(nominal)->value());
    EXPECT_NEAR(least_power_for_tuning(band)->value() / least, 1, 1e-3);
}

// The upper end too never comes nearer with more power or a stricter tier.
TEST(KeyingIntervals, MorePowerNeverShortensTheUpperEnd) {
    KeyingRequest request = one_band(design::GroundKind::soil);
    request.design.station.bands = {"20m"};
    double before_m = 0;
    for (const double watts : {1.0, 2.0, 3.0, 5.0, 8.0, 13.0, 40.0, 150.0}) {
        request.design.station.power = units::watts(watts);
        const KeyingBand band = first_band(request);
        const double high_m = public_distance(band).range.high.value();
        EXPECT_GE(high_m, before_m - 0.002) << watts << " W";
        EXPECT_LE(band.distances.at(1).range.high.value(), high_m + 0.002) << watts << " W"; // occupational
        before_m = high_m;
    }
}

// People who stand where the model says nothing: no power is advised, and none is told as a number above
// zero.
TEST(KeyingIntervals, NoPowerIsToldNextToTheConductor) {
    KeyingRequest request = one_band(design::GroundKind::perfect);
    request.design.site.people_distance = metres(0.5); // the loop is 1 m across
    const KeyingBand band = first_band(request);
    EXPECT_EQ(least_power_for_people(band).value(), units::watts(0));
    ASSERT_EQ(band.verdict, KeyingVerdict::exceeded);
    EXPECT_EQ(band.reasons.front().fix.find("at most"), std::string::npos) << band.reasons.front().fix;
}

} // namespace
// A rating between the voltage as entered and its unfavourable end is not exceeded by the former: the reason
// says so.
TEST(KeyingIntervals, ReasonSaysWhichEndExceedsTheRating) {
    KeyingRequest request = one_band(design::GroundKind::soil);
    request.intervals = true;
    const KeyingBand held = keying(request).bands.at(0);
    const double entered = held.point.resonance->capacitor_voltage_peak.value(),
                 high = held.voltage_peak.high.value();
    ASSERT_GT(high, 1.02 * entered);
    request.design.capacitor.rating.peak_voltage = units::volts(0.5 * (entered + high));
    const KeyingReason between = keying(request).bands.at(0).reasons.front();
    EXPECT_EQ(between.verdict, KeyingVerdict::exceeded);
    EXPECT_THAT(between.text,
                testing::StartsWith("Perhaps " + units::shown(held.voltage_peak.high) + " peak, more than"));
    EXPECT_THAT(between.text, testing::HasSubstr(units::shown(held.point.resonance->capacitor_voltage_peak) +
                                                 " as entered"));
    request.design.capacitor.rating.peak_voltage = units::volts(0.9 * entered);
    const KeyingReason above = keying(request).bands.at(0).reasons.front();
    EXPECT_THAT(above.text,
                testing::StartsWith(units::shown(held.point.resonance->capacitor_voltage_peak) + " peak"));
}

} // namespace loopwright::survey
