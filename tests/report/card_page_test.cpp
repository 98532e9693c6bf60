// The retune card as page, JSON and CSV: made rows of round invented numbers, so that what has to stand there
// is known without the model.
#include "report/card.hpp"
#include "report/card_fields.hpp"
#include "report/point_samples.hpp"

#include <algorithm>
#include <gmock/gmock.h>
#include <gtest/gtest.h>
#include <nlohmann/json.hpp>
#include <stdexcept>

namespace loopwright::report {
namespace {

using nlohmann::json;
using survey::CardRemarkKind;
using testing::HasSubstr;
using testing::Not;

/// In reach, calibrated; the intervals lie unevenly about their figures.
survey::CardRow card_row_made(const std::string& band, const std::string& use) {
    survey::CardRow row;
    row.band = band;
    row.use = use;
    row.emission = *band::find_emission("ft8");
    row.radio = units::megahertz(7.074);
    row.sideband = band::Sideband::upper;
    row.point = established();
    row.point.resonance->capacitor_voltage_peak = units::volts(1000);
    row.point.resonance->capacitor_voltage_peak_range = {units::volts(900), units::volts(1234)};
    row.reachable = true;
    row.variable = units::picofarads(197);
    row.predicted = tuning::Reading{104.2, {96, 112.5}, -0.000012, true};
    row.calibrated = tuning::Reading{101.3, {100.6, 102.1}, -0.000013, true};
    row.usable_span = units::kilohertz(10);
    row.usable_span_range = {units::kilohertz(8.2), units::kilohertz(11)};
    return row;
}

survey::CardRow row_beyond() {
    survey::CardRow row = card_row_made("80m", "CW");
    row.reachable = false;
    row.predicted.reset();
    row.calibrated.reset();
    tuning::Shortfall missing;
    missing.above = false;
    missing.by = units::picofarads(2);
    row.shortfall = missing;
    return row;
}

survey::Card card_made(std::vector<survey::CardRow> rows) {
    survey::Card card;
    card.request.design.title = "Card loop";
    card.request.design.capacitor.dial = design::Dial{};
    card.request.vswr_limit = 3;
    card.rows = std::move(rows);
    card.complete = true;
    return card;
}

const Section& card_section(const Page& page, const std::string& code) {
    for (const Section& section : page.sections) {
        if (section.code == code) {
            return section;
        }
    }
    throw std::runtime_error("no section " + code);
}

std::string card_text(const Page& page, const std::string& code) {
    std::string text;
    for (const Sentence& sentence : card_section(page, code).sentences) {
        text += sentence.text + "\n";
    }
    return text;
}

/// The shown text of a cell of the board; "no column" where there is none.
std::string card_cell(const Page& page, std::size_t row, const std::string& key) {
    const Table& table = *card_section(page, "card").table;
    for (std::size_t i = 0; i < table.columns.size(); ++i) {
        if (table.columns[i].key == key) {
            return cell_text(table.rows.at(row).at(i), table.columns[i]);
        }
    }
    return "no column";
}

// One digit more than the finest step, from one to four.
TEST(CardPage, ReadingsHaveTheDigitsOfTheDrive) {
    const auto decimals = [](double hand_step, double reduction) {
        design::Dial dial;
        dial.hand_step = hand_step;
        dial.reduction = reduction;
        return dial_decimals(dial);
    };
    EXPECT_EQ(decimals(1, 1), 1);
    EXPECT_EQ(decimals(5, 1), 1);
    EXPECT_EQ(decimals(1, 6), 1);   // 0.17
    EXPECT_EQ(decimals(0.1, 1), 1); // exactly a tenth
    EXPECT_EQ(decimals(0.1, 2), 2);
    EXPECT_EQ(decimals(0.5, 100), 3);
    EXPECT_EQ(decimals(1e-9, 1), 4);
}

TEST(CardPage, TheBoardHasTheUnfavourableEnds) {
    const Page page = card_page(card_made({card_row_made("40m", "FT8"), row_beyond()}), {});
    EXPECT_EQ(card_cell(page, 0, "capacitor_voltage_peak_V_high"), "1230");
    EXPECT_EQ(card_cell(page, 0, "usable_span_Hz"), "8.20");
    EXPECT_EQ(card_cell(page, 0, "dial_calibrated"), "101.3");
    EXPECT_EQ(card_cell(page, 0, "dial_calibrated_uncertainty"), "0.8"); // the wider side
    EXPECT_EQ(card_cell(page, 0, "dial_predicted"), "104.2");
    EXPECT_EQ(card_cell(page, 0, "dial_predicted_uncertainty"), "8.3");
    EXPECT_EQ(card_cell(page, 0, "dial_per_kHz"), "\u22120.013"); // of the one to set
    EXPECT_EQ(card_cell(page, 0, "radio_frequency_Hz"), "7074.0");
    EXPECT_EQ(card_cell(page, 0, "frequency_Hz"), "7075.5");
    // Out of reach: what the loop would do there is not its to do.
    for (const char* key : {"capacitor_voltage_peak_V_high", "usable_span_Hz", "dial_predicted"}) {
        EXPECT_EQ(card_cell(page, 1, key), "") << key;
    }
    EXPECT_EQ(card_cell(page, 1, "tuning_capacitance_F"), "200.0");
}

TEST(CardPage, ColumnsThatHoldNothingAreLeftOut) {
    survey::CardRow row = card_row_made("40m", "FT8");
    row.calibrated.reset();
    survey::Card card = card_made({row});
    Page page = card_page(card, {});
    EXPECT_EQ(card_cell(page, 0, "dial_calibrated"), "no column");
    EXPECT_EQ(card_cell(page, 0, "dial_per_kHz"), "\u22120.012");
    EXPECT_THAT(card_text(page, "reading"), HasSubstr("from the design and the model alone: calibrate"));
    card.rows.front().predicted.reset();
    card.request.design.capacitor.dial.reset();
    page = card_page(card, {});
    EXPECT_EQ(card_cell(page, 0, "dial_predicted"), "no column");
    EXPECT_EQ(card_cell(page, 0, "plugged"), "-");
    EXPECT_THAT(card_text(page, "reading"), HasSubstr("The design has no dial"));
}

TEST(CardPage, RowsOfABandThatSayTheSameSayItOnce) {
    std::vector<survey::CardRow> rows{card_row_made("40m", "CW"), card_row_made("40m", "FT8"),
                                      card_row_made("30m", "CW")};
    const survey::CardRemark coarse{CardRemarkKind::drive_too_coarse, "This drive is too coarse"};
    for (survey::CardRow& row : rows) {
        row.remarks.push_back(coarse);
    }
    rows[1].remarks.push_back({CardRemarkKind::shared, "Without retuning: CW"});
    rows[2].band.clear(); // between the bands the frequency names the row
    EXPECT_EQ(card_text(card_page(card_made(rows), {}), "remarks"),
              "40m CW, FT8: This drive is too coarse.\n40m FT8: Without retuning: CW.\n"
              "7.074\u2009MHz CW: This drive is too coarse.\n");
}

TEST(CardPage, SaysHowItIsToBeRead) {
    survey::Card card = card_made({card_row_made("40m", "FT8")});
    design::Capacitor& capacitor = card.request.design.capacitor;
    capacitor.dial->backlash = 0.5;
    capacitor.added.resize(2);
    capacitor.added[0].capacitance = units::picofarads(150);
    capacitor.added[0].bands = {"80m", "60m"};
    capacitor.added[0].note = "two in a row";
    capacitor.added[1].capacitance = units::picofarads(33);
    capacitor.added[1].connection = design::AddedConnection::series;
    card.rows.front().plugged = {1};
    card.next = {{units::megahertz(14.1), 38.5, 6.2, 2.4}};
    const Page page = card_page(card, {});
    const std::string text = card_text(page, "reading");
    EXPECT_THAT(text, HasSubstr("for digital emissions 1.5 kHz above"));
    EXPECT_THAT(text, HasSubstr("reaches VSWR 3,"));
    EXPECT_THAT(text, HasSubstr("loses 0.50 of reading when turned round: come from the same side"));
    EXPECT_THAT(text, HasSubstr("C1: 150\u2009pF in parallel, on 80m, 60m (two in a row)."));
    EXPECT_THAT(text, HasSubstr("C2: 33\u2009pF in series, always there."));
    EXPECT_THAT(text, HasSubstr("Measure next at 14.100 MHz"));
    EXPECT_THAT(text, HasSubstr("A hand or a body near the loop is not in the figures"));
    EXPECT_THAT(text, Not(HasSubstr("calibrate.")));
    EXPECT_EQ(card_cell(page, 0, "plugged"), "C2");
}

TEST(CardPage, JsonAndCsvHoldTheSameFigures) {
    survey::CardRow row = card_row_made("40m", "FT8");
    row.plugged = {0, 2};
    row.shared_with = {"CW", "WSPR"};
    row.remarks.push_back({CardRemarkKind::shared, "Without retuning: CW, WSPR"});
    const survey::Card card = card_made({row, row_beyond()});
    const json all = json::parse(card_json(card, nullptr));
    EXPECT_EQ(all["schema"], "loopwright-card-1");
    EXPECT_EQ(all["vswr"], 3);
    EXPECT_TRUE(all["keep_out_distance_m"].is_null());
    const json& first = all["rows"][0];
    EXPECT_EQ(first["dial"], 101.3);
    EXPECT_NEAR(first["dial_uncertainty"].get<double>(), 0.8, 1e-9);
    EXPECT_EQ(first["dial_low"], 100.6);
    EXPECT_EQ(first["dial_high"], 102.1);
    EXPECT_NEAR(first["dial_per_kHz"].get<double>(), -0.013, 1e-12);
    EXPECT_EQ(first["dial_predicted"], 104.2);
    EXPECT_EQ(first["usable_span_Hz"], 10000);
    EXPECT_EQ(first["usable_span_Hz_low"], 8200);
    EXPECT_EQ(first["capacitor_voltage_peak_V"], 1000);
    EXPECT_EQ(first["capacitor_voltage_peak_V_high"], 1234);
    EXPECT_NEAR(first["audio_offset_Hz"].get<double>(), 1500, 1e-6);
    EXPECT_EQ(first["plugged"], json::array({0, 2}));
    EXPECT_EQ(first["without_retuning"], json::array({"CW", "WSPR"}));
    EXPECT_EQ(first["remarks"][0]["kind"], "shared");
    EXPECT_TRUE(first["shortfall_F"].is_null());
    const json& second = all["rows"][1];
    EXPECT_EQ(second["reachable"], false);
    EXPECT_NEAR(second["shortfall_F"].get<double>(), -2e-12, 1e-21); // too much is there
    EXPECT_TRUE(second["fixed_capacitor"].is_null());
    EXPECT_TRUE(second["dial"].is_null());
    const Table data = card_data(card);
    ASSERT_EQ(data.rows.size(), 2U);
    for (std::size_t i = 0; i < card_fields().size(); ++i) {
        const CardField& field = card_fields()[i];
        EXPECT_EQ(data.columns[i].key, field.path);
        if (const auto* number = std::get_if<double>(&data.rows[0][i])) {
            EXPECT_EQ(first[field.path], *number) << field.path;
        } else if (const auto* text = std::get_if<std::string>(&data.rows[0][i])) {
            EXPECT_EQ(first[field.path], *text) << field.path;
        }
    }
    EXPECT_EQ(std::get<std::string>(data.rows[0][card_fields().size()]), "C1 C3");
}

/// The sheet of a band with one public limit whose tune-up power is given.
survey::Keying sheet_with(std::optional<double> reach_m, std::vector<std::optional<double>> powers_W) {
    survey::Keying keying;
    if (reach_m) {
        keying.request.design.station.reach = units::metres(*reach_m);
    }
    for (const auto& power_W : powers_W) {
        survey::KeyingBand band;
        band.band = "40m";
        band.point = established();
        band.verdict = survey::KeyingVerdict::within;
        survey::KeyingDistance distance;
        if (power_W) {
            distance.power_for_tuning = units::watts(*power_W);
        }
        band.distances.push_back(distance);
        keying.bands.push_back(band);
    }
    return keying;
}

std::string tune_up_text(const survey::Keying& keying) {
    return tuning_order(keying).front().text;
}

TEST(CardPage, TheTuneUpPowerIsTheLeastAndNeverRoundedUp) {
    EXPECT_THAT(tune_up_text(sheet_with(2, {20, 12.96, 30})),
                HasSubstr("with the body 2\u2009m from the capacitor: 12\u2009W, least of all bands"));
    EXPECT_THAT(tune_up_text(sheet_with(2, {0.0999})), HasSubstr(": 99\u2009mW,"));
    EXPECT_THAT(tune_up_text(sheet_with(2, {20, 0})),
                HasSubstr(": none. At this reach tune by the received noise"));
    EXPECT_THAT(tune_up_text(sheet_with(2, {20, std::nullopt})), HasSubstr("treat the loop as hazardous"));
    EXPECT_THAT(tune_up_text(sheet_with(std::nullopt, {20})), HasSubstr("enter the reach"));
    EXPECT_THAT(tuning_order(sheet_with(2, {20})).back().text,
                HasSubstr("peak the received noise, transmitter off"));
}

// 844 V where 840 V are usable, on a row other than the band's usual frequency.
TEST(CardPage, HeadlineAndRowSayTheSameOfTheVoltage) {
    survey::CardRow row = card_row_made("40m", "SSB voice");
    row.reachable = true;
    row.point.resonance->capacitor_voltage_peak_range = {units::volts(800), units::volts(844)};
    row.point.resonance->capacitor_voltage_peak = units::volts(830);
    row.usable_voltage = units::volts(840);
    row.remarks = {{survey::CardRemarkKind::voltage_exceeded, "Do not key"}};
    survey::Card card = card_made({row});
    card.request.design.capacitor.rating.peak_voltage = units::volts(840);
    const std::string page = to_text(card_page(card, {}), 130);
    EXPECT_THAT(page,
                HasSubstr("over the rating, do not key: on 40m SSB voice, 844 V peak, usable there 840 V"));
    EXPECT_THAT(page, HasSubstr("\u25B2844"));
    const survey::Keying sheet;
    const json all = json::parse(card_json(card, &sheet));
    EXPECT_EQ(all["voltage_verdict"], "exceeded");
    EXPECT_EQ(all["highest_voltage_peak_V"], 844);
    EXPECT_EQ(all["nearest_rating_at"], "40m SSB voice");
}

TEST(CardPage, OneRowIsTheCardsOwn) {
    const survey::CardRow row = card_row_made("40m", "FT8");
    const survey::CardRequest request = card_made({}).request;
    const Page page = card_row_page(row, request);
    EXPECT_EQ(card_cell(page, 0, "dial_calibrated"), "101.3");
    const json one = json::parse(card_row_json(row, request));
    const json whole = json::parse(card_json(card_made({row}), nullptr));
    for (const CardField& field : card_fields()) {
        const std::string key = std::string(field.path).substr(0, std::string(field.path).find('.'));
        EXPECT_EQ(one[key], whole["rows"][0][key]) << key;
    }
}

} // namespace
} // namespace loopwright::report
