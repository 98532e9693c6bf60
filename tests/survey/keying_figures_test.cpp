// Figures beside the verdict: heat for the duty, radiated power and its exemption, the ends that pictures
// draw.
#include "survey/carrier_request.hpp"
#include "survey/keying.hpp"
#include "survey/keying_outlines.hpp"

#include <cmath>
#include <gtest/gtest.h>

namespace loopwright::survey {
namespace {

KeyingRequest of_ten_metres() {
    return carrier_request("10m", "fcc_1_1310");
}

// Heat goes with the worst half hour of the schedule. FT8 in every second slot: 60 of 12.64 s in 1800 s, by
// hand from the protocol's timing. A carrier: what the loop does not radiate or lose in the ground stays in
// conductor and capacitor.
TEST(KeyingFigures, HeatGoesWithTheWorstHalfHour) {
    KeyingRequest request = of_ten_metres();
    request.frequencies = {units::megahertz(28.1)}; // the same for both emissions
    const KeyingBand carrier = keying(request).bands.front();
    request.design.station.emission = "ft8";
    const KeyingBand slots = keying(request).bands.front();
    ASSERT_TRUE(carrier.heating && slots.heating);
    const double conductor = carrier.heating->conductor_average.value(),
                 capacitor = carrier.heating->capacitor_average.value();
    EXPECT_NEAR(slots.heating->conductor_average.value() / conductor, 60 * 12.64 / 1800, 1e-9);
    EXPECT_NEAR(slots.heating->capacitor_average.value() / capacitor, 60 * 12.64 / 1800, 1e-9);
    const loop::ResistanceParts& r = carrier.point.resonance->resistance;
    const double kept = 1 - ((r.radiation + r.ground.value()) / r.total()).value();
    EXPECT_NEAR((conductor + capacitor) / (10 * kept), 1, 1e-6);
}

// 47 CFR 1.1307(b)(3)(i)(C), table 1: 3450 R^2/f^2 W from 1.34 to 30 MHz, for R of a wavelength over 2 pi and
// more (1.7 m here). Effective radiated power: over a half-wave dipole, whose gain is 1.64 (47 CFR 1.1307).
TEST(KeyingFigures, ExemptionIsThatOfThePeoplesDistance) {
    KeyingRequest request = of_ten_metres();
    request.frequencies = {units::megahertz(28.1)};
    request.design.site.people_distance = units::metres(3);
    const KeyingBand band = keying(request).bands.front();
    ASSERT_TRUE(band.fcc_exempt_erp);
    EXPECT_NEAR(band.fcc_exempt_erp->value(), 3450 * 9 / (28.1 * 28.1), 1e-9);
    const double gain_dB = band.point.resonance->gain_max.value().value;
    EXPECT_NEAR(band.erp.value(), 10 * std::pow(10, gain_dB / 10) / 1.64, 1e-9);
    request.design.site.people_distance = units::metres(1.6);
    EXPECT_FALSE(keying(request).bands.front().fcc_exempt_erp);
}

TEST(KeyingFigures, PicturesAreGivenTheUpperEnds) {
    KeyingRequest request = of_ten_metres();
    const Keying plain = keying(request);
    EXPECT_TRUE(upper_ends(plain, plain.bands.front(), "fcc_1_1310").empty());
    request.intervals = true;
    const Keying report = keying(request);
    const KeyingBand& band = report.bands.front();
    const auto ends = upper_ends(report, band, "fcc_1_1310");
    ASSERT_EQ(ends.size(), 2U);
    for (std::size_t i = 0; i < 2; ++i) {
        EXPECT_EQ(ends[i].tier, band.distances[i].tier);
        EXPECT_EQ(ends[i].distance, band.distances[i].range.high);
        EXPECT_GT(ends[i].distance, band.distances[i].farthest->distance);
    }
    EXPECT_TRUE(upper_ends(report, band, "icnirp_1998").empty());
}

} // namespace
} // namespace loopwright::survey
