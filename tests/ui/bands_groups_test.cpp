// The groups of charts on the Bands page: chosen by keyboard, computed only when seen, following focus and
// design.
#include "charts/chart_grid.hpp"
#include "charts/chart_widget.hpp"
#include "charts/figure_widget.hpp"
#include "charts/height_figure.hpp"
#include "charts/plot.hpp"
#include "charts/polar_figure.hpp"
#include "field/pattern.hpp"
#include "loop/loop_model.hpp"
#include "models/model_charts.hpp"
#include "pages/bands_height_view.hpp"
#include "pages/bands_models_view.hpp"
#include "pages/bands_page.hpp"
#include "pages/bands_pattern_view.hpp"
#include "ui/harness.hpp"

#include <QComboBox>
#include <QLabel>
#include <QSignalSpy>
#include <QTabBar>
#include <QTabWidget>
#include <QTest>

#include <algorithm>

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
    void type_size(double metres) {
        design::Design design = window().document().design();
        design.loop.size = units::metres(metres);
        window().document().edit(design, {QStringLiteral("Diameter"), {}, {}});
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

TEST_F(BandsGroups, TheDipoleChosenIsThereAtTheNextStart) {
    open(pages::BandsPage::directions);
    auto* wire = find<QComboBox>("pattern.wire");
    wire->setFocus();
    press(Qt::Key_End); // vertical
    type("pattern.height", QStringLiteral("7.5 m"));
    press(Qt::Key_Tab);
    EXPECT_TRUE(settings().dipole().dipole.vertical);
    wire->setFocus();
    press(Qt::Key_Home); // none: height and kind are kept all the same
    window_.reset();
    settings_ = std::make_unique<settings::Settings>(file(QStringLiteral("settings.ini")));
    open(pages::BandsPage::directions);
    EXPECT_EQ(find<QComboBox>("pattern.wire")->currentIndex(), 0);
    EXPECT_EQ(text("pattern.height"), QStringLiteral("7.5 m"));
    auto& view = window().bands().pattern();
    ASSERT_TRUE(QTest::qWaitFor([&] { return view.job().generation() > 0; }, patience_ms));
    EXPECT_FALSE(view.request().dipole.has_value());
    find<QComboBox>("pattern.wire")->setFocus();
    press(Qt::Key_End);
    ASSERT_TRUE(QTest::qWaitFor([&] { return view.request().dipole.has_value(); }, patience_ms));
    EXPECT_TRUE(view.request().dipole->vertical);
    EXPECT_EQ(view.request().dipole->height, units::metres(7.5));
}

TEST_F(BandsGroups, TheOtherModelCanBeStopped) {
    open(pages::BandsPage::over_frequency);
    settings().set_model(loop::Model::closed_form); // then the other one, full wave, takes a while
    ASSERT_TRUE(test::wait_for_survey(window()));
    auto& view = window().bands().model_comparison();
    window().bands().show_group(pages::BandsPage::two_models);
    ASSERT_TRUE(view.job().busy());
    view.job().cancel(); // what the button does; it is shown only where this lasts
    ASSERT_TRUE(QTest::qWaitFor([&] { return view.state().text().contains(QStringLiteral("Stopped")); },
                                patience_ms));
    EXPECT_TRUE(view.state().isVisible());
    EXPECT_EQ(view.shown_charts(), nullptr);
    // The next edit computes again.
    type_size(0.9);
    ASSERT_TRUE(
        QTest::qWaitFor([&] { return view.shown_charts() != nullptr && !view.job().stale(); }, patience_ms));
    EXPECT_TRUE(QTest::qWaitFor([&] { return !view.state().isVisible(); }, patience_ms));
}

TEST_F(BandsGroups, ARunThatFailsGreysTheOldCurvesAndSaysWhy) {
    open(pages::BandsPage::two_models);
    auto& view = window().bands().model_comparison();
    ASSERT_TRUE(
        QTest::qWaitFor([&] { return view.shown_charts() != nullptr && !view.job().stale(); }, patience_ms));
    EXPECT_TRUE(view.words().isEnabled());
    survey::Request refused = window().survey().result()->request;
    refused.design.loop.size = units::metres(-1.0);
    view.job().start(refused);
    ASSERT_TRUE(QTest::qWaitFor([&] { return view.state().text().contains(QStringLiteral("Not computed")); },
                                patience_ms));
    EXPECT_TRUE(view.state().isVisible());
    EXPECT_TRUE(view.state().text().contains(QStringLiteral("older state")));
    EXPECT_FALSE(view.words().isEnabled());
    EXPECT_LT(view.grid().charts().front()->plot().opacity(), 1.0);
}

TEST_F(BandsGroups, DifferencesOfTheModelsHaveNoDigitsThatMeanNothing) {
    loop::OperatingPoint closed, full;
    closed.model = loop::Model::closed_form;
    full.model = loop::Model::full_wave;
    closed.frequency = full.frequency = units::megahertz(7.1);
    closed.resonance.emplace();
    full.resonance.emplace();
    const auto words = [&](double more_F, double ratio) {
        closed.resonance->efficiency = 0.123456;
        full.resonance->efficiency = 0.0123456;
        closed.resonance->loop_current_rms = full.resonance->loop_current_rms = units::amperes(1);
        closed.resonance->capacitor_current_rms = full.resonance->capacitor_current_rms = units::amperes(1);
        closed.resonance->tuning_capacitance = units::picofarads(100);
        full.resonance->tuning_capacitance = units::farads(100e-12 + more_F);
        closed.resonance->resistance.radiation = units::ohms(1);
        full.resonance->resistance.radiation = units::ohms(ratio);
        return models::model_difference_words({&closed, &full}, {}).front().replace(QChar(0x2009), u' ');
    };
    EXPECT_TRUE(words(0.00276e-12, 1.00002).contains(QStringLiteral("capacitance the same within 0.01 pF")));
    EXPECT_TRUE(words(0.00276e-12, 1.00002).contains(QStringLiteral("resistance the same within 0.1 %")));
    EXPECT_TRUE(words(0.0276e-12, 1.1234).contains(QStringLiteral("capacitance +0.03 pF")));
    EXPECT_TRUE(words(-2.7654e-12, 1.1234).contains(QStringLiteral("capacitance \u22122.8 pF")));
    EXPECT_TRUE(words(0, 1.1234).contains(QStringLiteral("resistance +12 %")));
    EXPECT_TRUE(words(0, 0.9966).contains(QStringLiteral("resistance \u22120.3 %")));
    EXPECT_TRUE(words(0, 1).contains(QStringLiteral("efficiency 1.2 % against 12 %")))
        << words(0, 1).toStdString();
}

TEST_F(BandsGroups, DeepZoomComputesMorePoints) {
    open(pages::BandsPage::over_frequency);
    auto& bands = window().bands();
    const auto points_in = [](const models::Curve& curve, double low_Hz, double high_Hz) {
        return std::count_if(curve.points.begin(), curve.points.end(), [&](const QPointF& point) {
            return point.x() >= low_Hz && point.x() <= high_Hz;
        });
    };
    const auto efficiency = [&]() -> const models::Curve& {
        return bands.shown_charts()->front().curves.front();
    };
    ASSERT_LT(points_in(efficiency(), 14.0e6, 14.35e6), 10);
    bands.group().set_range({14.0e6, 14.35e6});
    ASSERT_TRUE(QTest::qWaitFor([&] { return points_in(efficiency(), 14.0e6, 14.35e6) > 100; }, patience_ms));
    EXPECT_FALSE(bands.zoomed().stale());
    // Ascending, each frequency once, and the values are the core's.
    const auto& points = efficiency().points;
    for (qsizetype i = 1; i < points.size(); ++i) {
        ASSERT_GT(points[i].x(), points[i - 1].x());
    }
    const QPointF one =
        *std::find_if(points.begin(), points.end(), [](const QPointF& p) { return p.x() > 14.2e6; });
    const auto& design = window().document().design();
    const auto core = loop::make_model(design, loop::Model::full_wave)
                          ->at(units::hertz(one.x()), design.station.power.value, 2.0);
    EXPECT_NEAR(one.y(), core.resonance->efficiency, 1e-9);
    // An edit while zoomed: the new design's points come too.
    type_size(0.8);
    ASSERT_TRUE(test::wait_for_survey(window()));
    ASSERT_TRUE(QTest::qWaitFor([&] { return points_in(efficiency(), 14.0e6, 14.35e6) > 100; }, patience_ms));
    EXPECT_EQ(bands.zoomed().survey()->request.design.loop.size.value, units::metres(0.8));
    // Back to the whole: the base has points enough there.
    bands.group().reset_range();
    QTest::qWait(200);
    EXPECT_FALSE(bands.zoomed().stale());
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
