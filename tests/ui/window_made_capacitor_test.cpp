// A capacitor made by hand, typed on the Build page: its dimensions set the range, and the page says what
// they give. The formulas are tested where they stand.
#include "capacitor/made.hpp"
#include "inputs/fold.hpp"
#include "inputs/quantity_field.hpp"
#include "ui/harness.hpp"

#include <QAction>
#include <QCheckBox>
#include <QComboBox>
#include <QLabel>
#include <QTest>

using namespace loopwright;

namespace {

class WindowMadeCapacitorTest : public test::WindowTest {
protected:
    void SetUp() override {
        open_window();
        window().document().start_from(design::Design{});
        for (auto* fold : window().findChildren<inputs::Fold*>()) {
            fold->set_unfolded(true);
        }
    }
    const design::Capacitor& capacitor() { return window().document().design().capacitor; }
    void enter(const std::string& name, const QString& text) {
        type(name, text);
        press(Qt::Key_Tab);
    }
    void choose(int index) {
        find<QComboBox>("capacitor.made")->setFocus();
        press(Qt::Key_Home);
        for (int i = 0; i < index; ++i) {
            press(Qt::Key_Down);
        }
    }
    bool is_shown(const char* name) { return find<QWidget>(name)->isVisible(); }
    QString range_words() { return find<QLabel>("capacitor.made.range")->text(); }
};

TEST_F(WindowMadeCapacitorTest, PlatesAreTypedAndSetTheRange) {
    EXPECT_FALSE(is_shown("capacitor.made.width"));
    EXPECT_FALSE(is_shown("capacitor.made.range"));
    choose(1);
    ASSERT_TRUE(capacitor().made.has_value());
    EXPECT_TRUE(is_shown("capacitor.made.width"));
    EXPECT_FALSE(is_shown("capacitor.made.inner_diameter"));
    enter("capacitor.made.width", QStringLiteral("12 cm"));
    enter("capacitor.made.spacing", QStringLiteral("2 mm"));
    enter("capacitor.made.thickness", QStringLiteral("0.5 mm"));
    enter("capacitor.made.plates", QStringLiteral("3"));
    enter("capacitor.made.least_overlap", QStringLiteral("1 cm"));
    enter("capacitor.made.most_overlap", QStringLiteral("15 cm"));
    const capacitor::PlateStack stack{
        units::metres(0.12), units::metres(0.15), units::millimetres(2), units::millimetres(0.5), 3, 1};
    const auto pulled_out = capacitor::plates_capacitance(stack, units::metres(0.01));
    const auto pushed_in = capacitor::plates_capacitance(stack, units::metres(0.15));
    EXPECT_NEAR(capacitor().minimum.value.value(), pulled_out.value.value(), 1e-18);
    EXPECT_NEAR(capacitor().maximum.value.value(), pushed_in.value.value(), 1e-18);
    // Area over distance, twice for three plates: 2 * 8.8542e-12 * 0.12 * 0.15 / 0.002 = 159.4 pF; edges add.
    EXPECT_GT(capacitor().maximum.value.value(), 159.4e-12);
    EXPECT_LT(capacitor().maximum.value.value(), 1.1 * 159.4e-12);
    EXPECT_TRUE(range_words().contains(QString::number(1e12 * pushed_in.value.value(), 'f', 0)))
        << range_words().toStdString();
    EXPECT_TRUE(is_shown("capacitor.made.range"));
    EXPECT_EQ(capacitor().made->width.text, "12 cm");
    EXPECT_EQ(window().document().undo_stack().undoText().toStdString(), "Most overlap 0.1 m → 15 cm");
    const design::Capacitor full = capacitor();
    window().document().undo_stack().undo();
    EXPECT_EQ(capacitor().made->most_overlap.value, units::millimetres(100));
    EXPECT_LT(capacitor().maximum.value, full.maximum.value) << "the range goes back with the dimension";
    window().document().undo_stack().redo();
    EXPECT_EQ(capacitor(), full);
    choose(0);
    EXPECT_FALSE(capacitor().made.has_value());
    EXPECT_EQ(capacitor().maximum.value, full.maximum.value) << "the range stays";
    EXPECT_FALSE(is_shown("capacitor.made.width"));
}

TEST_F(WindowMadeCapacitorTest, TubesAreTypedAndSetTheRange) {
    choose(2);
    ASSERT_TRUE(capacitor().made.has_value());
    EXPECT_EQ(capacitor().made->kind, design::MadeKind::trombone);
    EXPECT_FALSE(is_shown("capacitor.made.width"));
    enter("capacitor.made.inner_diameter", QStringLiteral("18 mm"));
    enter("capacitor.made.outer_diameter", QStringLiteral("22 mm"));
    EXPECT_EQ(capacitor().made->outer_diameter.text, "22 mm");
    enter("capacitor.made.pairs", QStringLiteral("1"));
    enter("capacitor.made.most_overlap", QStringLiteral("30 cm"));
    // 2 pi eps x/ln(b/a) of one pair: 2 pi 8.8542e-12 * 0.3/ln(11/9) = 83.2 pF; edges add a little.
    EXPECT_GT(capacitor().maximum.value.value(), 83.2e-12);
    EXPECT_LT(capacitor().maximum.value.value(), 1.1 * 83.2e-12);
}

TEST_F(WindowMadeCapacitorTest, WhatCannotBeIsRefusedAtItsField) {
    choose(2);
    const design::Capacitor before = capacitor();
    enter("capacitor.made.outer_diameter", QStringLiteral("10 mm")); // inside of the inner one
    EXPECT_TRUE(find<inputs::QuantityField>("capacitor.made.outer_diameter")
                    ->refusal()
                    .contains(QStringLiteral("inner diameter")));
    EXPECT_EQ(capacitor(), before);
    enter("capacitor.made.outer_diameter", QStringLiteral("3 pF"));
    EXPECT_FALSE(find<inputs::QuantityField>("capacitor.made.outer_diameter")->refusal().isEmpty());
    EXPECT_EQ(capacitor(), before);
}

TEST_F(WindowMadeCapacitorTest, AMeasuredRangeStandsBesideTheDimensions) {
    choose(1);
    auto* follows = find<QCheckBox>("capacitor.made.follows");
    EXPECT_TRUE(follows->isChecked());
    const design::Capacitor computed = capacitor();
    enter("capacitor.maximum",
          QStringLiteral("%1 pF").arg(1.1e12 * computed.maximum.value.value(), 0, 'f', 2));
    EXPECT_FALSE(follows->isChecked());
    EXPECT_TRUE(range_words().contains(QStringLiteral("as entered")));
    const units::Capacitance measured = capacitor().maximum.value;
    enter("capacitor.made.thickness", QStringLiteral("1.5 mm"));
    EXPECT_EQ(capacitor().maximum.value, measured) << "what was measured stays";
    EXPECT_NE(capacitor().minimum.value, computed.minimum.value) << "the other end still follows";
    enter("capacitor.maximum", QStringLiteral("1 nF")); // too far from what the dimensions give
    EXPECT_TRUE(find<inputs::QuantityField>("capacitor.maximum")->refusal().contains(QStringLiteral("20 %")));
    EXPECT_EQ(capacitor().maximum.value, measured);
    follows->setFocus();
    press(Qt::Key_Space);
    EXPECT_TRUE(follows->isChecked());
    EXPECT_NEAR(capacitor().maximum.value.value(), computed.maximum.value.value(), 1e-12);
    press(Qt::Key_Space);
    EXPECT_FALSE(follows->isChecked());
    EXPECT_FALSE(capacitor().maximum.text.empty());
}

TEST_F(WindowMadeCapacitorTest, EveryFieldSaysWhatItIs) {
    choose(1);
    for (const char* name :
         {"capacitor.made", "capacitor.made.width", "capacitor.made.spacing", "capacitor.made.thickness",
          "capacitor.made.plates", "capacitor.made.follows", "capacitor.made.least_overlap",
          "capacitor.made.most_overlap", "capacitor.made.relative_permittivity"}) {
        const auto* field = find<QWidget>(name);
        EXPECT_FALSE(field->accessibleName().isEmpty()) << name;
        EXPECT_FALSE(field->toolTip().isEmpty()) << name;
        EXPECT_NE(field->focusPolicy() & Qt::TabFocus, 0) << name;
    }
}

} // namespace
