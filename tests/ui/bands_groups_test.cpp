// The groups of charts on the Bands page: chosen by keyboard, computed only when seen, following focus and
// design.
#include "charts/chart_grid.hpp"
#include "charts/figure_widget.hpp"
#include "charts/height_figure.hpp"
#include "charts/polar_figure.hpp"
#include "field/pattern.hpp"
#include "models/model_charts.hpp"
#include "pages/bands_height_view.hpp"
#include "pages/bands_models_view.hpp"
#include "pages/bands_page.hpp"
#include "pages/bands_pattern_view.hpp"
#include "ui/harness.hpp"

#include <QLabel>
#include <QSignalSpy>
#include <QTabBar>
#include <QTabWidget>
#include <QTest>

namespace loopwright {
namespace {

constexpr int patience_ms = 30000;

class BandsGroups : public test::WindowTest {
protected:
    void open(int group) {
        open_window();
        window().pages().setCurrentWidget(&window().bands());
        window().bands().show_group(group);
    }
    template <class Figure>
    const Figure* figure(const pages::FocusedView& view, std::size_t i = 0) {
        return dynamic_cast<const Figure*>(view.figures().at(i)->figure().get());
    }
};

TEST_F(BandsGroups, DirectionsShowThePatternOfTheFocus) {
    open(pages::BandsPage::directions);
    auto& view = window().bands().pattern();
    const auto there = [&] {
        const auto* shown = figure<charts::PolarFigure>(view);
        return shown != nullptr && shown->plot().established() && !view.job().stale();
    };
    ASSERT_TRUE(QTest::qWaitFor(there, patience_ms));
    // The numbers drawn are the core's.
    const auto pattern =
        field::pattern(window().document().design(), window().focus().frequency(), view.request());
    ASSERT_TRUE(pattern);
    const auto& plot = figure<charts::PolarFigure>(view)->plot();
    ASSERT_EQ(plot.loop_elevation.points.size(), static_cast<qsizetype>(pattern->elevation.gain.size()));
    EXPECT_DOUBLE_EQ(plot.loop_elevation.points[5].y(), pattern->elevation.gain[5].value);
    EXPECT_DOUBLE_EQ(plot.low_angle_dBi, pattern->gain_low_angle.value);
    EXPECT_DOUBLE_EQ(*plot.dipole_low_angle_dBi, pattern->dipole_gain_low_angle->value);
    // The focus moves: another pattern.
    window().focus().set_frequency(units::megahertz(18.1));
    EXPECT_TRUE(QTest::qWaitFor(
        [&] { return there() && figure<charts::PolarFigure>(view)->plot().frequency_Hz == 18.1e6; },
        patience_ms));
}

TEST_F(BandsGroups, HeightNeedsAGround) {
    open(pages::BandsPage::heights);
    auto& view = window().bands().height();
    design::Design design = window().document().design();
    design.site.ground.kind = design::GroundKind::free_space;
    window().document().edit(design, {QStringLiteral("Ground"), {}, {}});
    EXPECT_TRUE(QTest::qWaitFor(
        [&] {
            return figure<charts::HeightFigure>(view)->plot().reason.contains(QStringLiteral("free space"));
        },
        patience_ms));
    design.site.ground.kind = design::GroundKind::soil;
    window().document().edit(design, {QStringLiteral("Ground"), {}, {}});
    ASSERT_TRUE(QTest::qWaitFor(
        [&] { return figure<charts::HeightFigure>(view)->plot().established() && !view.job().stale(); },
        patience_ms));
    const auto& rows = figure<charts::HeightFigure>(view)->plot().rows;
    EXPECT_NEAR(rows.last().height_m, 20.0, 1e-9);
    EXPECT_NEAR(rows[5].sky + rows[5].ground + rows[5].conductor + rows[5].joints + rows[5].capacitor, 1.0,
                1e-9);
}

TEST_F(BandsGroups, TwoModelsStandBesideEachOther) {
    open(pages::BandsPage::two_models);
    auto& view = window().bands().model_comparison();
    ASSERT_TRUE(QTest::qWaitFor([&] { return view.shown_charts() != nullptr; }, patience_ms));
    const auto& charts = *view.shown_charts();
    ASSERT_EQ(charts.size(), 3U);
    for (const auto& chart : charts) {
        ASSERT_EQ(chart.curves.size(), 2U);
        EXPECT_EQ(chart.curves[0].label, QStringLiteral("full wave"));
        EXPECT_EQ(chart.curves[1].label, QStringLiteral("closed form"));
    }
    EXPECT_TRUE(view.words().text().contains(QStringLiteral("full wave against closed form")))
        << view.words().text().toStdString();
    EXPECT_EQ(window().bands().shown_charts(), view.shown_charts()) << "what would be exported";
}

TEST_F(BandsGroups, AreChosenByKeyboard) {
    open(pages::BandsPage::over_frequency);
    QTabBar& tabs = window().bands().groups();
    tabs.setFocus();
    QTest::keyClick(&tabs, Qt::Key_Right);
    EXPECT_EQ(tabs.currentIndex(), pages::BandsPage::directions);
    EXPECT_TRUE(window().bands().pattern().isVisible());
    window().bands().pattern().enlarge(0);
    EXPECT_FALSE(window().bands().pattern().figures()[1]->isVisible());
    QTest::keyClick(window().bands().pattern().figures()[0], Qt::Key_Escape);
    EXPECT_TRUE(window().bands().pattern().figures()[1]->isVisible());
}

} // namespace
} // namespace loopwright
