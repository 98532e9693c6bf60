// The Coupling section used as a person uses it, against the core.
#include "charts/figure_widget.hpp"
#include "charts/smith_figure.hpp"
#include "coupling/coupling_size.hpp"
#include "ui/coupling_fixture.hpp"

#include <QAction>
#include <QPushButton>

using namespace loopwright;

namespace {

class WindowCouplingTest : public test::CouplingTest {
protected:
    void SetUp() override {
        CouplingTest::SetUp();
        choose(loop);
        ASSERT_TRUE(matched());
    }
};

TEST_F(WindowCouplingTest, NumbersAndChartsAreThoseOfTheCore) {
    const auto report = core();
    EXPECT_EQ(words("match.vswr"), QString::number(report.match->vswr, 'f', 2));
    EXPECT_EQ(words("match.input"), models::impedance_text({report.match->input.value().real(),
                                                            report.match->input.value().imag()}));
    EXPECT_TRUE(words("match.conditions").contains(QStringLiteral("full wave")));
    int smith = 0;
    for (const auto* widget : panel_->findChildren<charts::FigureWidget*>()) {
        EXPECT_TRUE(widget->isVisible());
        if (const auto* figure = dynamic_cast<const charts::SmithFigure*>(widget->figure().get())) {
            ++smith;
            EXPECT_EQ(static_cast<std::size_t>(figure->plot().curve.size()), report.curve.size());
        }
    }
    EXPECT_EQ(smith, 1);
    const QString before = words("match.input");
    type("coupling.diameter", QStringLiteral("0.3 m"));
    ASSERT_TRUE(matched());
    EXPECT_NE(words("match.input"), before);
}

TEST_F(WindowCouplingTest, SizedForOneBandInOneUndoStep) {
    type("coupling.diameter", QStringLiteral("0.3 m"));
    press(Qt::Key_Tab);
    const design::Design typed = design();
    const int steps = window().document().undo_stack().count();
    const auto best = coupling::best_coupling(typed, window().focus().frequency());
    find<QPushButton>("coupling.size_one")->click();
    ASSERT_TRUE(sized());
    EXPECT_NEAR(design().coupling->diameter.value.value(), best.diameter.value(),
                0.5001e-3); // to a millimetre
    EXPECT_EQ(window().document().undo_stack().count(), steps + 1);
    EXPECT_TRUE(words("coupling.sized").contains(QStringLiteral("on 30m")));
    ASSERT_TRUE(matched());
    EXPECT_LT(core().match->vswr, 1.2);
    window().document().undo_stack().undo();
    EXPECT_EQ(design(), typed);
}

TEST_F(WindowCouplingTest, SizedForAllBandsNamesEach) {
    find<QPushButton>("coupling.size_all")->click();
    EXPECT_TRUE(find<QPushButton>("coupling.cancel")->isVisible());
    ASSERT_TRUE(sized());
    const auto& found = panel_->sizing().result()->size;
    ASSERT_TRUE(found.size.has_value());
    EXPECT_NEAR(design().coupling->diameter.value.value(), *found.size, 0.5001e-3);
    EXPECT_EQ(found.rows.size(), 2U);
    for (const char* band : {"on 40m", "on 30m"}) {
        EXPECT_TRUE(words("coupling.sized").contains(QLatin1String(band)))
            << words("coupling.sized").toStdString();
    }
}

TEST_F(WindowCouplingTest, CancelLeavesTheDesign) {
    const design::Design before = design();
    find<QPushButton>("coupling.size_all")->click();
    find<QPushButton>("coupling.cancel")->click();
    EXPECT_FALSE(find<QPushButton>("coupling.cancel")->isVisible());
    ASSERT_TRUE(sized());
    EXPECT_EQ(design(), before);
    EXPECT_TRUE(find<QPushButton>("coupling.size_all")->isEnabled());
}

} // namespace
