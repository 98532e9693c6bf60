// Every text of the pages can be translated: with a translator that widens all letters in place, nothing
// narrow is left but names, units, and the sentences of the core (docs/decisions/0007-language.md).
#include "coupling/coupling_size.hpp"
#include "inputs/fold.hpp"
#include "pages/bands_height_view.hpp"
#include "pages/bands_models_view.hpp"
#include "pages/bands_page.hpp"
#include "pages/bands_pattern_view.hpp"
#include "pages/coupling_panel.hpp"
#include "pages/keying_details.hpp"
#include "pages/keying_page.hpp"
#include "pages/keying_pictures.hpp"
#include "pages/retune_card.hpp"
#include "pages/retune_page.hpp"
#include "ui/translation_fixture.hpp"

#include <QTabWidget>

using namespace loopwright;
using test::TranslationTest;

namespace {

TEST(MarkingTranslator, WidensLettersAndKeepsTheRest) {
    EXPECT_EQ(test::marked(QStringLiteral("<b>%1</b> &amp; %n &Z *.csv")),
              QStringLiteral("<b>%1</b> &amp; %n &\uFF3A *.csv"));
}

TEST_F(TranslationTest, BuildPage) {
    for (inputs::Fold* fold : window().findChildren<inputs::Fold*>()) {
        fold->set_unfolded(true);
    }
    settings().set_other_model_beside(true);
    settings().set_current_drawn(true);
    ASSERT_TRUE(test::wait_for_survey(window()));
    check_window();
    EXPECT_GT(wide_, 500);
}

TEST_F(TranslationTest, CouplingOfEveryKind) {
    auto* panel = window().findChild<pages::CouplingPanel*>();
    window().findChild<inputs::Fold*>(QStringLiteral("group.coupling"))->set_unfolded(true);
    for (int kind = 0; kind < 3; ++kind) {
        design::Design design = window().document().design();
        design.coupling = coupling::coupling_of_kind(design, static_cast<design::CouplingKind>(kind));
        design.feed_line = design::FeedLine{units::metres(12), units::ohms(50), {}};
        window().document().edit(design, {QStringLiteral("1"), {}, {}});
        wait([&] { return panel->match().result() && !panel->match().stale(); });
        core_->add(panel->match().result()->report.notices);
        check(test::texts_of(*panel));
        check(test::painted_texts(*panel));
    }
    EXPECT_GT(wide_, 30);
}

TEST_F(TranslationTest, BandsPage) {
    open_sample(QStringLiteral("balcony"));
    settings().set_other_model_beside(true);
    ASSERT_TRUE(test::wait_for_survey(window()));
    pages::BandsPage& page = window().bands();
    window().pages().setCurrentWidget(&page);
    check_window();
    page.show_group(pages::BandsPage::directions);
    wait([&] { return page.pattern().current(); });
    check_window();
    page.show_group(pages::BandsPage::heights);
    wait([&] { return page.height().current(); });
    check_window();
    page.show_group(pages::BandsPage::two_models);
    wait([&] { return page.shown_charts() != nullptr; });
    check_window();
    EXPECT_GT(wide_, 300);
}

TEST_F(TranslationTest, InInchesBesideAnotherDesignWithARating) {
    open_sample(QStringLiteral("balcony"));
    settings().set_unit_system(units::UnitSystem::imperial);
    fill_menus();
    action(test::marked(QStringLiteral("With the design as it is now")))->trigger();
    design::Design other = window().document().design();
    other.capacitor.rating.peak_voltage = units::parse_typed<units::Voltage>("500 V", "rating");
    other.station.power = units::parse_typed<units::Power>("100 W", "power");
    window().document().edit(other, {QStringLiteral("1"), {}, {}});
    ASSERT_TRUE(test::wait_for_survey(window()));
    check_window();
    window().pages().setCurrentWidget(&window().bands());
    check_window();
    EXPECT_GT(wide_, 300);
}

TEST_F(TranslationTest, PageBeforeKeying) {
    pages::KeyingPage& page = window().keying_page();
    window().pages().setCurrentWidget(&page);
    ASSERT_TRUE(test::wait_for_keying(window()));
    wait([&] { return !page.pictures().job().stale(); });
    for (int group = pages::KeyingDetails::around; group <= pages::KeyingDetails::tuning; ++group) {
        page.show_group(group);
        check_window();
    }
    EXPECT_GT(wide_, 300);
}

TEST_F(TranslationTest, RetunePage) {
    design::Design design = window().document().design();
    design.capacitor.dial = design::Dial{};
    window().document().edit(design, {QStringLiteral("1"), {}, {}});
    pages::RetunePage& page = window().retune();
    window().pages().setCurrentWidget(&page);
    wait([&] {
        return page.dial().result() && !page.dial().stale() && page.card().job().result() &&
               !page.card().job().stale();
    });
    core_->add(*page.card().job().result());
    check_window();
    EXPECT_GT(wide_, 300);
}

} // namespace
