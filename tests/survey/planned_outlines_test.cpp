// The outline of all planned bands together against those of the bands.
#include "survey/keying_outlines.hpp"

#include "survey/over_power.hpp"

#include <algorithm>
#include <cmath>
#include <gtest/gtest.h>

namespace loopwright::survey {
namespace {

using exposure::Tier;

KeyingRequest planned_request() {
    KeyingRequest request;
    design::Design& d = request.design;
    d.capacitor.minimum = units::picofarads(5);
    d.capacitor.maximum = units::picofarads(500);
    d.capacitor.loss.q = 1000.0;
    d.site.ground.kind = design::GroundKind::soil;
    d.site.ground.class_name = "average ground";
    d.station.emission = "carrier";
    d.station.power = units::watts(10);
    d.station.bands = {"40m", "20m", "10m"};
    request.limits = {"icnirp_1998", "icnirp_2010"}; // the second ends at 10 MHz
    request.intervals = false;
    return request;
}

double most(const std::vector<units::Length>& all) {
    return std::max_element(all.begin(), all.end())->value();
}

TEST(PlannedOutlines, AreTheFarthestOfTheBandsInEveryDirection) {
    const Keying report = keying(planned_request());
    const auto all = planned_outlines(report, "icnirp_1998");
    ASSERT_TRUE(all && all->complete);
    EXPECT_EQ(all->bands, (std::vector<std::string>{"40m", "20m", "10m"}));
    EXPECT_EQ(all->frequency.value(), 0);
    EXPECT_FALSE(all->standard.empty());
    ASSERT_EQ(all->tiers.size(), 2U);
    for (std::size_t t = 0; t < 2; ++t) {
        const TierOutlines& tier = all->tiers[t];
        ASSERT_TRUE(tier.nominal.from_above && tier.nominal.side && tier.farthest);
        EXPECT_FALSE(tier.upper); // the report has no intervals
        std::vector<double> expected(tier.nominal.from_above->size(), 0);
        for (const KeyingBand& band : report.bands) {
            const auto one = keying_outlines(report.request.design, band.point.frequency, "icnirp_1998");
            ASSERT_TRUE(one);
            const auto& outline = *one->tiers.at(t).nominal.from_above;
            for (std::size_t i = 0; i < expected.size(); ++i) {
                expected[i] = std::max(expected[i], outline[i].value());
            }
            EXPECT_LE(one->tiers[t].farthest->distance.value(), tier.farthest->distance.value() + 0.002);
            for (std::size_t p = 0; p < tier.over_power.size(); ++p) {
                const auto &together = tier.over_power[p].distance,
                           &alone = one->tiers[t].over_power[p].distance;
                if (together) {
                    EXPECT_GE(together->value(), alone.value().value() - 0.003) << band.band;
                }
            }
        }
        for (std::size_t i = 0; i < expected.size(); ++i) {
            EXPECT_NEAR((*tier.nominal.from_above)[i].value(), expected[i], 0.02 * expected[i]) << i;
        }
        double widest_row = 0;
        for (const auto& piece : tier.nominal.side->pieces) {
            for (const exposure::SideRow& row : piece) {
                widest_row = std::max({widest_row, row.right.value(), -row.left.value()});
            }
        }
        EXPECT_NEAR(widest_row, tier.farthest->distance.value(), 0.03 * tier.farthest->distance.value());
    }
}

// Without a limit named, every limit counts, whichever is stricter; each with its own time and tier.
TEST(PlannedOutlines, OfEveryLimitAreAtLeastThoseOfEach) {
    const Keying report = keying(planned_request());
    const auto all = planned_outlines(report, "");
    ASSERT_TRUE(all && !all->tiers.empty());
    EXPECT_TRUE(all->standard.empty());
    for (const char* id : {"icnirp_1998", "icnirp_2010"}) {
        const auto one = planned_outlines(report, id);
        ASSERT_TRUE(one && !one->tiers.empty()) << id;
        for (std::size_t i = 0; i < 72; ++i) {
            EXPECT_GE((*all->tiers[0].nominal.from_above)[i].value(),
                      0.985 * (*one->tiers[0].nominal.from_above)[i].value())
                << id << ", " << i;
        }
    }
    const LargestDistance largest = largest_distance(report);
    EXPECT_NEAR(all->tiers[0].farthest->distance.value(), largest.distance->farthest->distance.value(), 1e-9);
    EXPECT_NEAR(most(*all->tiers[0].nominal.from_above), largest.distance->farthest->distance.value(),
                0.03 * largest.distance->farthest->distance.value());
}

TEST(PlannedOutlines, ReachTheUpperEndWhereTheReportHasIntervals) {
    KeyingRequest request = planned_request();
    request.intervals = true;
    request.design.station.bands = {"40m", "20m"};
    const Keying report = keying(request);
    const auto all = planned_outlines(report, "");
    ASSERT_TRUE(all && !all->tiers.empty());
    const TierOutlines& tier = all->tiers[0];
    const double upper_m = largest_distance(report).distance->range.high.value();
    ASSERT_TRUE(tier.upper && tier.upper_distance);
    EXPECT_EQ(tier.upper_distance->value(), upper_m);
    EXPECT_NEAR(most(*tier.upper->from_above), upper_m, 0.03 * upper_m);
    EXPECT_GT(most(*tier.upper->from_above), most(*tier.nominal.from_above));
    const auto charted = upper_end_at(tier.over_power, request.design.station.power.value.value());
    ASSERT_TRUE(charted);
    EXPECT_NEAR(*charted, upper_m, 0.005 * upper_m);
}

TEST(PlannedOutlines, NothingWhereNoBandIsReached) {
    KeyingRequest request = planned_request();
    request.design.capacitor.maximum = units::picofarads(6);
    request.design.station.bands = {"40m"};
    const Keying report = keying(request);
    ASSERT_EQ(report.bands.at(0).verdict, KeyingVerdict::out_of_reach);
    EXPECT_FALSE(planned_outlines(report, ""));
    // A stop leaves it marked as not complete.
    const base::StopToken stop;
    stop.request_stop();
    const auto stopped = planned_outlines(keying(planned_request()), "", stop);
    EXPECT_TRUE(!stopped || !stopped->complete);
}

} // namespace
} // namespace loopwright::survey
