// Which model the window computes with, and that every place says so.
#include "loop/full_wave.hpp"
#include "loop/loop_model.hpp"
#include "models/headline.hpp"
#include "pages/bands_page.hpp"
#include "ui/harness.hpp"

#include <QAction>
#include <QCheckBox>
#include <QComboBox>
#include <QLabel>

using namespace loopwright;

namespace {

class WindowEngineTest : public test::WindowTest {
protected:
    void SetUp() override {
        open_window();
        type("site.lowest_point", QStringLiteral("1.5 m"));
        auto* ground = find<QComboBox>("site.ground");
        ground->setFocus();
        press(Qt::Key_End);
        press(Qt::Key_Up); // the last class
        ASSERT_TRUE(test::wait_for_survey(window()));
    }
    const design::Design& design() { return window().document().design(); }
    /// The number of the core, as the panel writes it.
    QString efficiency_by(loop::Model model) {
        const auto point = loop::make_model(design(), model)
                               ->at(window().focus().frequency(), design().station.power.value, 2.0);
        return models::percent(point.resonance->efficiency);
    }
    QString shown(const std::string& name) {
        auto* label = find<QLabel>(name);
        return label == nullptr ? QString() : label->text();
    }
};

TEST_F(WindowEngineTest, FullWaveIsTheEngineOfEveryFigure) {
    ASSERT_EQ(design().site.ground.kind, design::GroundKind::soil);
    EXPECT_EQ(shown("value.efficiency"), efficiency_by(loop::Model::full_wave));
    EXPECT_NE(efficiency_by(loop::Model::full_wave), efficiency_by(loop::Model::closed_form));
    EXPECT_EQ(window().survey().result()->request.model, loop::Model::full_wave);
    const QString ground = QString::fromStdString(design().site.ground.class_name);
    EXPECT_TRUE(shown("headline.model").contains(QStringLiteral("full wave, over ") + ground));
    ASSERT_TRUE(test::wait_for_keying(window()));
    EXPECT_TRUE(shown("hazard.voltage").contains(QStringLiteral("full wave")));
    window().pages().setCurrentIndex(1);
    EXPECT_TRUE(window().bands().origin().conditions.contains(QStringLiteral("full wave, over ") + ground));
}

TEST_F(WindowEngineTest, ClosedFormIsChosenByKeyboardAndRemembered) {
    const int edits = window().document().undo_stack().count();
    auto* engine = find<QComboBox>("engine");
    engine->setFocus();
    press(Qt::Key_Down);
    ASSERT_TRUE(test::wait_for_survey(window()));
    EXPECT_EQ(shown("value.efficiency"), efficiency_by(loop::Model::closed_form));
    EXPECT_TRUE(shown("headline.model").contains(QStringLiteral("closed form, in free space")));
    ASSERT_TRUE(test::wait_for_keying(window()));
    // What decides about keying is full wave whatever engine the board uses, and says so.
    EXPECT_TRUE(shown("hazard.voltage").contains(QStringLiteral("full wave")));
    EXPECT_EQ(window().survey().result()->request.model, loop::Model::closed_form);
    EXPECT_EQ(window().survey().result()->bands.front().point.model, loop::Model::closed_form);
    const settings::Settings again(file(QStringLiteral("settings.ini")));
    EXPECT_EQ(again.model(), loop::Model::closed_form);
    EXPECT_EQ(window().document().undo_stack().count(), edits); // no edit of the design
}

TEST_F(WindowEngineTest, MenuAndHeadlineAreaAreOneChoice) {
    action(QStringLiteral("Engine: closed form"))->trigger();
    EXPECT_EQ(find<QComboBox>("engine")->currentIndex(), 1);
    find<QComboBox>("engine")->setFocus();
    press(Qt::Key_Up);
    EXPECT_TRUE(action(QStringLiteral("Engine: full wave"))->isChecked());
}

TEST_F(WindowEngineTest, OtherModelStandsBesideOnRequest) {
    find<QCheckBox>("engine.beside")->click();
    ASSERT_TRUE(test::wait_for_survey(window()));
    EXPECT_EQ(shown("value.efficiency"), efficiency_by(loop::Model::full_wave));
    EXPECT_EQ(shown("other.efficiency"), efficiency_by(loop::Model::closed_form));
    EXPECT_TRUE(find<QLabel>("other.efficiency")->isVisible());
    auto* other = find<QLabel>("other.efficiency");
    find<QCheckBox>("engine.beside")->click();
    ASSERT_TRUE(test::wait_for_survey(window()));
    EXPECT_FALSE(other->isVisible());
}

} // namespace
