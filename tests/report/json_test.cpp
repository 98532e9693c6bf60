#include "report/json.hpp"

#include "base/error.hpp"
#include "point_samples.hpp"
#include "support/promised.hpp"

#include <gtest/gtest.h>
#include <nlohmann/json.hpp>

#include <cmath>

namespace loopwright::report {
namespace {

using nlohmann::json;
using support::expect_promised;

survey::Survey small_survey() {
    survey::Survey survey;
    survey.request.design.title = "A \"loop\"";
    survey.bands = {row("40m", established(), survey::BandVerdict::weak, "Weak indeed",
                        {{survey::BandVerdict::narrow, "Narrow"}}),
                    row("6m", not_established(), survey::BandVerdict::not_established, "Not established")};
    survey.curve = {established(), not_established()};
    survey.complete = true;
    return survey;
}

TEST(PointJson, HasEveryPromisedKeyWithItsValue) {
    const json point = json::parse(point_json(established()));
    expect_promised(point);
    EXPECT_EQ(point["schema"], "loopwright-point-1");
    EXPECT_EQ(point["model"], "closed-form");
    EXPECT_EQ(point["frequency_Hz"], 7.0755e6);
    EXPECT_EQ(point["tuning_capacitance_F"], 200e-12);
    EXPECT_EQ(point["in_capacitor_range"], true);
    // 2.5 uH at 7.0755 MHz resonate with 202.39 pF; 200 pF of them are the capacitor's.
    EXPECT_NEAR(point["own_capacitance_F"].get<double>(), 2.39e-12, 0.005e-12);
    EXPECT_EQ(point["q_loaded"], 550.0);
    EXPECT_EQ(point["vswr"], 2.0);
    EXPECT_EQ(point["capacitor_voltage_peak_V"], 1541.5);
    EXPECT_EQ(point["notices"][0]["code"], "free_space_only");
    EXPECT_EQ(point["notices"][0]["severity"], "information");
    EXPECT_EQ(point["notices"][0]["text"], "Figures are for free space.");
}

// Each part takes the power in proportion to its resistance (one current through all of them).
TEST(PointJson, SplitsThePowerLikeTheResistance) {
    const json point = json::parse(point_json(established()));
    EXPECT_NEAR(point["resistance_ohm"]["total"].get<double>(), 0.1, 1e-15);
    EXPECT_NEAR(point["dissipation_W"]["radiation"].get<double>(), 2.0, 1e-12);
    EXPECT_NEAR(point["dissipation_W"]["conductor"].get<double>(), 6.0, 1e-12);
    EXPECT_NEAR(point["dissipation_W"]["joints"].get<double>(), 1.0, 1e-12);
    EXPECT_NEAR(point["dissipation_W"]["capacitor"].get<double>(), 1.0, 1e-12);
    EXPECT_EQ(point["dissipation_W"]["total"], 10.0);
}

TEST(PointJson, IsNullWhereNothingApplies) {
    const json point = json::parse(point_json(established()));
    EXPECT_TRUE(point["resistance_ohm"]["ground"].is_null());
    EXPECT_TRUE(point["dissipation_W"]["ground"].is_null());
    EXPECT_TRUE(point["gain_over_dipole_dB"].is_null());
    EXPECT_TRUE(point["tuning_capacitance_low_F"].is_null()) << "no interval is known";
    EXPECT_EQ(point["efficiency_low"], 0.15);
    EXPECT_EQ(point["efficiency_high"], 0.25);
}

TEST(PointJson, OverGroundHasTheGround) {
    loop::OperatingPoint over = established();
    over.resonance->resistance.ground = units::ohms(0.1);
    const json point = json::parse(point_json(over));
    EXPECT_EQ(point["resistance_ohm"]["ground"], 0.1);
    EXPECT_NEAR(point["dissipation_W"]["ground"].get<double>(), 5.0, 1e-12);
}

TEST(PointJson, KeepsEveryKeyWhereNothingIsEstablished) {
    const json point = json::parse(point_json(not_established()));
    expect_promised(point);
    for (const char* key :
         {"inductance_H", "in_capacitor_range", "efficiency", "q_loaded", "capacitor_voltage_peak_V"}) {
        EXPECT_TRUE(point[key].is_null()) << key;
    }
    EXPECT_TRUE(point["resistance_ohm"]["total"].is_null());
    EXPECT_TRUE(point["dissipation_W"]["total"].is_null());
    EXPECT_EQ(point["frequency_Hz"], 50.3145e6);
    EXPECT_EQ(point["notices"][0]["severity"], "not_established");
}

TEST(PointJson, RefusesWhatIsNotFinite) {
    loop::OperatingPoint point = established();
    point.resonance->q_unloaded = std::nan("");
    EXPECT_THROW(static_cast<void>(point_json(point)), base::ProgramError);
}

TEST(SweepJson, HasRowsOfPoints) {
    const json sweep = json::parse(sweep_json(small_survey()));
    EXPECT_EQ(sweep["schema"], "loopwright-sweep-1");
    ASSERT_EQ(sweep["rows"].size(), 2U);
    for (const json& row : sweep["rows"]) {
        expect_promised(row);
    }
}

TEST(BandsJson, HasBandAndVerdictBesides) {
    const json bands = json::parse(bands_json(small_survey()));
    EXPECT_EQ(bands["schema"], "loopwright-bands-1");
    EXPECT_EQ(bands["title"], "A \"loop\"");
    ASSERT_EQ(bands["bands"].size(), 2U);
    for (const json& row : bands["bands"]) {
        expect_promised(row);
    }
    EXPECT_EQ(bands["bands"][0]["band"], "40m");
    EXPECT_EQ(bands["bands"][0]["verdict"], "weak");
    EXPECT_EQ(bands["bands"][0]["verdict_text"], "Weak indeed");
    EXPECT_EQ(bands["bands"][0]["further"][0]["verdict"], "narrow");
    EXPECT_EQ(bands["bands"][1]["verdict"], "not_established");
}

TEST(Json, SurvivesATitleThatIsNotUtf8) {
    survey::Survey survey = small_survey();
    survey.request.design.title = "\xFF";
    EXPECT_EQ(json::parse(bands_json(survey))["title"], "\xEF\xBF\xBD");
}

} // namespace
} // namespace loopwright::report
