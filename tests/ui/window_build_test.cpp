// The Build page used as a person uses it.
#include "inputs/quantity_field.hpp"
#include "pages/build_page.hpp"
#include "pages/headline_panel.hpp"
#include "ui/harness.hpp"

#include <QAction>
#include <QApplication>
#include <QComboBox>
#include <QFile>
#include <QLabel>
#include <QLineEdit>
#include <QMessageBox>
#include <QTabWidget>
#include <QTest>

using namespace loopwright;

namespace {

class WindowBuildTest : public test::WindowTest {
protected:
    void SetUp() override { open_window(); }
    const design::Design& design() { return window().document().design(); }
    /// What stands there once it has been computed.
    QString value_of(const char* id) {
        EXPECT_TRUE(test::wait_for_survey(window()));
        auto* label = find<QLabel>(std::string("value.") + id);
        return label == nullptr ? QString() : label->text();
    }
};

TEST_F(WindowBuildTest, NumbersFollowEveryKeystroke) {
    const QString before = value_of("efficiency");
    type("loop.size", QStringLiteral("0.6 m"));
    EXPECT_DOUBLE_EQ(design().loop.size.value.value(), 0.6);
    EXPECT_NE(value_of("efficiency"), before);
    EXPECT_EQ(text("loop.size"), QStringLiteral("0.6 m"));
}

TEST_F(WindowBuildTest, InchesCommaAndArithmeticAreKeptAsTyped) {
    type("loop.size", QStringLiteral("36 in"));
    press(Qt::Key_Tab);
    EXPECT_DOUBLE_EQ(design().loop.size.value.value(), 0.9144);
    EXPECT_EQ(text("loop.size"), QStringLiteral("36 in"));
    type("loop.size", QStringLiteral("2*0,45 m"));
    press(Qt::Key_Tab);
    EXPECT_DOUBLE_EQ(design().loop.size.value.value(), 0.9);
    EXPECT_EQ(text("loop.size"), QStringLiteral("2*0,45 m"));
}

TEST_F(WindowBuildTest, TypingIsOneUndoStepWithItsName) {
    type("loop.size", QStringLiteral("1.25 m"));
    press(Qt::Key_Tab);
    EXPECT_EQ(window().document().undo_stack().count(), 1);
    QAction* undo = action(QStringLiteral("Undo Diameter 1 m → 1.25 m"));
    ASSERT_NE(undo, nullptr);
    undo->trigger();
    EXPECT_EQ(design(), design::Design{});
    EXPECT_EQ(text("loop.size"), QStringLiteral("1 m"));
    EXPECT_FALSE(window().isWindowModified());
}

TEST_F(WindowBuildTest, TypedBackToWhereItWasIsNoChange) {
    type("loop.size", QStringLiteral("1.25 m"));
    type("loop.size", QStringLiteral("1 m")); // without leaving the field
    press(Qt::Key_Tab);
    EXPECT_EQ(design(), design::Design{});
    EXPECT_FALSE(window().isWindowModified());
    EXPECT_FALSE(window().document().undo_stack().canUndo());
    EXPECT_EQ(text("loop.size"), QStringLiteral("1 m"));
}

TEST_F(WindowBuildTest, UndoKeyInAFieldUndoesTheDesign) {
    type("loop.size", QStringLiteral("1.25 m"));
    press(Qt::Key_Z, Qt::ControlModifier);
    EXPECT_EQ(design().loop.size.value, units::metres(1));
    EXPECT_EQ(text("loop.size"), QStringLiteral("1 m"));
}

TEST_F(WindowBuildTest, ImpossibleWallIsRefusedBesideItsField) {
    type("conductor.wall", QStringLiteral("12 mm")); // more than half of 22 mm
    press(Qt::Key_Tab);
    auto* field = find<inputs::QuantityField>("conductor.wall");
    EXPECT_FALSE(field->refusal().isEmpty());
    EXPECT_EQ(design(), design::Design{});
    EXPECT_EQ(text("conductor.wall"), QStringLiteral("12 mm"));
    bool beside = false;
    for (const QLabel* label : field->parentWidget()->findChildren<QLabel*>()) {
        beside = beside || (label->isVisible() && label->text() == field->refusal());
    }
    EXPECT_TRUE(beside);
}

TEST_F(WindowBuildTest, OnlyFieldsThatApplyAreShown) {
    EXPECT_TRUE(find<QWidget>("conductor.wall")->isVisible());
    EXPECT_FALSE(find<QWidget>("loop.turn_spacing")->isVisible());
    EXPECT_FALSE(find<QWidget>("loop.sides")->isVisible());
    type("loop.turns", QStringLiteral("2"));
    EXPECT_TRUE(find<QWidget>("loop.turn_spacing")->isVisible());
    auto* form = find<QComboBox>("conductor.form");
    form->setFocus();
    press(Qt::Key_Home); // solid wire
    EXPECT_FALSE(find<QWidget>("conductor.wall")->isVisible());
    EXPECT_EQ(design().conductor.form, design::ConductorForm::wire);
}

TEST_F(WindowBuildTest, FrequencyInFocusMovesTheNumbers) {
    type("focus.frequency", QStringLiteral("14,1 MHz"));
    press(Qt::Key_Tab);
    EXPECT_EQ(window().focus().frequency(), units::megahertz(14.1));
    EXPECT_EQ(find<QComboBox>("focus.band")->currentText(), QStringLiteral("20m"));
    const QString at_20 = value_of("tuning_capacitance_F");
    window().focus().set_band(QStringLiteral("40m"));
    EXPECT_NE(value_of("tuning_capacitance_F"), at_20);
}

TEST_F(WindowBuildTest, BeyondTheModelItSaysNotEstablishedAndWhy) {
    type("loop.size", QStringLiteral("3 m"));
    type("focus.frequency", QStringLiteral("40 MHz")); // 9.4 m of conductor, 1.26 wavelengths
    press(Qt::Key_Tab);
    EXPECT_EQ(value_of("efficiency"), QStringLiteral("not established"));
    EXPECT_FALSE(find<QLabel>("value.efficiency")->toolTip().isEmpty());
}

TEST_F(WindowBuildTest, SizeMeaningKeepsTheLoop) {
    auto* meaning = find<QComboBox>("loop.size_is");
    meaning->setFocus();
    press(Qt::Key_End); // conductor length
    EXPECT_EQ(design().loop.size_is, design::SizeMeaning::conductor_length);
    EXPECT_NEAR(design().loop.size.value.value(), 3.14159, 0.001); // pi times 1 m, to four digits
}

TEST_F(WindowBuildTest, UnitsChangeEverywhereAtOnce) {
    settings().set_unit_system(units::UnitSystem::imperial);
    EXPECT_TRUE(text("conductor.diameter").endsWith(QStringLiteral("in")));
    settings().set_unit_system(units::UnitSystem::metric);
    EXPECT_EQ(text("conductor.diameter"), QStringLiteral("22 mm"));
    EXPECT_FALSE(window().document().is_dirty());
}

TEST_F(WindowBuildTest, HazardStripFollowsPowerAndRating) {
    type("capacitor.rating.peak_voltage", QStringLiteral("100 V"));
    ASSERT_TRUE(test::wait_for_keying(window()));
    auto* strip = find<QLabel>("hazard.voltage");
    EXPECT_TRUE(strip->text().contains(QStringLiteral("over its rating, do not key")))
        << strip->text().toStdString();
    type("station.power", QStringLiteral("1 mW"));
    ASSERT_TRUE(test::wait_for_keying(window()));
    // Nothing is known of 6 m, so the strip says nothing better of the whole than that.
    EXPECT_TRUE(strip->text().contains(QStringLiteral("elsewhere nearest to its rating")))
        << strip->text().toStdString();
    EXPECT_FALSE(strip->text().contains(QStringLiteral("within its rating"))) << strip->text().toStdString();
    auto* distance = find<QLabel>("hazard.distance");
    // No number holds for 6 m, where the conductor is half a wavelength.
    EXPECT_TRUE(distance->text().contains(
        QStringLiteral("not established on every band, treat the loop as hazardous")))
        << distance->text().toStdString();
}

TEST_F(WindowBuildTest, SaveReopenAndTheTitle) {
    type("loop.size", QStringLiteral("36 in"));
    press(Qt::Key_Tab);
    EXPECT_TRUE(window().isWindowModified());
    const QString path = file(QStringLiteral("mine.loop"));
    test::in_next_dialog([path](QWidget* dialog) {
        auto* name = dialog->findChild<QLineEdit*>(QStringLiteral("fileNameEdit"));
        ASSERT_NE(name, nullptr);
        name->setText(path);
        QMetaObject::invokeMethod(dialog, "accept");
    });
    EXPECT_TRUE(window().files().save());
    EXPECT_FALSE(window().isWindowModified());
    EXPECT_TRUE(window().windowTitle().contains(QStringLiteral("mine.loop")));
    EXPECT_EQ(settings().recent_files().front(), path);
    window().document().start_from({});
    EXPECT_EQ(text("loop.size"), QStringLiteral("1 m"));
    EXPECT_TRUE(window().files().open(path));
    EXPECT_EQ(text("loop.size"), QStringLiteral("36 in"));
}

TEST_F(WindowBuildTest, BrokenFileIsExplainedAndChangesNothing) {
    QFile broken(file(QStringLiteral("broken.loop")));
    ASSERT_TRUE(broken.open(QIODevice::WriteOnly));
    broken.write("{ \"format\": \"loopwright-design\", \"version\": 1, \"lop\": {} }");
    broken.close();
    QString shown;
    test::in_next_dialog([&shown](QWidget* dialog) {
        shown = qobject_cast<QMessageBox*>(dialog)->informativeText();
        test::press_button(dialog, QStringLiteral("OK"));
    });
    EXPECT_FALSE(window().files().open(broken.fileName()));
    EXPECT_TRUE(shown.contains(QStringLiteral("lop"))) << shown.toStdString();
    EXPECT_EQ(design(), design::Design{});
}

TEST_F(WindowBuildTest, UnsavedChangesAreAskedAbout) {
    type("loop.size", QStringLiteral("0.8 m"));
    test::in_next_dialog(
        [](QWidget* dialog) { EXPECT_TRUE(test::press_button(dialog, QStringLiteral("Cancel"))); });
    EXPECT_FALSE(window().close());
    EXPECT_TRUE(window().isVisible());
    test::in_next_dialog(
        [](QWidget* dialog) { EXPECT_TRUE(test::press_button(dialog, QStringLiteral("Discard"))); });
    EXPECT_TRUE(window().files().start_new());
    EXPECT_EQ(design(), design::Design{});
    EXPECT_TRUE(window().close()); // nothing to ask about now
}

TEST_F(WindowBuildTest, JointsAreAddedAndUndone) {
    find<QWidget>("group.joints")->findChild<QWidget*>(); // the group exists
    auto* add = window().findChild<QWidget*>(QStringLiteral("joints.add"));
    ASSERT_NE(add, nullptr);
    QTest::mouseClick(add, Qt::LeftButton);
    QTest::mouseClick(add, Qt::LeftButton);
    EXPECT_EQ(design().joints.size(), 2U);
    window().document().undo_stack().undo();
    EXPECT_EQ(design().joints.size(), 1U);
}

} // namespace
