// Board and card tell the voltage of the sheet before keying: one upper end on every page.
#include "survey/site_voltage.hpp"

#include <algorithm>
#include <gtest/gtest.h>

namespace loopwright::survey {
namespace {

design::Design over_soil() {
    design::Design d;
    d.capacitor.minimum = units::picofarads(5);
    d.capacitor.maximum = units::picofarads(500);
    d.capacitor.loss.q = 1000.0;
    d.site.ground.kind = design::GroundKind::soil;
    d.site.ground.relative_permittivity = 13;
    d.site.ground.conductivity = units::siemens_per_metre(0.005);
    d.site.lowest_point = units::metres(0.5);
    d.station.emission = "ft8";
    d.station.power = units::watts(10);
    d.station.bands = {"40m", "20m"};
    return d;
}

Keying sheet_of(const design::Design& design) {
    KeyingRequest request;
    request.design = design;
    return keying(request);
}

std::vector<BandRow> board_of(const design::Design& design) {
    Request request;
    request.design = design;
    return run(request).bands;
}

units::Voltage own_high(const loop::OperatingPoint& point) {
    return std::max(point.resonance->capacitor_voltage_peak,
                    point.resonance->capacitor_voltage_peak_range.high);
}

/// A rating between the upper end of the point and that of the sheet on a band, so that only the sheet
/// exceeds it.
units::Voltage between(const KeyingBand& band) {
    return 0.5 * (own_high(band.point) + band.voltage_peak.high);
}

TEST(SiteVoltage, TheBoardHasTheEndsAndTheVerdictOfTheSheet) {
    design::Design design = over_soil();
    design.capacitor.rating.peak_voltage = units::volts(20000);
    Keying sheet = sheet_of(design);
    ASSERT_GT(sheet.bands[1].voltage_peak.high, 1.001 * own_high(sheet.bands[1].point));
    design.capacitor.rating.peak_voltage = between(sheet.bands[1]);
    sheet = sheet_of(design);
    const auto before = board_of(design);
    const auto rows = with_keying(before, sheet);
    ASSERT_EQ(rows.size(), 2U);
    for (std::size_t i = 0; i < 2; ++i) {
        const auto& range = rows[i].point.resonance->capacitor_voltage_peak_range;
        EXPECT_NEAR(range.high.value(), sheet.bands[i].voltage_peak.high.value(), 1e-6 * range.high.value());
        EXPECT_NEAR(range.low.value(), sheet.bands[i].voltage_peak.low.value(), 1e-6 * range.high.value());
    }
    EXPECT_NE(before[1].verdict, BandVerdict::voltage_exceeded);
    EXPECT_EQ(rows[1].verdict, BandVerdict::voltage_exceeded);
    EXPECT_EQ(sheet.bands[1].verdict, KeyingVerdict::exceeded);
}

TEST(SiteVoltage, TheCardHasItToo) {
    design::Design design = over_soil();
    design.capacitor.rating.peak_voltage = units::volts(20000);
    design.capacitor.rating.peak_voltage = between(sheet_of(design).bands[1]);
    const Keying sheet = sheet_of(design);
    const Card before = card({design, 2.0});
    const Card told = with_keying(before, sheet);
    const auto at = [&](const Card& card) {
        return *std::find_if(card.rows.begin(), card.rows.end(), [&](const CardRow& row) {
            return row.band == "20m" && row.tuned() == sheet.bands[1].point.frequency;
        });
    };
    const auto exceeded = [](const CardRow& row) {
        return std::any_of(row.remarks.begin(), row.remarks.end(), [](const CardRemark& remark) {
            return remark.kind == CardRemarkKind::voltage_exceeded;
        });
    };
    EXPECT_FALSE(exceeded(at(before)));
    EXPECT_TRUE(exceeded(at(told)));
    EXPECT_NEAR(own_high(at(told).point).value(), sheet.bands[1].voltage_peak.high.value(), 0.01);
    EXPECT_EQ(at(told).remarks.size(), at(before).remarks.size() + 1);
}

// The sheet's ends are shares of the full-wave volts: those of the closed form stay their own.
TEST(SiteVoltage, TheClosedFormKeepsItsOwn) {
    const design::Design design = over_soil();
    Request request;
    request.design = design;
    request.model = loop::Model::closed_form;
    const Keying sheet = sheet_of(design);
    const auto before = run(request).bands;
    const auto rows = with_keying(before, sheet);
    ASSERT_TRUE(before.at(1).point.resonance);
    EXPECT_EQ(own_high(rows[1].point), own_high(before[1].point));
    EXPECT_EQ(rows[1].verdict_text, before[1].verdict_text);
    EXPECT_EQ(own_high(with_keying(before[1].point, "20m", sheet)), own_high(before[1].point));
}

// One point: the window's headlines, and the command line's.
TEST(SiteVoltage, APointHasTheEndsOfItsBand) {
    const design::Design design = over_soil();
    const Keying sheet = sheet_of(design);
    const loop::OperatingPoint own = sheet.bands[1].point;
    const loop::OperatingPoint told = with_keying(own, "20m", sheet);
    EXPECT_NEAR(own_high(told).value(), sheet.bands[1].voltage_peak.high.value(), 1e-6);
    EXPECT_GT(own_high(told), 1.001 * own_high(own));
    EXPECT_EQ(own_high(with_keying(own, "", sheet)), own_high(own));    // of no band
    EXPECT_EQ(own_high(with_keying(own, "15m", sheet)), own_high(own)); // of none on the sheet
}

// The sheet of another power says nothing of these volts.
TEST(SiteVoltage, AnotherPowersSheetChangesNothing) {
    const design::Design design = over_soil();
    design::Design weaker = design;
    weaker.station.power = units::watts(5);
    const auto before = board_of(design);
    const auto rows = with_keying(before, sheet_of(weaker));
    EXPECT_EQ(own_high(rows[0].point), own_high(before[0].point));
    EXPECT_EQ(rows[0].verdict_text, before[0].verdict_text);
}

} // namespace
} // namespace loopwright::survey
