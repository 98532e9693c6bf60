// The page Before keying: the pictures of all planned bands together, and what is read in the smallest
// window.
#include "models/band_board_model.hpp"
#include "models/keying_board_model.hpp"
#include "pages/keying_board.hpp"
#include "pages/keying_page.hpp"
#include "pages/keying_pictures.hpp"
#include "ui/harness.hpp"

#include <QComboBox>
#include <QLabel>
#include <QTest>

#include <cmath>

using namespace loopwright;

namespace {

using models::KeyingBoardModel;

class WindowPlannedSetTest : public test::WindowTest {
protected:
    void SetUp() override {
        open_window();
        design::Design few;
        few.station.bands = {"40m", "20m"};
        few.capacitor.maximum = units::picofarads(400);
        few.capacitor.rating.peak_voltage = units::volts(10e3);
        window().document().start_from(few);
        window().pages().setCurrentWidget(&page());
        window().focus().set_band(QStringLiteral("40m"));
        ASSERT_TRUE(test::wait_for_keying(window()));
    }
    pages::KeyingPage& page() { return window().keying_page(); }
    template <class Widget>
    Widget* on_page(const char* name) {
        auto* found = page().findChild<Widget*>(QString::fromLatin1(name));
        EXPECT_NE(found, nullptr) << "no " << name;
        return found;
    }
};

// All planned bands together: as far as the strip says, and no nearer than the band picked.
TEST_F(WindowPlannedSetTest, ThePicturesShowThePlannedSet) {
    auto* drawn = on_page<QComboBox>("pictures.bands");
    ASSERT_NE(drawn, nullptr);
    EXPECT_FALSE(drawn->toolTip().isEmpty() || drawn->accessibleName().isEmpty());
    drawn->setFocus(Qt::TabFocusReason);
    QTest::keyClick(drawn, Qt::Key_Down);
    const auto& plot = page().pictures().plot();
    ASSERT_TRUE(QTest::qWaitFor([&] { return plot.bands == QStringLiteral("40m, 20m"); }, 30000));
    const survey::LargestDistance largest = survey::largest_distance(*window().keying().result());
    ASSERT_TRUE(plot.has_upper());
    const models::OutlineCurve& curve = plot.above.curves.first();
    EXPECT_EQ(*curve.upper_m, largest.distance->range.high.value());
    double outer = 0.0;
    for (const QPointF& point : curve.outer().value(0)) {
        outer = std::max(outer, std::hypot(point.x(), point.y()));
    }
    EXPECT_NEAR(outer, *curve.upper_m, 0.03 * *curve.upper_m + 0.01);
    // Another row does not change it; back to the band it does.
    page().board().setCurrentIndex(page().board().model()->index(1, 0));
    QTest::qWait(300);
    EXPECT_EQ(plot.bands, QStringLiteral("40m, 20m"));
    QTest::keyClick(drawn, Qt::Key_Up);
    EXPECT_TRUE(QTest::qWaitFor([&] { return std::abs(plot.frequency_Hz - 14.0755e6) < 20e3; }, 30000));
}

TEST_F(WindowPlannedSetTest, ReasonsAndConditionsAreReadWithoutScrolling) {
    const auto& board = page().board();
    ASSERT_EQ(window().size(), QSize(1280, 800));
    for (int row = 0; row < board.model()->rowCount(); ++row) {
        const QModelIndex cell = board.model()->index(row, KeyingBoardModel::reason);
        const QRect room = board.visualRect(cell);
        const QRect wanted = board.fontMetrics().boundingRect(QRect(0, 0, room.width() - 8, 10000),
                                                              Qt::TextWordWrap, cell.data().toString());
        EXPECT_LE(wanted.height(), room.height()) << row;
        EXPECT_TRUE(cell.data(models::BandBoardModel::sentence_role).toBool()) << "else it is painted elided";
        EXPECT_TRUE(cell.data(Qt::ToolTipRole).toString().contains(cell.data().toString())) << row;
    }
    const auto* conditions = on_page<QLabel>("keying.conditions");
    EXPECT_GE(conditions->height(), conditions->heightForWidth(conditions->width()));
    EXPECT_TRUE(conditions->text().contains(QStringLiteral("limits checked")));
}

} // namespace
