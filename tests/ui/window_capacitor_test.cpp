// What the capacitor stands, its sections, the fixed capacitors beside it and the air of the site, entered on
// the Build page as a person enters them.
#include "inputs/fold.hpp"
#include "inputs/quantity_field.hpp"
#include "inputs/text_field.hpp"
#include "pages/capacitor_catalog.hpp"
#include "ui/harness.hpp"

#include <QAction>
#include <QComboBox>
#include <QLabel>
#include <QPushButton>
#include <QTest>
#include <QToolButton>

using namespace loopwright;

namespace {

class WindowCapacitorTest : public test::WindowTest {
protected:
    void SetUp() override {
        open_window();
        window().document().start_from(design::Design{});
        for (const char* group : {"group.capacitor", "group.added", "group.site"}) {
            find<inputs::Fold>(group)->set_unfolded(true);
        }
        for (auto* fold : window().findChildren<inputs::Fold*>()) {
            fold->set_unfolded(true); // "More" too
        }
    }
    const design::Design& design() { return window().document().design(); }
    const design::Capacitor& capacitor() { return design().capacitor; }
    void enter(const std::string& name, const QString& text) {
        type(name, text);
        press(Qt::Key_Tab);
    }
    void choose(const std::string& name, int index) {
        find<QComboBox>(name)->setFocus();
        press(Qt::Key_Home);
        for (int i = 0; i < index; ++i) {
            press(Qt::Key_Down);
        }
    }
    bool said_beside(QWidget* field, const QString& words) {
        for (const QLabel* label : field->parentWidget()->findChildren<QLabel*>()) {
            if (label->isVisible() && label->text().contains(words)) {
                return true;
            }
        }
        return false;
    }
    void add_one() { QTest::mouseClick(find<QPushButton>("added.add"), Qt::LeftButton); }
    void undo() { window().document().undo_stack().undo(); }
};

TEST_F(WindowCapacitorTest, AirGapIsTypedWithEdgesAndSafetyFactor) {
    EXPECT_FALSE(find<QWidget>("capacitor.rating.plate_edges")->isVisible());
    EXPECT_FALSE(find<QWidget>("capacitor.rating.safety_factor")->isVisible());
    enter("capacitor.rating.gap", QStringLiteral("1.5 mm"));
    ASSERT_TRUE(capacitor().rating.gap.has_value());
    EXPECT_DOUBLE_EQ(capacitor().rating.gap->value.value(), 1.5e-3);
    EXPECT_EQ(capacitor().rating.gap->text, "1.5 mm");
    EXPECT_TRUE(find<QWidget>("capacitor.rating.plate_edges")->isVisible());
    choose("capacitor.rating.plate_edges", 2);
    EXPECT_EQ(capacitor().rating.plate_edges, design::PlateEdges::sharp);
    enter("capacitor.rating.safety_factor", QStringLiteral("2"));
    EXPECT_DOUBLE_EQ(capacitor().rating.safety_factor, 2.0);
    EXPECT_NE(action(QStringLiteral("Undo Breakdown margin 1.5 → 2")), nullptr);
    enter("capacitor.rating.gap", QString());
    EXPECT_FALSE(capacitor().rating.gap.has_value());
    EXPECT_FALSE(find<QWidget>("capacitor.rating.plate_edges")->isVisible());
    undo();
    EXPECT_EQ(text("capacitor.rating.gap"), QStringLiteral("1.5 mm"));
}

TEST_F(WindowCapacitorTest, TheStripFollowsTheAirGap) {
    enter("capacitor.rating.gap", QStringLiteral("0.3 mm"));
    ASSERT_TRUE(test::wait_for_survey(window()));
    enter("station.power", QStringLiteral("100 W"));
    ASSERT_TRUE(test::wait_for_survey(window()));
    const auto* strip = find<QLabel>("hazard.voltage");
    EXPECT_TRUE(
        QTest::qWaitFor([strip] { return strip->text().contains(QStringLiteral("over its rating")); }, 5000))
        << strip->text().toStdString();
}

TEST_F(WindowCapacitorTest, RefusedTextsKeepTheDesign) {
    const design::Design before = design();
    const std::vector<std::pair<const char*, const char*>> refused = {{"capacitor.rating.gap", "3 V"},
                                                                      {"capacitor.rating.gap", "1 m"},
                                                                      {"capacitor.rating.current", "0 A"},
                                                                      {"site.altitude", "90 km"},
                                                                      {"site.air_temperature", "900 degC"}};
    for (const auto& [name, words] : refused) {
        enter(name, QString::fromUtf8(words));
        EXPECT_FALSE(find<inputs::QuantityField>(name)->refusal().isEmpty()) << name << " " << words;
        EXPECT_EQ(design().capacitor.rating.gap.has_value(), false) << words;
        EXPECT_EQ(design().site, before.site) << words;
    }
    enter("capacitor.rating.gap", QStringLiteral("1 mm"));
    enter("capacitor.rating.safety_factor", QStringLiteral("0.5"));
    EXPECT_FALSE(find<inputs::QuantityField>("capacitor.rating.safety_factor")->refusal().isEmpty());
    EXPECT_DOUBLE_EQ(capacitor().rating.safety_factor, 1.5);
}

TEST_F(WindowCapacitorTest, SectionsCurrentAndAirAreEntered) {
    choose("capacitor.arrangement", 1);
    EXPECT_EQ(capacitor().arrangement, design::SectionArrangement::split_stator);
    choose("capacitor.arrangement", 2);
    EXPECT_EQ(capacitor().arrangement, design::SectionArrangement::butterfly);
    enter("capacitor.rating.current", QStringLiteral("12 A"));
    ASSERT_TRUE(capacitor().rating.current.has_value());
    EXPECT_DOUBLE_EQ(capacitor().rating.current->value.value(), 12.0);
    enter("site.altitude", QStringLiteral("1800 m"));
    EXPECT_DOUBLE_EQ(design().site.altitude.value.value(), 1800.0);
    enter("site.air_temperature", QStringLiteral("35 °C"));
    EXPECT_DOUBLE_EQ(design().site.air_temperature.value.value(), 308.15);
    EXPECT_NE(action(QStringLiteral("Undo Air temperature 20 °C → 35 °C")), nullptr);
}

TEST_F(WindowCapacitorTest, FixedCapacitorsAreAddedTypedAndRemoved) {
    add_one();
    ASSERT_EQ(capacitor().added.size(), 1U);
    EXPECT_TRUE(find<QWidget>("capacitor.added[0].capacitance")->hasFocus());
    enter("capacitor.added[0].capacitance", QStringLiteral("220 pF"));
    enter("capacitor.added[0].peak_voltage", QStringLiteral("3 kV"));
    enter("capacitor.added[0].q", QStringLiteral("800"));
    enter("capacitor.added[0].current", QStringLiteral("6 A"));
    add_one();
    choose("capacitor.added[1].connection", 1);
    ASSERT_EQ(capacitor().added.size(), 2U);
    const design::AddedCapacitor first = capacitor().added[0];
    EXPECT_EQ(first.capacitance.text, "220 pF");
    EXPECT_EQ(first.connection, design::AddedConnection::parallel);
    EXPECT_DOUBLE_EQ(first.peak_voltage->value.value(), 3000.0);
    EXPECT_DOUBLE_EQ(first.q.value_or(0), 800.0);
    EXPECT_DOUBLE_EQ(first.current->value.value(), 6.0);
    EXPECT_EQ(capacitor().added[1].connection, design::AddedConnection::series);
    find<inputs::Fold>("group.added")->set_unfolded(false);
    EXPECT_TRUE(said_beside(&find<inputs::Fold>("group.added")->header(), QStringLiteral("220 pF across")) ||
                said_beside(find<inputs::Fold>("group.added")->findChild<QToolButton*>(),
                            QStringLiteral("220\u2009pF across")));
    find<inputs::Fold>("group.added")->set_unfolded(true);
    QTest::mouseClick(find<QToolButton>("added.remove[0]"), Qt::LeftButton);
    ASSERT_EQ(capacitor().added.size(), 1U);
    EXPECT_EQ(capacitor().added[0].connection, design::AddedConnection::series);
    EXPECT_EQ(find<QComboBox>("capacitor.added[0].connection")->currentIndex(), 1);
    undo();
    ASSERT_EQ(capacitor().added.size(), 2U);
    EXPECT_EQ(capacitor().added[0], first);
    EXPECT_EQ(text("capacitor.added[0].capacitance"), QStringLiteral("220 pF"));
}

TEST_F(WindowCapacitorTest, ARefusedFixedCapacitorKeepsTheDesign) {
    add_one();
    const design::Capacitor before = capacitor();
    enter("capacitor.added[0].capacitance", QStringLiteral("3 V"));
    EXPECT_FALSE(find<inputs::QuantityField>("capacitor.added[0].capacitance")->refusal().isEmpty());
    enter("capacitor.added[0].q", QStringLiteral("2"));
    EXPECT_FALSE(find<inputs::QuantityField>("capacitor.added[0].q")->refusal().isEmpty());
    EXPECT_EQ(capacitor(), before);
}

TEST_F(WindowCapacitorTest, BandsThatAFixedCapacitorIsFittedOnAreTyped) {
    add_one();
    auto* line = find<inputs::TextField>("capacitor.added[0].bands");
    enter("capacitor.added[0].bands", QStringLiteral("80m, 60M"));
    EXPECT_EQ(capacitor().added[0].bands, (std::vector<std::string>{"80m", "60m"}));
    EXPECT_EQ(line->text(), QStringLiteral("80m 60m"));
    enter("capacitor.added[0].bands", QStringLiteral("40m 41m"));
    EXPECT_EQ(capacitor().added[0].bands, (std::vector<std::string>{"80m", "60m"})) << "as before the typing";
    EXPECT_EQ(line->text(), QStringLiteral("40m 41m"));
    EXPECT_TRUE(said_beside(line, QStringLiteral("“41m” is not accepted")));
    enter("capacitor.added[0].bands", QString());
    EXPECT_TRUE(capacitor().added[0].bands.empty());
    undo();
    EXPECT_EQ(line->text(), QStringLiteral("80m 60m"));
    enter("capacitor.added[0].note", QStringLiteral("silver mica, invented"));
    EXPECT_EQ(capacitor().added[0].note, "silver mica, invented");
}

TEST_F(WindowCapacitorTest, AKindOfTheCatalogKeepsWhatIsAddedBesideIt) {
    add_one();
    enter("capacitor.added[0].capacitance", QStringLiteral("82 pF"));
    choose("capacitor", 1);
    EXPECT_EQ(capacitor().minimum, pages::capacitor_catalog().at(0).capacitor.minimum);
    ASSERT_EQ(capacitor().added.size(), 1U);
    EXPECT_EQ(capacitor().added[0].capacitance.text, "82 pF");
    EXPECT_EQ(find<QComboBox>("capacitor")->currentIndex(), 1);
}

TEST_F(WindowCapacitorTest, NoMoreThanTheDesignTakes) {
    design::Design full = design();
    full.capacitor.added.resize(20);
    window().document().start_from(full);
    EXPECT_FALSE(find<QPushButton>("added.add")->isEnabled());
    undo();
}

} // namespace
