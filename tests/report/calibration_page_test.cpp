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
    for (const double megahertz : {7.05, 7.15, 10.11, 10.14, 14.1, 14.3}) {
        design.calibration->points.push_back(
            {file.predicted(units::megahertz(megahertz))->reading, units::megahertz(megahertz)});
    }
    design.calibration->points[1].reading += off;
    return design;
}

/// The first with a point between used and left out.
design::Design in_doubt() {
    for (double off = 0; off < 10; off += 0.05) {
        design::Design design = with_points(off);
        const auto dial = tuning::calibrated_dial(design);
        if (dial.points()[1].used && dial.points()[1].wrong >= 0.2) {
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
    EXPECT_EQ(used_cell(page, 1), "doubtful");
    EXPECT_EQ(used_cell(page, 0), "yes");
    EXPECT_THAT(page.subtitle, HasSubstr("6 of 6 points used, 1 of them doubtful"));
    const json all = json::parse(calibration_json(report, design, false));
    EXPECT_EQ(all["points"][1]["used"], true);
    EXPECT_GE(all["points"][1]["probability_mistaken"].get<double>(), 0.2);
    EXPECT_THAT(all["points"][1]["reason"].get<std::string>(), testing::StartsWith("doubtful"));
    const design::Design clean = with_points(0);
    const Page sure = calibration_page(tuning::calibration_report(clean), clean);
    EXPECT_EQ(used_cell(sure, 1), "yes");
    EXPECT_THAT(sure.subtitle, Not(HasSubstr("doubtful")));
    const design::Design spoilt = with_points(60);
    const Page out = calibration_page(tuning::calibration_report(spoilt), spoilt);
    EXPECT_EQ(used_cell(out, 1), "no");
    EXPECT_THAT(out.subtitle, HasSubstr("5 of 6 points used"));
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
