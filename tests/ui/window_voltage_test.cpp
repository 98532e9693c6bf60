// One voltage on every page: headline, board, strip and sheet tell the upper end of the sheet before keying.
#include "models/band_board_model.hpp"
#include "pages/bands_board.hpp"
#include "pages/bands_page.hpp"
#include "survey/keying.hpp"
#include "ui/harness.hpp"

#include <QLabel>

#include <algorithm>

using namespace loopwright;

namespace {

class WindowVoltageTest : public test::WindowTest {};

design::Design over_soil() {
    design::Design d;
    d.site.ground.kind = design::GroundKind::soil;
    d.site.ground.class_name = "average ground";
    d.site.lowest_point = units::metres(0.5);
    d.capacitor.maximum = units::picofarads(400);
    d.capacitor.rating.peak_voltage = units::volts(10e3);
    d.station.bands = {"20m"};
    return d;
}

TEST_F(WindowVoltageTest, EveryPageTellsTheUpperEndOfTheSheet) {
    design::Design design = over_soil();
    survey::KeyingRequest request;
    request.design = design;
    const survey::KeyingBand sheet = survey::keying(request).bands.at(0);
    const loop::Resonance& own = *sheet.point.resonance;
    const units::Voltage own_high =
        std::max(own.capacitor_voltage_peak, own.capacitor_voltage_peak_range.high);
    ASSERT_GT(sheet.voltage_peak.high, 1.001 * own_high);
    // Soil and height, which only the sheet varies, make the difference.
    design.capacitor.rating.peak_voltage = 0.5 * (own_high + sheet.voltage_peak.high);
    open_window();
    window().document().start_from(design);
    window().focus().set_band(QStringLiteral("20m"));
    ASSERT_TRUE(test::wait_for_survey(window()));
    ASSERT_TRUE(test::wait_for_keying(window()));
    EXPECT_TRUE(find<QLabel>("hazard.voltage")->text().contains(QStringLiteral("do not key")));
    const QString remark = find<QLabel>("remark.capacitor_voltage_peak_V")->text();
    EXPECT_TRUE(remark.contains(QStringLiteral("over the rating"))) << remark.toStdString();
    window().pages().setCurrentWidget(&window().bands()); // filled when it is shown
    ASSERT_TRUE(test::wait_for_survey(window()));
    auto* board = qobject_cast<models::BandBoardModel*>(window().bands().board().model());
    ASSERT_NE(board, nullptr);
    const survey::BandRow* row = board->row_at(board->row_of(QStringLiteral("20m")));
    ASSERT_NE(row, nullptr);
    EXPECT_EQ(row->verdict, survey::BandVerdict::voltage_exceeded);
}

} // namespace
