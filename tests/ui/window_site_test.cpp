// The Site section, the drawing over ground, and the current around the loop.
#include "drawings/current_overlay.hpp"
#include "ground/ground_classes.hpp"
#include "jobs/point_job.hpp"
#include "loop/loop_model.hpp"
#include "models/headline.hpp"
#include "pages/drawing_view.hpp"
#include "ui/harness.hpp"

#include <QCheckBox>
#include <QComboBox>
#include <QLabel>

#include <algorithm>
#include <numbers>

using namespace loopwright;

namespace {

class WindowSiteTest : public test::WindowTest {
protected:
    void SetUp() override { open_window(); }
    const design::Design& design() { return window().document().design(); }
    void choose(const char* name, const QString& text) {
        auto* box = find<QComboBox>(name);
        ASSERT_GE(box->findText(text), 0) << text.toStdString();
        box->setFocus();
        const int steps = box->findText(text) - box->currentIndex();
        for (int i = 0; i < std::abs(steps); ++i) {
            press(steps > 0 ? Qt::Key_Down : Qt::Key_Up);
        }
        EXPECT_EQ(box->currentText(), text);
    }
    QString drawn() { return window().findChild<pages::DrawingView*>()->accessibleDescription(); }
};

TEST_F(WindowSiteTest, HeightTiltLevelAndSoilReachTheDesignTheDrawingAndTheNumbers) {
    choose("site.ground", QStringLiteral("average ground"));
    type("site.lowest_point", QStringLiteral("1.5 m"));
    press(Qt::Key_Tab);
    type("site.tilt", QStringLiteral("30 deg"));
    press(Qt::Key_Tab);
    type("site.standing_level", QStringLiteral("0.5 m"));
    press(Qt::Key_Tab);
    EXPECT_EQ(design().site.lowest_point.value, units::metres(1.5));
    EXPECT_NEAR(design().site.tilt.value.value(), std::numbers::pi / 6, 1e-12);
    EXPECT_EQ(design().site.standing_level.value, units::metres(0.5));
    EXPECT_EQ(design().site.ground.class_name, "average ground");
    for (const char* said : {"1.5\u2009m above average ground", "People stand at 0.5\u2009m"}) {
        EXPECT_TRUE(drawn().contains(QString::fromUtf8(said))) << drawn().toStdString();
    }
    ASSERT_TRUE(test::wait_for_survey(window()));
    const auto core = loop::make_model(design(), loop::Model::full_wave)
                          ->at(window().focus().frequency(), design().station.power.value, 2.0);
    EXPECT_EQ(find<QLabel>("value.efficiency")->text(), models::percent(core.resonance->efficiency));
}

TEST_F(WindowSiteTest, OwnSoilStartsAtTheClassAndTakesFreeValues) {
    choose("site.ground", QStringLiteral("average ground"));
    const auto named = ground::find_ground_class("average ground");
    choose("site.ground", QStringLiteral("own values"));
    EXPECT_TRUE(design().site.ground.class_name.empty());
    EXPECT_DOUBLE_EQ(design().site.ground.relative_permittivity, named->soil.relative_permittivity);
    EXPECT_EQ(design().site.ground.conductivity.value, named->soil.conductivity);
    type("site.ground.relative_permittivity", QStringLiteral("20"));
    press(Qt::Key_Tab);
    type("site.ground.conductivity", QStringLiteral("30 mS/m"));
    press(Qt::Key_Tab);
    EXPECT_DOUBLE_EQ(design().site.ground.relative_permittivity, 20);
    EXPECT_NEAR(design().site.ground.conductivity.value.value(), 0.03, 1e-15);
    EXPECT_TRUE(drawn().contains(QStringLiteral("soil of relative permittivity 20")))
        << drawn().toStdString();
}

TEST_F(WindowSiteTest, HorizontalLoopHasNoTilt) {
    choose("site.plane", QStringLiteral("Horizontal"));
    EXPECT_FALSE(find<QWidget>("site.tilt")->isVisible());
    choose("site.plane", QStringLiteral("Vertical"));
    EXPECT_TRUE(find<QWidget>("site.tilt")->isVisible());
}

TEST_F(WindowSiteTest, CurrentAroundTheLoopIsSwitchedOnAndFollowsTheFocus) {
    auto* view = window().findChild<pages::DrawingView*>();
    EXPECT_FALSE(view->drawing().current().has_value());
    window().focus().set_band(QStringLiteral("40m"));
    find<QCheckBox>("drawing.current")->click();
    ASSERT_TRUE(test::wait_for_survey(window()));
    ASSERT_TRUE(view->drawing().current().has_value());
    const auto& overlay = *view->drawing().current();
    const double opposite_A = window().point().result()->point.resonance->loop_current_rms.value();
    EXPECT_NEAR(overlay.at(0.5) / opposite_A, 1.0, 0.01);
    EXPECT_LT(overlay.at(0.02), overlay.at(0.25)); // least at the capacitor, most opposite
    EXPECT_LT(overlay.at(0.25), overlay.at(0.5));
    EXPECT_NEAR(overlay.at(0.2) / overlay.at(0.8), 1.0, 1e-3); // both sides alike
    EXPECT_TRUE(drawn().contains(QStringLiteral("full wave"))) << drawn().toStdString();
    const double before = overlay.at(0.02) / overlay.at(0.5);
    window().focus().set_band(QStringLiteral("20m"));
    ASSERT_TRUE(test::wait_for_survey(window()));
    const auto& higher = *view->drawing().current();
    EXPECT_LT(higher.at(0.02) / higher.at(0.5), before); // twice the wavelengths, less even
    find<QCheckBox>("drawing.current")->click();
    EXPECT_FALSE(view->drawing().current().has_value());
}

/// Uniform to the first order: cos(k s) around a loop tuned at one point (practice in any textbook on loops),
/// held loosely because the capacitor's side carries charge.
TEST(CurrentSamples, GoOnceAround) {
    jobs::PointRequest request;
    request.frequency = units::megahertz(7.1);
    request.with_current = true;
    const auto result = jobs::compute_point(request, {}, {});
    ASSERT_GT(result->current.size(), 20U);
    EXPECT_LT(result->current.front().share, 0.02);
    EXPECT_GT(result->current.back().share, 0.95);
    EXPECT_TRUE(std::is_sorted(result->current.begin(), result->current.end(),
                               [](const auto& a, const auto& b) { return a.share < b.share; }));
}

} // namespace
