// The calibration as people read it: what it says of points in doubt, and what it leaves out without points.
#include "report/calibration.hpp"

#include "tuning/design_dial.hpp"

#include <algorithm>
#include <gmock/gmock.h>
#include <gtest/gtest.h>
#include <nlohmann/json.hpp>
#include <stdexcept>

namespace loopwright::report {
namespace {

using nlohmann::json;
using testing::HasSubstr;
using testing::Not;

design::Design calibrated_design() {
    design::Design design;
    design.station.bands = {"40m", "30m", "20m"};
    design.capacitor.maximum = units::picofarads(400);
    design.capacitor.loss.q = 1000;
    design.capacitor.dial = design::Dial{};
    return design;
}

/// Points of hardware that is as the file says, the second of them off by some readings.
design::Design with_points(double off) {
    design::Design design = calibrated_design();
    static const tuning::CalibratedDial file = tuning::calibrated_dial(design);
    design.calibration = design::Calibration{};
    for (const double megahertz : {7.05, 10.12, 14.1, 21.1}) {
        design.calibration->points.push_back(
            {file.predicted(units::megahertz(megahertz))->reading, units::megahertz(megahertz)});
    }
    design.calibration->points[1].reading += off;
    return design;
}

/// The first with one point between used and left out.
design::Design in_doubt() {
    for (double off = 0; off < 30; off += 0.1) {
        design::Design design = with_points(off);
        const auto dial = tuning::calibrated_dial(design);
        const auto& points = dial.points();
        if (std::count_if(points.begin(), points.end(), [](const auto& one) { return one.doubtful(); }) ==
            1) {
            return design;
        }
    }
    throw std::runtime_error("no point in doubt");
}

std::string used_cell(const Page& page, std::size_t row) {
    for (const Section& section : page.sections) {
        if (section.code == "points") {
            const auto& columns = section.table->columns;
            const auto found = std::find_if(columns.begin(), columns.end(),
                                            [](const Column& column) { return column.key == "used"; });
            return cell_text(
                section.table->rows.at(row).at(static_cast<std::size_t>(found - columns.begin())), *found);
        }
    }
    return "no points";
}

TEST(CalibrationPage, SaysWhichPointItDoubtsInTableSubtitleAndJson) {
    const design::Design design = in_doubt();
    const auto report = tuning::calibration_report(design);
    const Page page = calibration_page(report, design);
    const auto& points = report.dial.points();
    const json all = json::parse(calibration_json(report, design, false));
    for (std::size_t i = 0; i < points.size(); ++i) {
        const bool doubted = points[i].wrong >= 0.2;
        EXPECT_EQ(used_cell(page, i), doubted ? "doubtful" : "yes") << i;
        EXPECT_EQ(all["points"][i]["used"], true);
        EXPECT_EQ(all["points"][i]["probability_mistaken"].get<double>(), points[i].wrong);
        EXPECT_EQ(all["points"][i]["reason"].get<std::string>().find("doubtful") == 0, doubted);
    }
    EXPECT_THAT(page.subtitle, HasSubstr("4 of 4 points used, 1 of them doubtful"));
    const design::Design clean = with_points(0);
    const Page sure = calibration_page(tuning::calibration_report(clean), clean);
    EXPECT_EQ(used_cell(sure, 1), "yes");
    EXPECT_THAT(sure.subtitle, Not(HasSubstr("doubtful")));
    const design::Design spoilt = with_points(60);
    const Page out = calibration_page(tuning::calibration_report(spoilt), spoilt);
    EXPECT_EQ(used_cell(out, 1), "no");
    EXPECT_THAT(out.subtitle, HasSubstr("3 of 4 points used"));
}

TEST(CalibrationPage, WithoutPointsThereIsNoCalibratedDial) {
    const design::Design bare = calibrated_design();
    const std::string none = to_text(calibration_page(tuning::calibration_report(bare), bare));
    EXPECT_THAT(none, HasSubstr("Predicted"));
    EXPECT_THAT(none, Not(HasSubstr("Calibrated")));
    const design::Design measured = with_points(0);
    EXPECT_THAT(to_text(calibration_page(tuning::calibration_report(measured), measured)),
                HasSubstr("Calibrated"));
}

} // namespace
} // namespace loopwright::report
