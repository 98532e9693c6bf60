// The sheet before keying as a page: that it names what it was held against, and never clears anybody. The
// limits' documents are named as docs/reference and src/exposure have them.
#include "report/json.hpp"
#include "report/keying.hpp"
#include "report/page.hpp"
#include "report/tables.hpp"

#include <algorithm>
#include <gmock/gmock.h>
#include <gtest/gtest.h>

namespace loopwright::report {
namespace {

using testing::HasSubstr;
using testing::Not;

const survey::Keying& a_report() {
    static const survey::Keying report = [] {
        survey::KeyingRequest request;
        request.design.capacitor.maximum = units::picofarads(500);
        request.design.capacitor.rating.peak_voltage = units::volts(9000);
        request.design.station.bands = {"40m"};
        request.limits = {"icnirp_2020", "fcc_1_1310"};
        request.intervals = false;
        return survey::keying(request);
    }();
    return report;
}

std::string text_of(const Page& page, const std::string& code) {
    std::string text;
    for (const Section& section : page.sections) {
        if (section.code == code) {
            for (const Sentence& sentence : section.sentences) {
                text += sentence.text + "\n";
            }
        }
    }
    return text;
}

TEST(KeyingPage, LimitsAreNamedWithStandardEditionAndTable) {
    const std::string limits = text_of(keying_page(a_report()), "limits");
    EXPECT_THAT(limits, HasSubstr("ICNIRP 2020, whole-body reference levels, Health Phys. 118 (2020) 483"));
    EXPECT_THAT(limits,
                HasSubstr("Table 5 for the general public; Table 5, occupational (figures from memory"));
    EXPECT_THAT(limits, HasSubstr("FCC 47 CFR 1.1310(e)(1)"));
    EXPECT_THAT(limits, HasSubstr("Table 1 (ii) for the general public; Table 1 (i), occupational."));
}

TEST(KeyingPage, WithoutPeopleTheVerdictIsACondition) {
    const std::string page = to_text(keying_page(a_report()));
    EXPECT_THAT(page, HasSubstr("if people keep away"));
    EXPECT_THAT(page, Not(HasSubstr("within, as computed")));
    EXPECT_THAT(text_of(keying_page(a_report()), "exemptions"),
                HasSubstr("no distance of people was entered"));
    EXPECT_THAT(page, Not(testing::ContainsRegex("[^a-z]safe[^a-z]")));
    EXPECT_THAT(keying_json(a_report()), HasSubstr("\"on_condition\": true"));
}

TEST(KeyingPage, TheBandBoardTakesItsDistanceFromHere) {
    survey::Survey survey;
    survey.request.design = a_report().request.design;
    survey.bands.resize(1);
    survey.bands[0].band.name = "40m";
    const double high_m = survey::widest(a_report().bands.front())->range.high.value();
    const Table board = band_board(survey, &a_report());
    const auto column = std::find_if(board.columns.begin(), board.columns.end(),
                                     [](const Column& each) { return each.key == "distance_m_high"; });
    ASSERT_NE(column, board.columns.end());
    const double shown_m =
        std::get<double>(board.rows[0][static_cast<std::size_t>(column - board.columns.begin())]);
    EXPECT_GE(shown_m, high_m);
    EXPECT_LT(shown_m, high_m + 0.01);
    EXPECT_THAT(bands_json(survey, &a_report()), Not(HasSubstr("\"distance_m_high\": null")));
    EXPECT_THAT(bands_json(survey), HasSubstr("\"distance_m_high\": null"));
    survey.bands[0].band.name = "20m";
    EXPECT_THAT(bands_json(survey, &a_report()), HasSubstr("\"distance_m_high\": null"));
}

// Standard output says it, not only the sentence on the error output; scripts have a flag.
TEST(KeyingPage, PeopleTooNearIsSaidOnThePageAndInJson) {
    survey::Keying report = a_report();
    survey::Survey survey;
    survey.request.design = report.request.design;
    survey.bands.resize(1);
    survey.bands[0].band.name = "40m";
    EXPECT_THAT(bands_json(survey, &report), HasSubstr("\"people_too_near\": null"));
    const units::Length asked = survey::widest(report.bands.front())->range.high;
    report.request.design.site.people_distance = asked;
    EXPECT_THAT(bands_json(survey, &report), HasSubstr("\"people_too_near\": false"));
    EXPECT_THAT(to_text(bands_page(survey, &report)), Not(HasSubstr("People too near")));
    report.request.design.site.people_distance = 0.99 * asked;
    EXPECT_THAT(bands_json(survey, &report), HasSubstr("\"people_too_near\": true"));
    EXPECT_THAT(to_text(bands_page(survey, &report)), HasSubstr("People too near, do not key"));
    EXPECT_THAT(to_text(keying_page(report)), HasSubstr("People too near, do not key"));
    report.bands.front().verdict = survey::KeyingVerdict::out_of_reach;
    EXPECT_THAT(bands_json(survey, &report), HasSubstr("\"people_too_near\": null"));
}

// What was not entered is said in words, and what is known is not left out for it.
TEST(KeyingPage, PowersWithoutAFigureHaveTheirReason) {
    const Page page = keying_page(a_report());
    const auto board = std::find_if(page.sections.begin(), page.sections.end(),
                                    [](const Section& each) { return each.code == "keying"; });
    EXPECT_EQ(std::get<std::string>(board->table->rows[0][8]), "capacitor alone");
    const auto distances = std::find_if(page.sections.begin(), page.sections.end(),
                                        [](const Section& each) { return each.code == "distances"; });
    for (const auto& row : distances->table->rows) {
        EXPECT_EQ(std::get<std::string>(row[10]), "not entered");     // nobody said where people are
        EXPECT_EQ(std::get<std::string>(row[11]), "not established"); // nor how far the operator reaches
    }
}

} // namespace
} // namespace loopwright::report
