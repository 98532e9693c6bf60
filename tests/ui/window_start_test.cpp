// First start, samples, a loop of one's own, recovery, explanations.
#include "app/samples.hpp"
#include "design/validation.hpp"
#include "dialogs/caution_dialog.hpp"
#include "dialogs/explanation_dialog.hpp"
#include "dialogs/own_loop_dialog.hpp"
#include "dialogs/start_dialog.hpp"
#include "pages/capacitor_catalog.hpp"
#include "session/recovery.hpp"
#include "ui/harness.hpp"

#include <QAbstractButton>
#include <QApplication>
#include <QFont>
#include <QLabel>
#include <QLineEdit>
#include <QListWidget>
#include <QMenu>
#include <QTableWidget>
#include <QTest>

using namespace loopwright;

namespace {

class WindowStartTest : public test::WindowTest {
protected:
    void SetUp() override { open_window(); }
};

TEST_F(WindowStartTest, FirstStartShowsTheCautionAndThenTheSamples) {
    settings().set_caution_read(false);
    QStringList seen;
    test::in_next_dialog([&seen](QWidget* dialog) {
        seen << QString::fromLatin1(dialog->metaObject()->className());
        test::in_next_dialog([&seen](QWidget* next) {
            seen << QString::fromLatin1(next->metaObject()->className());
            auto* list = next->findChild<QListWidget*>();
            ASSERT_NE(list, nullptr);
            EXPECT_EQ(list->count(), app::samples().size());
            list->setCurrentRow(1);
            EXPECT_TRUE(test::press_button(next, QStringLiteral("Use this sample")));
        });
        EXPECT_TRUE(test::press_button(dialog, QStringLiteral("I have read this")));
    });
    window().begin({});
    EXPECT_EQ(seen, QStringList({QStringLiteral("loopwright::dialogs::CautionDialog"),
                                 QStringLiteral("loopwright::dialogs::StartDialog")}));
    EXPECT_TRUE(settings().caution_read());
    EXPECT_EQ(window().document().design(), app::samples().at(1).design);
    EXPECT_TRUE(window().document().path().isEmpty());
    window().begin({}); // a later start asks nothing
}

TEST_F(WindowStartTest, CautionThatIsNotAcknowledgedComesAgain) {
    settings().set_caution_read(false);
    test::in_next_dialog([](QWidget* dialog) {
        EXPECT_NE(qobject_cast<dialogs::CautionDialog*>(dialog), nullptr);
        test::in_next_dialog([](QWidget* next) { QTest::keyClick(next, Qt::Key_Escape); }); // the samples
        QTest::keyClick(dialog, Qt::Key_Escape);
    });
    window().begin({});
    EXPECT_FALSE(settings().caution_read());
}

TEST_F(WindowStartTest, CautionNamesWhatCanHappen) {
    const QString all = dialogs::CautionDialog::paragraphs().join(QLatin1Char(' '));
    for (const char* word : {"kilovolts", "burns", "exposure rules", "licence", "hazardous", "children"}) {
        EXPECT_TRUE(all.contains(QLatin1String(word))) << word;
    }
}

TEST_F(WindowStartTest, CautionIsWholeInLettersOfAnySize) {
    const QFont usual = QApplication::font();
    for (const int points : {7, 9, 13, 20}) {
        QFont font = usual;
        font.setPointSize(points);
        QApplication::setFont(font);
        dialogs::CautionDialog dialog;
        dialog.show();
        QCoreApplication::processEvents();
        int read = 0;
        for (const QLabel* label : dialog.findChildren<QLabel*>()) {
            if (label->wordWrap()) {
                ++read;
                EXPECT_GE(label->height(), label->heightForWidth(label->width()))
                    << points << " pt: " << label->text().toStdString();
            }
        }
        EXPECT_EQ(read, dialogs::CautionDialog::paragraphs().size());
    }
    QApplication::setFont(usual);
}

TEST_F(WindowStartTest, EverySampleOpensAndIsComputed) {
    ASSERT_GE(app::samples().size(), 6);
    for (const app::Sample& sample : app::samples()) {
        EXPECT_FALSE(sample.title().isEmpty());
        EXPECT_TRUE(QString::fromStdString(sample.design.note).contains(QStringLiteral("nvented")))
            << sample.design.title;
        EXPECT_TRUE(window().files().open_sample(sample.design));
        ASSERT_TRUE(test::wait_for_survey(window())) << sample.design.title;
        const auto& survey = *window().survey().result();
        EXPECT_EQ(survey.request.design, sample.design);
        EXPECT_FALSE(window().document().is_dirty());
        // What the window looks at first is a band that the loop reaches.
        bool reached = false;
        for (const auto& row : survey.bands) {
            reached = reached || (row.band.name == window().focus().band().toStdString() &&
                                  row.point.resonance && row.point.resonance->in_capacitor_range);
        }
        EXPECT_TRUE(reached) << sample.design.title << " at " << window().focus().band().toStdString();
    }
}

TEST_F(WindowStartTest, CatalogOfCapacitorsIsThereAndFits) {
    ASSERT_FALSE(pages::capacitor_catalog().empty());
    for (const auto& entry : pages::capacitor_catalog()) {
        design::Design design;
        design.capacitor = entry.capacitor;
        EXPECT_TRUE(design::refusals(design).empty()) << entry.name;
    }
}

TEST_F(WindowStartTest, OwnLoopFromFiveThings) {
    test::in_next_dialog([](QWidget* dialog) {
        EXPECT_TRUE(qobject_cast<dialogs::OwnLoopDialog*>(dialog) != nullptr);
        for (QWidget* field : dialog->findChildren<QWidget*>()) {
            if (field->accessibleName() == QStringLiteral("Size across")) {
                auto* line = field->findChild<QLineEdit*>();
                line->selectAll();
                QTest::keyClicks(line, QStringLiteral("80 cm"));
            }
        }
        EXPECT_TRUE(test::press_button(dialog, QStringLiteral("Open Build")));
    });
    EXPECT_TRUE(window().files().describe_own());
    EXPECT_DOUBLE_EQ(window().document().design().loop.size.value.value(), 0.8);
    EXPECT_EQ(window().document().design().site.ground.kind, design::GroundKind::soil);
}

TEST_F(WindowStartTest, WorkLeftBehindIsOffered) {
    const QString folder = file(QStringLiteral("left"));
    {
        session::Document crashed(folder);
        design::Design design;
        design.title = "left behind";
        crashed.edit(design, {QStringLiteral("Title"), {}, {}});
        crashed.write_recovery_copy();
    }
    test::in_next_dialog(
        [](QWidget* dialog) { EXPECT_TRUE(test::press_button(dialog, QStringLiteral("Take it up"))); });
    EXPECT_TRUE(window().files().offer_recovery(folder));
    EXPECT_EQ(window().document().design().title, "left behind");
    EXPECT_TRUE(window().document().is_dirty());
    EXPECT_TRUE(session::Recovery::left_behind(folder).isEmpty());
    window().document().start_from({});
}

TEST_F(WindowStartTest, EveryHeadlineNumberOpensWhereItComesFrom) {
    for (const char* key : {"efficiency", "gain_max_dBi", "capacitor_voltage_peak_V", "tuning_capacitance_F",
                            "bandwidth_vswr_Hz", "q_unloaded", "loop_current_rms_A"}) {
        auto* why = find<QAbstractButton>(key);
        ASSERT_NE(why, nullptr);
        why->click();
        auto* dialog = window().findChild<dialogs::ExplanationDialog*>();
        ASSERT_NE(dialog, nullptr);
        EXPECT_TRUE(dialog->isVisible());
        EXPECT_FALSE(dialog->isModal());
        const auto* list = dialog->findChild<QListWidget*>();
        ASSERT_NE(list->currentItem(), nullptr) << key;
        EXPECT_EQ(list->currentItem()->data(Qt::UserRole).toString(), QLatin1String(key));
        EXPECT_GT(dialog->findChild<QTableWidget*>()->rowCount(), 0) << key;
    }
}

} // namespace
