// What all bands, or all rows of a card, say together of the capacitor's voltage. The figures are made up:
// what is held is the order of verdicts, by the meaning of the words.
#include "survey/voltage_standing.hpp"

#include "survey/card_safety.hpp"
#include "survey/detail/card_remarks.hpp"

#include <algorithm>
#include <gmock/gmock.h>
#include <gtest/gtest.h>

namespace loopwright::survey {
namespace {

using testing::ElementsAre;
using testing::IsEmpty;

KeyingBand band_of(const std::string& name, double peak_V, std::optional<double> usable_V,
                   bool unrated_members = false) {
    KeyingBand band;
    band.band = name;
    band.point.resonance = loop::Resonance{};
    band.verdict = KeyingVerdict::within;
    band.voltage_peak.high = units::volts(peak_V);
    if (usable_V) {
        band.usable_voltage = units::volts(*usable_V);
    }
    band.load.emplace();
    band.load->unrated_members = unrated_members;
    return band;
}

CardRow row_of(const std::string& band, const std::string& use, double peak_V, double usable_V) {
    CardRow row;
    row.band = band;
    row.use = use;
    row.reachable = true;
    row.point.frequency = units::megahertz(7.1);
    row.point.resonance = loop::Resonance{};
    row.point.resonance->capacitor_voltage_peak = units::volts(0.9 * peak_V);
    row.point.resonance->capacitor_voltage_peak_range = {units::volts(0.8 * peak_V), units::volts(peak_V)};
    row.usable_voltage = units::volts(usable_V);
    return row;
}

// Not where volts are highest, but where they come nearest to what the capacitor stands; the highest besides.
TEST(VoltageStanding, NearestToTheRatingAndHighestAreTwoThings) {
    Keying report;
    report.bands = {band_of("30m", 992, 1000), band_of("20m", 1160, 3000), band_of("10m", 9000, 100)};
    report.bands[2].verdict = KeyingVerdict::out_of_reach;
    const VoltageStanding standing = voltage_standing(report);
    EXPECT_EQ(standing.verdict, RatingVerdict::within);
    ASSERT_TRUE(standing.nearest && standing.highest);
    EXPECT_EQ(standing.nearest->where, "30m");
    EXPECT_EQ(standing.nearest->peak, units::volts(992));
    EXPECT_EQ(standing.highest->where, "20m");
    EXPECT_EQ(standing.highest->peak, units::volts(1160));
    EXPECT_THAT(standing.unrated, IsEmpty());
}

TEST(VoltageStanding, OneUnratedMemberOnOneBandTakesWithinAway) {
    Keying report;
    report.bands = {band_of("12m", 1020, 5230, true), band_of("10m", 938, 1150)};
    VoltageStanding standing = voltage_standing(report);
    EXPECT_EQ(standing.verdict, RatingVerdict::not_established);
    EXPECT_THAT(standing.unrated, ElementsAre("12m"));
    EXPECT_EQ(standing.nearest->where, "10m");
    EXPECT_TRUE(standing.any_rating);
    report.bands[1].voltage_peak.high = units::volts(1151); // what is known to be over comes first
    standing = voltage_standing(report);
    EXPECT_EQ(standing.verdict, RatingVerdict::exceeded);
    EXPECT_EQ(standing.nearest->where, "10m");
    EXPECT_THAT(standing.unrated, ElementsAre("12m"));
}

// The rated member alone is over already, whatever the other stands.
TEST(VoltageStanding, OverIsOverWithAnUnratedMemberToo) {
    Keying report;
    report.bands = {band_of("12m", 6000, 5230, true), band_of("10m", 938, 1150)};
    EXPECT_EQ(voltage_standing(report).verdict, RatingVerdict::exceeded);
    EXPECT_EQ(voltage_standing(report).nearest->where, "12m");
}

TEST(VoltageStanding, NothingKnownIsNotWithin) {
    Keying report;
    EXPECT_EQ(voltage_standing(report).verdict, RatingVerdict::not_established);
    EXPECT_FALSE(voltage_standing(report).nearest);
    report.bands = {band_of("40m", 938, std::nullopt), band_of("20m", 1200, std::nullopt)};
    EXPECT_EQ(voltage_standing(report).nearest->where, "20m");
    EXPECT_FALSE(voltage_standing(report).any_rating);
    report.bands = {band_of("40m", 938, 1000), band_of("20m", 938, 1000)};
    report.bands[1].point.resonance.reset();
    EXPECT_EQ(voltage_standing(report).verdict, RatingVerdict::not_established);
    EXPECT_THAT(voltage_standing(report).unknown, ElementsAre("20m"));
}

// The band's usual frequency holds, one row of the card does not: the card's headline is that row's.
TEST(VoltageStanding, ACardTakesTheWorstOfItsRows) {
    Keying report;
    report.bands = {band_of("40m", 835, 840), band_of("20m", 100, 840)};
    ASSERT_EQ(voltage_standing(report).verdict, RatingVerdict::within);
    Card card;
    card.request.design.capacitor.rating.peak_voltage = units::volts(840);
    card.rows = {row_of("40m", "FT8", 835, 840), row_of("40m", "SSB voice", 844, 840)};
    const VoltageStanding standing = voltage_standing(report, card);
    EXPECT_EQ(standing.verdict, RatingVerdict::exceeded);
    EXPECT_EQ(standing.nearest->where, "40m SSB voice");
    EXPECT_EQ(standing.nearest->peak, units::volts(844));
    card.rows.pop_back();
    EXPECT_EQ(voltage_standing(report, card).verdict, RatingVerdict::within);
    report.bands[1].usable_voltage = units::volts(99); // a planned band without a row counts as well
    EXPECT_EQ(voltage_standing(report, card).nearest->where, "20m");
}

// A power that is advised passes: 4 W times (600/760)^2 is 2.493 W.
TEST(VoltageStanding, ThePowerOfACardsRemarkIsRoundedDown) {
    CardRow row = row_of("40m", "FT8", 760, 600);
    row.point.power = units::watts(4);
    row.usable_span = units::kilohertz(10);
    const auto remarks = detail::card_remarks(row, {});
    const auto volts = std::find_if(remarks.begin(), remarks.end(), [](const CardRemark& remark) {
        return remark.kind == CardRemarkKind::voltage_exceeded;
    });
    ASSERT_NE(volts, remarks.end());
    EXPECT_THAT(volts->text, testing::EndsWith("reached at 2.4\u2009W"));
}

// FT8 sends every second slot, 12.64 of 15 s; PSK31 half of the time in overs of minutes; WSPR a fifth of its
// slots: what a limit averages over minutes asks most for the second (duties: tests/exposure).
TEST(CardDistance, RowsThatSendMoreOfTheTimeAskForMore) {
    Keying report;
    report.request.design.station.emission = "ft8";
    report.request.limits = {"icnirp_1998"};
    Card card;
    card.request.design = report.request.design;
    for (const char* emission : {"ft8", "psk31", "psk31", "wspr"}) {
        CardRow row = row_of("40m", emission, 1, 2);
        row.emission = band::find_emission(emission).value();
        card.rows.push_back(row);
    }
    const auto more = emissions_asking_more(card, report);
    ASSERT_EQ(more.size(), 1U);
    EXPECT_EQ(more[0].id, "psk31");
    report.request.design.station.emission = "carrier"; // on all the time: nothing sends more
    EXPECT_THAT(emissions_asking_more(card, report), IsEmpty());
}

} // namespace
} // namespace loopwright::survey
