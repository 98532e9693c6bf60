// The report before keying: what keeps its words from being read as a clearance, and what it says beside the
// verdict (touch, heat, the limits' tables, outlines at the unfavourable end).
#include "survey/carrier_request.hpp"
#include "survey/keying.hpp"
#include "survey/keying_outlines.hpp"
#include "survey/over_power.hpp"

#include <algorithm>
#include <gtest/gtest.h>

namespace loopwright::survey {
namespace {

using exposure::Tier;
using units::metres;

KeyingRequest a_request() {
    return carrier_request("40m", "icnirp_1998");
}

KeyingBand band_of(const KeyingRequest& request) {
    return keying(request).bands.front();
}

TEST(KeyingCautions, WithoutADistanceOfPeopleNothingIsCleared) {
    KeyingRequest request = a_request();
    request.intervals = true;
    const KeyingBand open = band_of(request);
    EXPECT_TRUE(open.on_condition);
    EXPECT_EQ(open.reasons.front().text.find("Only if people keep "), 0U) << open.reasons.front().text;
    EXPECT_NE(open.reasons.front().text.find("for the operator to see"), std::string::npos);
    request.design.site.people_distance = metres(8);
    const KeyingBand entered = band_of(request);
    EXPECT_EQ(entered.verdict, KeyingVerdict::within);
    EXPECT_FALSE(entered.on_condition);
    EXPECT_EQ(entered.reasons.front().text.find("Within the limits as computed for people at 8"), 0U)
        << entered.reasons.front().text;
    request.design.site.people_distance = metres(1);
    EXPECT_FALSE(band_of(request).on_condition); // exceeded
}

TEST(KeyingCautions, HotPartsAreRemarked) {
    KeyingRequest request = a_request();
    request.design.station.power = units::watts(0.5);
    EXPECT_TRUE(band_of(request).remarks.empty());
    request.design.station.power = units::watts(100);
    request.design.capacitor.loss.q = 300.0;
    const KeyingBand hot = band_of(request);
    ASSERT_TRUE(hot.heating);
    const loop::Heating& capacitor = hot.heating->capacitor;
    EXPECT_TRUE(!capacitor.rise_K || capacitor.rise_range_K.high > hot_rise_K);
    ASSERT_FALSE(hot.remarks.empty());
    EXPECT_NE(hot.remarks.back().find("capacitor (a body of 50 mm by 60 mm assumed) becomes"),
              std::string::npos)
        << hot.remarks.back(); // the design does not say how large it is
}

TEST(KeyingCautions, TouchCountsWhatAHandReaches) {
    KeyingRequest request = a_request();
    const KeyingBand low = band_of(request);
    ASSERT_TRUE(low.touch && low.touch_in_reach_rms);
    EXPECT_LE(*low.touch_in_reach_rms, low.touch->highest_rms);
    EXPECT_GT(low.touch_in_reach_rms->value(), 0);
    request.design.site.lowest_point = metres(6);
    const KeyingBand high = band_of(request);
    ASSERT_TRUE(high.touch);
    EXPECT_FALSE(high.touch_in_reach_rms);
    request.design.site.standing_level = metres(6); // on a roof beside it
    EXPECT_TRUE(band_of(request).touch_in_reach_rms);
}

// Health Phys. 74 (1998) 494: Table 7 general public, Table 6 occupational.
TEST(KeyingCautions, LimitsCarryTheirTable) {
    const KeyingBand band = band_of(a_request());
    ASSERT_EQ(band.distances.size(), 2U);
    EXPECT_EQ(band.distances[0].table, "Table 7");
    EXPECT_FALSE(band.distances[0].from_memory);
    EXPECT_EQ(band.distances[1].table, "Table 6");
    EXPECT_TRUE(band.distances[1].from_memory);
}

TEST(KeyingCautions, TheOuterOutlineReachesTheUpperEnd) {
    const KeyingRequest request = a_request();
    const units::Frequency frequency = units::megahertz(7.1);
    const auto plain = keying_outlines(request.design, frequency, "icnirp_1998");
    ASSERT_TRUE(plain && !plain->tiers.empty());
    EXPECT_FALSE(plain->tiers[0].upper);
    const double upper_m = 1.2 * plain->tiers[0].farthest->distance.value();
    const auto both = keying_outlines(request.design, frequency, "icnirp_1998", {},
                                      {{Tier::general_public, metres(upper_m)}});
    const TierOutlines& tier = both->tiers[0];
    ASSERT_TRUE(tier.upper && tier.upper->from_above && tier.nominal.from_above);
    double most_m = 0;
    for (std::size_t i = 0; i < tier.upper->from_above->size(); ++i) {
        most_m = std::max(most_m, (*tier.upper->from_above)[i].value());
        EXPECT_GT((*tier.upper->from_above)[i].value(), (*tier.nominal.from_above)[i].value()) << i;
    }
    EXPECT_NEAR(most_m, upper_m, 0.02 * upper_m);
    EXPECT_FALSE(both->tiers[1].upper); // none was given
    const auto charted = upper_end_at(tier.over_power, request.design.station.power.value.value());
    ASSERT_TRUE(charted);
    EXPECT_NEAR(*charted, upper_m, 0.02 * upper_m); // the chart's heavy line at the design's power
    for (const DistanceAtPower& at : tier.over_power) {
        if (at.distance && at.upper) {
            EXPECT_GE(at.upper->value(), at.distance->value()) << at.power.value();
        }
    }
}

} // namespace
} // namespace loopwright::survey
