// Every kind of coupling and the feed line entered as a person enters them, against the core.
#include "charts/figure_widget.hpp"
#include "coupling/feed_size.hpp"
#include "inputs/quantity_field.hpp"
#include "models/match_words.hpp"
#include "ui/coupling_fixture.hpp"

#include <QAction>
#include <QCheckBox>
#include <QPushButton>
#include <QScrollArea>
#include <QToolButton>

using namespace loopwright;

namespace {

class WindowCouplingKindsTest : public test::CouplingTest {
protected:
    bool shown(const char* name) { return find<QWidget>(name)->isVisible(); }
    void expect_figures_of_the_core() {
        ASSERT_TRUE(matched());
        const auto report = core();
        EXPECT_EQ(words("match.input"), models::impedance_text({report.match->input.value().real(),
                                                                report.match->input.value().imag()}));
        EXPECT_EQ(words("match.vswr"), QString::number(report.match->vswr, 'f', 2));
    }
};

TEST_F(WindowCouplingKindsTest, EachKindShowsItsFieldsOnly) {
    const std::vector<std::pair<Kind, std::vector<const char*>>> fields = {
        {none, {}},
        {loop, {"coupling.diameter", "coupling.conductor_diameter", "coupling.axis_offset"}},
        {tap,
         {"coupling.tap_length", "coupling.tap_spacing", "coupling.conductor_diameter",
          "coupling.series_capacitor"}},
        {transformer, {"coupling.turns", "coupling.turn_inductance"}}};
    const std::vector<const char*> all = {"coupling.diameter",    "coupling.conductor_diameter",
                                          "coupling.axis_offset", "coupling.tap_length",
                                          "coupling.tap_spacing", "coupling.series_capacitor",
                                          "coupling.turns",       "coupling.turn_inductance"};
    for (const auto& [kind, wanted] : fields) {
        choose(kind);
        EXPECT_EQ(design().coupling.has_value(), kind != none);
        for (const char* name : all) {
            const bool expected = std::any_of(wanted.begin(), wanted.end(), [name](const char* one) {
                return std::string_view(one) == name;
            });
            EXPECT_EQ(shown(name), expected) << name << " for kind " << kind;
        }
        EXPECT_EQ(panel_->isVisible(), kind != none);
    }
    window().document().undo_stack().undo();
    EXPECT_EQ(design().coupling->kind, design::CouplingKind::tap);
}

TEST_F(WindowCouplingKindsTest, TapIsTypedAndItsFiguresFollow) {
    choose(tap);
    type("coupling.tap_length", QStringLiteral("30 cm"));
    press(Qt::Key_Tab);
    type("coupling.tap_spacing", QStringLiteral("60 mm"));
    press(Qt::Key_Tab);
    type("coupling.series_capacitor", QStringLiteral("120 pF"));
    press(Qt::Key_Tab);
    EXPECT_DOUBLE_EQ(design().coupling->tap_length.value.value(), 0.30);
    EXPECT_EQ(design().coupling->tap_length.text, "30 cm");
    EXPECT_DOUBLE_EQ(design().coupling->tap_spacing.value.value(), 0.06);
    ASSERT_TRUE(design().coupling->series_capacitor.has_value());
    EXPECT_NE(action(QStringLiteral("Undo Series capacitor none → 120 pF")), nullptr);
    expect_figures_of_the_core();
    EXPECT_TRUE(words("coupling.model_limits").contains(QStringLiteral("circuit model")));
    EXPECT_TRUE(words("match.notices").contains(QStringLiteral("circuit model")));
    type("coupling.series_capacitor", QString());
    press(Qt::Key_Tab);
    EXPECT_FALSE(design().coupling->series_capacitor.has_value());
}

TEST_F(WindowCouplingKindsTest, TapLongerThanTwoFifthsIsRefusedBesideItsField) {
    choose(tap);
    type("coupling.tap_length", QStringLiteral("2 m")); // of 3.14 m
    press(Qt::Key_Tab);
    EXPECT_TRUE(
        find<inputs::QuantityField>("coupling.tap_length")->refusal().contains(QStringLiteral("two fifths")));
}

TEST_F(WindowCouplingKindsTest, TapOfSeveralTurnsIsRefusedBesideTheChoice) {
    type("loop.turns", QStringLiteral("2"));
    press(Qt::Key_Tab);
    const design::Design before = design();
    choose(loop);
    find<QComboBox>("coupling")->setFocus();
    press(Qt::Key_Down);
    EXPECT_EQ(design().coupling->kind, design::CouplingKind::loop);
    EXPECT_EQ(find<QComboBox>("coupling")->currentIndex(), loop);
    bool said = false;
    for (const QLabel* label : find<QComboBox>("coupling")->parentWidget()->findChildren<QLabel*>()) {
        said = said || (label->isVisible() && label->text().contains(QStringLiteral("one turn")));
    }
    EXPECT_TRUE(said);
}

TEST_F(WindowCouplingKindsTest, TransformerIsTypedAndItsFiguresFollow) {
    choose(transformer);
    type("coupling.turns", QStringLiteral("8"));
    press(Qt::Key_Tab);
    type("coupling.turn_inductance", QStringLiteral("0.3 uH"));
    press(Qt::Key_Tab);
    EXPECT_EQ(design().coupling->turns, 8);
    EXPECT_DOUBLE_EQ(design().coupling->turn_inductance.value.value(), 0.3e-6);
    expect_figures_of_the_core();
    EXPECT_TRUE(words("coupling.model_limits").contains(QStringLiteral("circuit model")));
}

TEST_F(WindowCouplingKindsTest, EveryKindIsSizedInOneUndoStep) {
    for (const Kind kind : {tap, transformer}) {
        choose(kind);
        const design::Design before = design();
        const int steps = window().document().undo_stack().count();
        find<QPushButton>("coupling.size_one")->click();
        ASSERT_TRUE(QTest::qWaitFor([this] { return !panel_->sizing().busy(); }, coupling_patience_ms));
        const auto found = coupling::feed_size(before, {window().focus().frequency()});
        ASSERT_TRUE(found.size.has_value());
        const design::Coupling& now = *design().coupling;
        if (kind == tap) {
            EXPECT_NEAR(now.tap_length.value.value(), *found.size, 0.5001e-3);
        } else {
            EXPECT_EQ(now.turns, static_cast<int>(*found.size));
        }
        EXPECT_EQ(window().document().undo_stack().count(), steps + 1);
        EXPECT_TRUE(words("coupling.sized").contains(QStringLiteral("on 30m")));
        window().document().undo_stack().undo();
        EXPECT_EQ(design(), before);
    }
}

TEST_F(WindowCouplingKindsTest, FeedLineIsEnteredWithItsTableOfLoss) {
    choose(loop);
    EXPECT_FALSE(shown("feed_line.length"));
    EXPECT_FALSE(shown("feed_line.add_loss"));
    auto* given = find<QCheckBox>("feed_line");
    given->setFocus();
    press(Qt::Key_Space);
    ASSERT_TRUE(design().feed_line.has_value());
    type("feed_line.length", QStringLiteral("12 m"));
    press(Qt::Key_Tab);
    type("feed_line.impedance", QStringLiteral("75 ohm"));
    press(Qt::Key_Tab);
    ASSERT_TRUE(matched());
    EXPECT_TRUE(words("match.notices").contains(QStringLiteral("No loss is given")));
    QTest::mouseClick(find<QPushButton>("feed_line.add_loss"), Qt::LeftButton);
    QTest::mouseClick(find<QPushButton>("feed_line.add_loss"), Qt::LeftButton);
    type("feed_line.loss[0].loss", QStringLiteral("4.5 dB/100m"));
    press(Qt::Key_Tab);
    type("feed_line.loss[1].loss", QStringLiteral("7 dB/100m"));
    press(Qt::Key_Tab);
    type("feed_line.loss[1].frequency", QStringLiteral("30 MHz"));
    press(Qt::Key_Tab);
    const auto& line = *design().feed_line;
    EXPECT_EQ(line.length.value, units::metres(12));
    EXPECT_EQ(line.impedance.value, units::ohms(75));
    ASSERT_EQ(line.loss.size(), 2U);
    EXPECT_NEAR(line.loss[0].loss.value.dB_per_m, 0.045, 1e-12);
    EXPECT_EQ(line.loss[1].frequency.value, units::megahertz(30));
    ASSERT_TRUE(matched());
    const auto report = core();
    EXPECT_EQ(words("match.vswr_at_radio"), QString::number(report.vswr_at_radio, 'f', 2));
    EXPECT_LT(report.vswr_at_radio, report.match->vswr);
    EXPECT_FALSE(words("match.notices").contains(QStringLiteral("No loss is given")));
}

/// Looks at the figures whenever one of them is painted.
class PaintWatch : public QObject {
public:
    PaintWatch(QWidget* upper, QWidget* lower) : upper_(upper), lower_(lower) {
        upper->installEventFilter(this);
        lower->installEventFilter(this);
    }
    bool eventFilter(QObject* watched, QEvent* event) override {
        if (event->type() == QEvent::Paint) {
            ++paints;
            covered = covered || upper_->geometry().bottom() >= lower_->geometry().top();
        }
        return QObject::eventFilter(watched, event);
    }
    bool covered = false;
    int paints = 0;

private:
    QWidget* upper_;
    QWidget* lower_;
};

TEST_F(WindowCouplingKindsTest, TheSmithChartIsNeverPaintedUnderTheCurve) {
    choose(loop);
    ASSERT_TRUE(matched());
    auto* form = find<QScrollArea>("build.form");
    PaintWatch watch(&panel_->smith(), &panel_->curve());
    for (const Kind kind : {tap, transformer, loop, tap}) {
        choose(kind);
        form->ensureWidgetVisible(&panel_->curve());
        ASSERT_TRUE(matched());
        QTest::qWait(50);
        EXPECT_FALSE(watch.covered) << kind;
    }
    EXPECT_GT(watch.paints, 4);
}

TEST_F(WindowCouplingKindsTest, NothingIsWiderThanTheColumn) {
    auto* given = find<QCheckBox>("feed_line");
    given->setFocus();
    press(Qt::Key_Space);
    QTest::mouseClick(find<QPushButton>("feed_line.add_loss"), Qt::LeftButton);
    type("feed_line.loss[0].loss", QStringLiteral("3*1.5 dB/100m")); // with what it comes to beside it
    press(Qt::Key_Tab);
    const auto* form = find<QScrollArea>("build.form");
    for (const Kind kind : {loop, tap, transformer}) {
        choose(kind);
        ASSERT_TRUE(matched());
        QCoreApplication::processEvents();
        EXPECT_LE(form->widget()->minimumSizeHint().width(), form->viewport()->width()) << kind;
        // Neither does one figure lie over the other once the layout has settled.
        const QRect smith = panel_->smith().geometry();
        EXPECT_TRUE(QTest::qWaitFor(
            [&] { return panel_->curve().geometry().top() > panel_->smith().geometry().bottom(); }, 1000))
            << kind << ": " << smith.bottom() << " and " << panel_->curve().geometry().top();
    }
}

TEST_F(WindowCouplingKindsTest, TheSameFrequencyTwiceIsRefusedAndARowCanGo) {
    auto* given = find<QCheckBox>("feed_line");
    given->setFocus();
    press(Qt::Key_Space);
    QTest::mouseClick(find<QPushButton>("feed_line.add_loss"), Qt::LeftButton);
    QTest::mouseClick(find<QPushButton>("feed_line.add_loss"), Qt::LeftButton);
    type("feed_line.loss[1].frequency", QStringLiteral("10 MHz"));
    press(Qt::Key_Tab);
    EXPECT_FALSE(find<inputs::QuantityField>("feed_line.loss[1].frequency")->refusal().isEmpty());
    for (QToolButton* button : window().findChildren<QToolButton*>()) {
        if (button->accessibleName() == QStringLiteral("Remove loss of the line, row 1")) {
            QTest::mouseClick(button, Qt::LeftButton);
            break;
        }
    }
    EXPECT_EQ(design().feed_line->loss.size(), 1U);
    window().document().undo_stack().undo();
    EXPECT_EQ(design().feed_line->loss.size(), 2U);
    given->setFocus();
    press(Qt::Key_Space);
    EXPECT_FALSE(design().feed_line.has_value());
    EXPECT_FALSE(shown("feed_line.add_loss"));
}

} // namespace
