// The same of dialogs, questions, refusals and paper.
#include "app/file_actions.hpp"
#include "dialogs/caution_dialog.hpp"
#include "dialogs/explanation_dialog.hpp"
#include "dialogs/own_loop_dialog.hpp"
#include "dialogs/start_dialog.hpp"
#include "dialogs/text_dialog.hpp"
#include "inputs/quantity_field.hpp"
#include "pages/bands_page.hpp"
#include "printing/card_sheet.hpp"
#include "printing/chart_export.hpp"
#include "printing/keying_sheet.hpp"
#include "printing/sheet.hpp"
#include "survey/card.hpp"
#include "ui/translation_fixture.hpp"

#include <QBuffer>
#include <QFile>
#include <QLocale>
#include <QPainter>
#include <QSvgGenerator>
#include <QTabWidget>

using namespace loopwright;
using test::TranslationTest;

namespace {

TEST_F(TranslationTest, Dialogs) {
    QList<design::Design> designs;
    for (const app::Sample& sample : app::samples()) {
        designs << sample.design;
    }
    core_->add(window());
    dialogs::CautionDialog caution;
    check_dialog(caution);
    dialogs::StartDialog start(designs);
    check_dialog(start);
    dialogs::OwnLoopDialog own(units::UnitSystem::metric);
    check_dialog(own);
    dialogs::TextDialog numbers(QString(), dialogs::numbers_text());
    check_dialog(numbers);
    dialogs::TextDialog about(QString(), dialogs::about_text());
    check_dialog(about);
    core_->add_explanations(window());
    dialogs::ExplanationDialog explanation;
    const auto point = window().point().result();
    explanation.set_point(point->request.design, point->point, units::UnitSystem::metric);
    check_dialog(explanation);
    window().pages().setCurrentWidget(&window().bands());
    printing::ChartExport what;
    what.charts = *window().bands().shown_charts();
    what.folder = folder_.path();
    core_->add(what.folder);
    printing::ChartExportDialog exports(what, -1, {});
    check_dialog(exports);
    EXPECT_GT(wide_, 100);
}

class TranslationOfQuestions : public TranslationTest {
protected:
    /// What is said in the next dialog, which is then left by Escape.
    void look_at_next() {
        test::in_next_dialog([this](QWidget* dialog) {
            for (const test::ShownText& shown : test::texts_of(*dialog)) {
                if (!shown.where.contains(
                        QStringLiteral("cell"))) { // names of files and when they were changed
                    check({shown});
                }
            }
            QTest::keyClick(dialog, Qt::Key_Escape);
        });
    }
};

TEST_F(TranslationOfQuestions, Files) {
    core_->add(folder_.path());
    core_->add(QStringLiteral("*.loop"));
    look_at_next();
    EXPECT_FALSE(window().files().open_with_dialog());
    look_at_next();
    EXPECT_FALSE(window().files().save_as());
    type("station.power", QStringLiteral("7 W"));
    press(Qt::Key_Return);
    ASSERT_TRUE(window().document().is_dirty());
    core_->add(window());
    look_at_next();
    EXPECT_FALSE(window().files().start_new());
    EXPECT_GT(wide_, 20);
}

TEST_F(TranslationTest, Refusals) {
    for (const char* field : {"loop.size", "station.power", "capacitor.minimum"}) {
        for (const char* typed : {"xyzzy", "5 xyzzy", "-77"}) {
            const QString wrong = QString::fromLatin1(typed);
            type(field, wrong);
            press(Qt::Key_Return);
            const QString refusal = find<inputs::QuantityField>(field)->refusal();
            ASSERT_FALSE(refusal.isEmpty()) << field << typed;
            // What would be accepted is said by the core, behind the colon.
            EXPECT_TRUE(refusal.contains(wrong)) << refusal.toStdString();
            check({{QString::fromLatin1(field), refusal.section(QLatin1String(": "), 0, 0).remove(wrong)}});
        }
    }
    EXPECT_GT(wide_, 5);
}

QStringList letters_of(const printing::Paper& paper) {
    QBuffer buffer;
    QSvgGenerator picture;
    picture.setOutputDevice(&buffer);
    constexpr double units_per_mm = 4;
    const QSizeF a4(186, 273);
    picture.setSize((a4 * units_per_mm).toSize());
    QPainter painter(&picture);
    paper.paint(painter, QPointF(), units_per_mm, a4);
    painter.end();
    return test::letters_of_svg(buffer.data()) << paper.title;
}

TEST_F(TranslationTest, Paper) {
    ASSERT_TRUE(test::wait_for_keying(window()));
    core_->add(window());
    const auto keying = window().keying().result();
    const QString file = QStringLiteral("made.loop");
    core_->add(file);
    survey::CardRequest request;
    request.design = window().document().design();
    request.design.capacitor.dial = design::Dial{};
    const auto card = std::make_shared<const survey::Card>(survey::card(request));
    core_->add(*card);
    for (const units::UnitSystem system : {units::UnitSystem::metric, units::UnitSystem::imperial}) {
        const QDate date(2026, 11, 26);
        core_->add(QLocale().toString(date, QLocale::LongFormat)); // as the locale writes it
        const printing::SheetData sheet{window().survey().result(), file, date, system, keying};
        const printing::KeyingSheetData before{keying, printing::planned_plot(*keying, system), file, date,
                                               system};
        const printing::CardSheetData dial{card, keying, file, date, system, false};
        for (const printing::Paper& paper : {paper_of(sheet), paper_of(before), paper_of(dial)}) {
            const QString letters = letters_of(paper).join(u' '); // lines of one sentence follow each other
            check({{paper.title, letters}});
            EXPECT_GT(letters.count(QRegularExpression(QStringLiteral("[\uFF21-\uFF5A]"))), 500);
        }
    }
    EXPECT_EQ(wide_, 6);
}

} // namespace
