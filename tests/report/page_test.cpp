#include "report/page.hpp"

#include "point_samples.hpp"
#include "report/cautions.hpp"
#include "report/hazards.hpp"
#include "report/tables.hpp"
#include "support/plain.hpp"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <algorithm>

namespace loopwright::report {
namespace {

using support::plain;
using testing::HasSubstr;

survey::Survey two_bands() {
    survey::Survey survey;
    survey.request.design.title = "Test loop";
    survey.request.model = loop::Model::closed_form;
    survey.bands = {
        row("40m", established(), survey::BandVerdict::worthwhile, "Radiates 20 %"),
        row("6m", not_established(), survey::BandVerdict::not_established, "Not established: Too long here")};
    survey.complete = true;
    return survey;
}

std::string all_text(const std::vector<Sentence>& sentences) {
    std::string text;
    for (const Sentence& sentence : sentences) {
        text += plain(sentence.text) + "\n";
    }
    return text;
}

TEST(Hazards, NameTheHighestVoltageAndItsBand) {
    survey::Survey survey = two_bands();
    EXPECT_THAT(
        all_text(hazards(survey)),
        HasSubstr("Capacitor voltage: 1.54 kV peak at the most, on 40m at 10 W, and no rating is given"));
    survey.request.design.capacitor.rating.peak_voltage = units::volts(1000);
    EXPECT_THAT(all_text(hazards(survey)), HasSubstr("more than the rating of 1 kV: do not key."));
    survey.request.design.capacitor.rating.peak_voltage = units::volts(3083);
    EXPECT_THAT(all_text(hazards(survey)), HasSubstr("50 % of the rating of 3.083 kV."));
}

// Without a report before keying too: a fixed capacitor in series without a rating on the band.
TEST(Hazards, AMemberWithoutARatingIsNotWithinAny) {
    survey::Survey survey = two_bands();
    design::Capacitor& capacitor = survey.request.design.capacitor;
    capacitor.maximum = units::picofarads(900);
    capacitor.rating.peak_voltage = units::volts(9000);
    capacitor.added.resize(1);
    capacitor.added[0].capacitance = units::picofarads(100);
    EXPECT_THAT(all_text(hazards(survey)), HasSubstr("not within a rating on 40m"));
    capacitor.added[0].peak_voltage = units::volts(9000);
    EXPECT_THAT(all_text(hazards(survey)), HasSubstr("nearest to the rating on 40m"));
}

TEST(Hazards, TakeTheUpperEndOfTheVoltage) {
    survey::Survey survey = two_bands();
    survey.request.design.capacitor.rating.peak_voltage = units::volts(1600);
    survey.bands[0].point.resonance->capacitor_voltage_peak_range = {units::volts(1500), units::volts(1700)};
    EXPECT_THAT(all_text(hazards(survey)),
                HasSubstr("1.54 kV peak (losses varied alone: up to 1.70 kV) at the most"));
    EXPECT_THAT(all_text(hazards(survey)), HasSubstr("do not key"));
}

TEST(Hazards, NameTheBandsWithoutAVoltage) {
    EXPECT_THAT(all_text(hazards(two_bands())),
                HasSubstr("Capacitor voltage: not established on 6m; expect kilovolts."));
}

TEST(Hazards, AlwaysSayThatNoDistanceIsEstablished) {
    const std::string sentence = "Distance people must keep: not established, treat the loop as hazardous.";
    EXPECT_THAT(all_text(hazards(two_bands())), HasSubstr(sentence));
    EXPECT_THAT(all_text(hazards(survey::Survey{})), HasSubstr(sentence));
    // Where another page has it, that page is named.
    for (const auto& sentences :
         {hazards(established(), {}), hazards(not_established(), {}), sweep_hazards(survey::Survey{})}) {
        EXPECT_THAT(all_text(sentences),
                    HasSubstr("not established on this page, treat the loop as hazardous"));
        EXPECT_THAT(all_text(sentences), HasSubstr("keying"));
    }
}

TEST(Pages, AllCarryTheModelTheFreeSpaceAndTheCautions) {
    survey::Survey survey = two_bands();
    survey.curve = {established(), not_established()};
    for (const Page& page : {report_page(survey), bands_page(survey), sweep_page(survey),
                             point_page(established(), survey.request.design),
                             point_page(not_established(), survey.request.design)}) {
        const std::string text = to_text(page, 10000);
        EXPECT_THAT(text, HasSubstr("Test loop\n"));
        EXPECT_THAT(text, HasSubstr("The figures are for free space, computed with the closed form."));
        for (const char* word :
             {"Kilovolts:", "RF burns:", "Exposure:", "licence terms", "licensed practice"}) {
            EXPECT_THAT(text, HasSubstr(word));
        }
        EXPECT_EQ(text.find("safe"), std::string::npos);
        EXPECT_EQ(text.find("\xE2\x80\x89"), std::string::npos) << "a thin space in a plain text";
    }
}

TEST(Pages, BreakSentencesAndNotTables) {
    const std::string text = to_text(report_page(two_bands()), 60);
    std::size_t start = 0;
    bool in_table = false;
    for (std::size_t end = text.find('\n'); end != std::string::npos; end = text.find('\n', start)) {
        const std::string line = text.substr(start, end - start);
        in_table = line == "Bands" || (in_table && !line.empty());
        EXPECT_TRUE(in_table || characters(line) <= 60) << line;
        start = end + 1;
    }
}

TEST(Pages, SayInWordsWhatThePointOfALongLoopLacks) {
    const std::string text = to_text(point_page(not_established(), {}), 200);
    EXPECT_THAT(text, HasSubstr("not established"));
    EXPECT_THAT(text, HasSubstr("Too long here."));
}

TEST(Pages, OfTheFullWaveDoNotClaimFreeSpace) {
    loop::OperatingPoint point = established();
    point.model = loop::Model::full_wave;
    const std::string text = to_text(point_page(point, {}), 10000);
    EXPECT_EQ(text.find("closed form"), std::string::npos);
    EXPECT_THAT(text, HasSubstr("full-wave model"));
}

TEST(Report, DescribesTheLoopAsTyped) {
    survey::Survey survey = two_bands();
    design::Design& design = survey.request.design;
    design.loop.size = {units::metres(0.9144), "36 in"};
    design.joints = {{2, {units::ohms(0.001), "1 mohm"}}};
    design.capacitor.loss.q = 1000;
    design.site.ground.kind = design::GroundKind::soil;
    design.site.ground.class_name = "average ground";
    const std::string text = to_text(report_page(survey), 10000);
    EXPECT_THAT(text, HasSubstr("Loop: circle, 36 in diameter (centre line), 1 turn, gap 20 mm."));
    EXPECT_THAT(text, HasSubstr("Joints: 2 of 1 mohm."));
    EXPECT_THAT(text, HasSubstr("Capacitor: 12 pF to 150 pF, stray 0 pF, Q 1000, contacts 0 "));
    EXPECT_THAT(text, HasSubstr("no voltage rating given."));
    EXPECT_THAT(text, HasSubstr("lowest point at 1 m, over average ground."));
}

TEST(Tables, HoldARowABandAndEveryColumnForPrograms) {
    const survey::Survey survey = two_bands();
    const Table board = band_board(survey);
    ASSERT_EQ(board.rows.size(), 2U);
    EXPECT_EQ(std::get<std::string>(board.rows[0].front()), "40m");
    EXPECT_EQ(std::get<std::string>(board.rows[1].back()), "not established");
    const std::string text = to_text(board);
    EXPECT_THAT(text, HasSubstr("Bandwidth"));
    EXPECT_THAT(text, HasSubstr("VSWR 2"));
    EXPECT_THAT(text, HasSubstr("unloaded"));
    EXPECT_THAT(text, HasSubstr("peak"));
    const std::string csv = to_csv(band_data(survey));
    EXPECT_EQ(csv.substr(0, csv.find(',', 40)), "band,verdict,verdict_text,model,frequency_Hz");
    EXPECT_THAT(csv, HasSubstr("resistance_ohm.radiation"));
    EXPECT_EQ(std::count(csv.begin(), csv.end(), '\n'), 3);
    for (const Table& table : {board, band_data(survey), sweep_table(survey), sweep_data(survey)}) {
        for (const auto& row : table.rows) {
            EXPECT_EQ(row.size(), table.columns.size());
        }
    }
}

} // namespace
} // namespace loopwright::report
