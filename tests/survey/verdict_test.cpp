#include "survey/verdict.hpp"

#include "fake_model.hpp"
#include "support/plain.hpp"

#include <gtest/gtest.h>

#include <cmath>
#include <string>

namespace loopwright::survey {
namespace {

/// 12 to 150 pF with 3 pF stray, rated 2 kV; the emission works in 3 kHz.
class Verdict : public testing::Test {
protected:
    Verdict() {
        design.capacitor.stray = units::picofarads(3);
        design.capacitor.rating.peak_voltage = units::volts(2000);
        emission.name = "FT8";
        emission.working_width = units::kilohertz(3);
    }
    loop::Resonance& r() { return *point.resonance; }
    [[nodiscard]] std::vector<Reason> all() const { return reasons(point, design, emission); }
    [[nodiscard]] std::string text(std::size_t i = 0) const { return support::plain(all().at(i).text); }
    [[nodiscard]] BandVerdict verdict(std::size_t i = 0) const { return all().at(i).verdict; }

    loop::OperatingPoint point = round_point(units::megahertz(7.0755), units::watts(4), 2.0);
    design::Design design;
    band::Emission emission;
};

TEST_F(Verdict, WorthwhileFromTenPercentOn) {
    r().efficiency = 0.1;
    EXPECT_EQ(verdict(), BandVerdict::worthwhile);
    EXPECT_EQ(text(), "Radiates 10 % of the power; 800 V peak, rated 2 kV");
    EXPECT_EQ(all().size(), 1U);
    r().efficiency = 0.0999;
    EXPECT_EQ(verdict(), BandVerdict::weak);
    r().efficiency = 0.01;
    EXPECT_EQ(verdict(), BandVerdict::weak);
    r().efficiency = 0.0099;
    EXPECT_EQ(verdict(), BandVerdict::very_weak);
}

// Rule: a figure below a limit is printed with as many digits, up to six, as it takes to read below it.
TEST_F(Verdict, APrintedEfficiencyNeverContradictsItsVerdict) {
    r().efficiency = 0.0996;
    EXPECT_EQ(verdict(), BandVerdict::weak);
    EXPECT_EQ(text(), "Radiates 9.96 % of the power; 800 V peak, rated 2 kV");
    r().efficiency = 0.0999999999;
    EXPECT_EQ(verdict(), BandVerdict::weak);
    EXPECT_EQ(text(), "Radiates 9.99999 % of the power; 800 V peak, rated 2 kV");
    r().efficiency = 0.00999;
    EXPECT_EQ(verdict(), BandVerdict::very_weak);
    EXPECT_EQ(text(), "Radiates 0.999 % of the power; 800 V peak, rated 2 kV");
    // What need not be told apart keeps its digits.
    EXPECT_EQ(efficiency_to_print(0.0954, 2).digits, 2);
    EXPECT_EQ(efficiency_to_print(0.104, 2).digits, 2);
    EXPECT_EQ(efficiency_to_print(0.0996, 3).digits, 3);
    EXPECT_EQ(efficiency_to_print(0.09996, 3).digits, 4);
    EXPECT_EQ(efficiency_to_print(0.0, 3).digits, 3);
}

TEST_F(Verdict, EveryPrintedEfficiencyReadsOnItsSideOfTheLimits) {
    for (int digits = 1; digits <= 4; ++digits) {
        for (int step = 0; step < 20'000; ++step) {
            const double share = 0.0089 * std::pow(1.00013, step); // to 0.12
            r().efficiency = share;
            const EfficiencyFigure figure = efficiency_to_print(share, digits);
            const double printed =
                std::stod(units::shown(100 * figure.share, units::Dimension::number, figure.digits)) / 100;
            EXPECT_EQ(printed >= worthwhile_from - 1e-15, share >= worthwhile_from) << share;
            EXPECT_EQ(printed >= weak_from - 1e-15, share >= weak_from) << share;
        }
    }
}

TEST_F(Verdict, EfficiencyIsJudgedByTheLowerEnd) {
    r().efficiency = 0.12;
    r().efficiency_range = {0.08, 0.2};
    EXPECT_EQ(verdict(), BandVerdict::weak);
    EXPECT_EQ(text(), "Radiates 12 % of the power, perhaps 8.0 %; 800 V peak, rated 2 kV");
}

TEST_F(Verdict, WithoutARatingNothingIsSaidAboutVoltsButThatThereIsNone) {
    design.capacitor.rating.peak_voltage.reset();
    r().capacitor_voltage_peak = units::volts(9000);
    EXPECT_EQ(verdict(), BandVerdict::worthwhile);
    EXPECT_EQ(text(), "Radiates 20 % of the power; 9.00 kV peak, no rating given");
}

// Voltage goes with the root of the power: 4 kV at 4 W is 2 kV at 1 W.
TEST_F(Verdict, VoltageOverTheRatingNamesThePowerThatReachesIt) {
    r().capacitor_voltage_peak = units::volts(4000);
    EXPECT_EQ(verdict(), BandVerdict::voltage_exceeded);
    EXPECT_EQ(text(), "4.00 kV peak, rated 2 kV; the rating is reached at 1.0 W");
    ASSERT_EQ(all().size(), 2U);
    EXPECT_EQ(verdict(1), BandVerdict::worthwhile);
    EXPECT_EQ(text(1), "Radiates 20 % of the power");
}

TEST_F(Verdict, VoltageIsJudgedByTheUpperEnd) {
    r().capacitor_voltage_peak = units::volts(1900);
    r().capacitor_voltage_peak_range = {units::volts(1700), units::volts(2500)};
    EXPECT_EQ(verdict(), BandVerdict::voltage_exceeded);
    EXPECT_EQ(text(), "1.90 kV peak, perhaps 2.50 kV, rated 2 kV; the rating is reached at 2.5 W"); // 2.56 W
    r().capacitor_voltage_peak_range = {units::volts(1700), units::volts(2000)};
    EXPECT_EQ(verdict(), BandVerdict::worthwhile) << "the rating itself is still within it";
}

// A gap, a current or added capacitors: the whole network decides (tests/capacitor has its numbers).
TEST_F(Verdict, VoltageIsHeldAgainstWhatTheNetworkStands) {
    const units::Capacitance variable = r().tuning_capacitance - units::picofarads(3);
    design::AddedCapacitor series; // as large as the variable one has to be twice over: half the volts on it
    series.capacitance = variable * 2.0;
    series.connection = design::AddedConnection::series;
    series.peak_voltage = units::volts(300);
    design.capacitor.added = {series};
    design.capacitor.maximum = units::farads(1e-9);
    ASSERT_EQ(verdict(), BandVerdict::voltage_exceeded);
    // 800 V across it: 400 V on the fixed one, 300 V allowed at (300/400)^2 of 4 W.
    EXPECT_EQ(text(), "800 V peak, usable 600 V; that is reached at 2.2 W");
    design.capacitor.added[0].peak_voltage.reset();
    EXPECT_EQ(text(),
              "Radiates 20 % of the power; 800 V peak, usable 4.00 kV, but a capacitor there has no rating");
    design.capacitor.added.clear();
    design.capacitor.rating.peak_voltage.reset();
    design.capacitor.rating.gap = units::millimetres(0.3); // some 0.4 kV
    EXPECT_EQ(verdict(), BandVerdict::voltage_exceeded);
    design.capacitor.arrangement = design::SectionArrangement::butterfly;
    design.capacitor.rating.gap = units::millimetres(3);
    EXPECT_NE(verdict(), BandVerdict::voltage_exceeded);
}

TEST_F(Verdict, ValuesThatDifferLittleAreToldApart) {
    r().capacitor_voltage_peak = units::volts(2000.4);
    EXPECT_EQ(text().substr(0, 27), "2.0004 kV peak, rated 2 kV;");
}

TEST_F(Verdict, OutOfReachNamesTheEndThatIsMissed) {
    r().in_capacitor_range = false;
    r().tuning_capacitance = units::picofarads(8.1);
    EXPECT_EQ(verdict(), BandVerdict::out_of_reach);
    EXPECT_EQ(text(), "Needs 8.10 pF; the capacitor starts at 15 pF with its stray");
    r().tuning_capacitance = units::picofarads(300);
    EXPECT_EQ(text(), "Needs 300 pF; the capacitor ends at 153 pF with its stray");
    design.capacitor.stray = units::picofarads(0);
    EXPECT_EQ(text(), "Needs 300 pF; the capacitor ends at 150 pF");
    EXPECT_EQ(all().size(), 1U) << "what cannot be tuned has no volts and no width";
}

TEST_F(Verdict, EdgeOfRangeWhereTheUncertaintyReachesPastIt) {
    r().tuning_capacitance = units::picofarads(15.4);
    r().tuning_capacitance_range = {units::picofarads(14.8), units::picofarads(16)};
    EXPECT_EQ(verdict(), BandVerdict::edge_of_range);
    EXPECT_EQ(text(), "Needs 15.4 pF, perhaps 14.8 pF; the capacitor starts at 15 pF with its stray");
    r().tuning_capacitance = units::picofarads(152);
    r().tuning_capacitance_range = {units::picofarads(150), units::picofarads(154)};
    EXPECT_EQ(text(), "Needs 152 pF, perhaps 154 pF; the capacitor ends at 153 pF with its stray");
}

TEST_F(Verdict, NarrowerThanTheEmissionWorksIn) {
    r().bandwidth_vswr = units::kilohertz(1.2);
    EXPECT_EQ(verdict(), BandVerdict::narrow);
    EXPECT_EQ(text(), "1.20 kHz wide at VSWR 2; FT8 works in 3 kHz");
    r().bandwidth_vswr = units::kilohertz(3.2);
    r().bandwidth_vswr_range = {units::kilohertz(2.5), units::kilohertz(4)};
    EXPECT_EQ(text(), "Perhaps only 2.50 kHz wide at VSWR 2; FT8 works in 3 kHz");
}

TEST_F(Verdict, ReasonsStandWorstFirst) {
    r().capacitor_voltage_peak = units::volts(4000);
    r().bandwidth_vswr = units::kilohertz(1);
    r().efficiency = 0.005;
    ASSERT_EQ(all().size(), 3U);
    EXPECT_EQ(verdict(0), BandVerdict::voltage_exceeded);
    EXPECT_EQ(verdict(1), BandVerdict::very_weak);
    EXPECT_EQ(verdict(2), BandVerdict::narrow);
}

TEST_F(Verdict, NotEstablishedGivesTheReasonOfTheModel) {
    point.resonance.reset();
    point.notices.add({"other", base::Severity::caution, "Something else.", 0});
    point.notices.add({"too_long", base::Severity::not_established, "The conductor is too long.", 0});
    EXPECT_EQ(verdict(), BandVerdict::not_established);
    EXPECT_EQ(text(), "Not established: The conductor is too long");
    point.notices = {};
    EXPECT_EQ(text(), "Not established: the model stands behind no number here");
}

TEST_F(Verdict, NeverCallsAnythingSafe) {
    for (const double volts : {10.0, 1999.0, 5000.0}) {
        r().capacitor_voltage_peak = units::volts(volts);
        for (const Reason& reason : all()) {
            EXPECT_EQ(reason.text.find("safe"), std::string::npos) << reason.text;
        }
    }
}

} // namespace
} // namespace loopwright::survey
