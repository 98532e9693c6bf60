// Smith chart and VSWR curve of the Build page written to files, as a person does it.
#include "charts/figure_widget.hpp"
#include "coupling/match_report.hpp"
#include "field/pattern.hpp"
#include "inputs/fold.hpp"
#include "pages/bands_height_view.hpp"
#include "pages/bands_page.hpp"
#include "pages/bands_pattern_view.hpp"
#include "pages/coupling_panel.hpp"
#include "report/height.hpp"
#include "report/match.hpp"
#include "report/pattern.hpp"
#include "report/tables.hpp"
#include "ui/harness.hpp"

#include <QAction>
#include <QComboBox>
#include <QDialog>
#include <QDoubleSpinBox>
#include <QFile>
#include <QFileDialog>
#include <QImage>
#include <QLineEdit>
#include <QMenu>
#include <QRegularExpression>
#include <QTest>

using namespace loopwright;

namespace {

constexpr int patience_ms = 20000;

class WindowMatchExportTest : public test::WindowTest {
protected:
    void SetUp() override {
        design::Design design;
        design.title = "Made for export";
        design.coupling = design::Coupling{};
        open_window();
        window().document().start_from(design);
        find<inputs::Fold>("group.coupling")->set_unfolded(true);
        panel_ = window().findChild<pages::CouplingPanel*>();
        ASSERT_TRUE(QTest::qWaitFor([this] { return panel_->match().result() && !panel_->match().stale(); },
                                    patience_ms));
        ASSERT_TRUE(test::wait_for_survey(window())); // the origin names its design
    }
    /// Chooses an entry of a figure's menu.
    static void choose(charts::FigureWidget& figure, const QString& text) {
        for (QAction* action : figure.findChildren<QAction*>()) {
            if (QString(action->text()).remove(QLatin1Char('&')) == text) {
                EXPECT_TRUE(action->isVisible());
                action->trigger();
                return;
            }
        }
        ADD_FAILURE() << "no entry " << text.toStdString();
    }
    void export_as(charts::FigureWidget& figure, const QString& ending) {
        test::in_next_dialog([this, ending](QWidget* dialog) {
            for (QComboBox* box : dialog->findChildren<QComboBox*>()) {
                if (const int at = box->findData(ending); at >= 0) {
                    box->setCurrentIndex(at);
                }
            }
            for (QLineEdit* line : dialog->findChildren<QLineEdit*>()) {
                if (line->accessibleName() == QStringLiteral("Folder")) {
                    line->setText(folder_.path());
                }
            }
            EXPECT_TRUE(test::press_button(dialog, QStringLiteral("Write files")));
        });
        choose(figure, QStringLiteral("Export picture…"));
    }
    QByteArray content(const QString& name) {
        QFile written(file(name));
        EXPECT_TRUE(written.open(QIODevice::ReadOnly)) << name.toStdString();
        return written.readAll();
    }
    pages::CouplingPanel* panel_ = nullptr;
};

TEST_F(WindowMatchExportTest, SmithChartAsPixelsAtTrueSize) {
    export_as(panel_->smith(), QStringLiteral("png"));
    const QImage picture(file(QStringLiteral("made-for-export-smith.png")));
    ASSERT_FALSE(picture.isNull());
    // 160 mm wide at 300 dots an inch.
    EXPECT_NEAR(picture.width(), 160.0 / 25.4 * 300.0, 1.0);
    EXPECT_NEAR(picture.dotsPerMeterX(), 300.0 / 0.0254, 1.0);
    EXPECT_EQ(picture.pixelColor(1, 1), QColor(Qt::white)) << "paper, whatever the window's colours";
}

TEST_F(WindowMatchExportTest, VswrCurveAsLinesAtTrueSize) {
    export_as(panel_->curve(), QStringLiteral("svg"));
    const QString svg = QString::fromUtf8(content(QStringLiteral("made-for-export-vswr.svg")));
    const auto width =
        QRegularExpression(QStringLiteral("<svg width=\"([0-9.]+)mm\"")).match(svg).captured(1).toDouble();
    EXPECT_NEAR(width, 160.0, 0.2) << svg.left(400).toStdString(); // whole units of 1/96 inch
    EXPECT_TRUE(svg.contains(QStringLiteral("Made for export")));
    export_as(panel_->curve(), QStringLiteral("pdf"));
    const QByteArray pdf = content(QStringLiteral("made-for-export-vswr.pdf"));
    EXPECT_TRUE(pdf.startsWith("%PDF"));
    // 160 mm are 453.5 points.
    const QRegularExpression box(QStringLiteral("/MediaBox \\[0 0 ([0-9.]+) "));
    const auto found = box.match(QString::fromLatin1(pdf));
    ASSERT_TRUE(found.hasMatch());
    EXPECT_NEAR(found.captured(1).toDouble(), 160.0 / 25.4 * 72.0, 1.0);
}

TEST_F(WindowMatchExportTest, VswrCurveAsATable) {
    const QString name = file(QStringLiteral("curve.csv"));
    test::in_next_dialog([name](QWidget* dialog) {
        auto* files = qobject_cast<QFileDialog*>(dialog);
        ASSERT_NE(files, nullptr);
        auto* line = files->findChild<QLineEdit*>(QStringLiteral("fileNameEdit"));
        ASSERT_NE(line, nullptr);
        line->setText(name);
        QTest::keyClick(line, Qt::Key_Return);
    });
    choose(panel_->curve(), QStringLiteral("Export table as CSV…"));
    const auto& design = window().document().design();
    const auto report =
        coupling::match_report(design, window().focus().frequency(), design.station.power.value, 2.0);
    EXPECT_EQ(content(QStringLiteral("curve.csv")).toStdString(),
              report::to_csv(report::match_curve_data(report)));
}

/// Picks a name in the next dialog for files.
void name_next_file(const QString& name) {
    test::in_next_dialog([name](QWidget* dialog) {
        auto* line = dialog->findChild<QLineEdit*>(QStringLiteral("fileNameEdit"));
        ASSERT_NE(line, nullptr);
        line->setText(name);
        QTest::keyClick(line, Qt::Key_Return);
    });
}

TEST_F(WindowMatchExportTest, HeightAndDirectionsAsTables) {
    design::Design design = window().document().design();
    design.site.ground.kind = design::GroundKind::perfect;
    window().document().edit(design, {QStringLiteral("Ground"), {}, {}});
    auto& page = window().bands();
    window().pages().setCurrentWidget(&page);
    const auto there = [](pages::FocusedView& view) {
        return QTest::qWaitFor(
            [&view] {
                for (const QAction* action : view.figures()[0]->findChildren<QAction*>()) {
                    if (action->text().contains(QStringLiteral("CSV"))) {
                        return action->isVisible() && !view.job().stale();
                    }
                }
                return false;
            },
            patience_ms);
    };
    page.show_group(pages::BandsPage::heights);
    ASSERT_TRUE(there(page.height()));
    name_next_file(file(QStringLiteral("height.csv")));
    choose(*page.height().figures()[0], QStringLiteral("Export table as CSV…"));
    EXPECT_TRUE(content(QStringLiteral("height.csv")).startsWith("lowest_point_m,"))
        << content(QStringLiteral("height.csv")).left(80).toStdString();
    page.show_group(pages::BandsPage::directions);
    ASSERT_TRUE(there(page.pattern()));
    name_next_file(file(QStringLiteral("directions.csv")));
    choose(*page.pattern().figures()[1], QStringLiteral("Export table as CSV…"));
    const auto pattern = field::pattern(design, window().focus().frequency(), page.pattern().request());
    ASSERT_TRUE(pattern);
    EXPECT_EQ(content(QStringLiteral("directions.csv")).toStdString(),
              report::to_csv(report::pattern_data({design, window().focus().frequency(), pattern, {}})));
}

TEST_F(WindowMatchExportTest, CurvesOfBothModelsAsATable) {
    auto& page = window().bands();
    window().pages().setCurrentWidget(&page);
    QMenu* menu = nullptr;
    QAction* entry = nullptr;
    for (QMenu* one : page.findChildren<QMenu*>()) {
        for (QAction* action : one->actions()) {
            if (action->text().contains(QStringLiteral("both &models"))) {
                menu = one;
                entry = action;
            }
        }
    }
    ASSERT_NE(entry, nullptr);
    Q_EMIT menu->aboutToShow();
    EXPECT_FALSE(entry->isEnabled()) << "the other model is not computed before it is looked at";
    page.show_group(pages::BandsPage::two_models);
    ASSERT_TRUE(QTest::qWaitFor([&] { return page.shown_charts() != nullptr; }, patience_ms));
    Q_EMIT menu->aboutToShow();
    ASSERT_TRUE(entry->isEnabled());
    name_next_file(file(QStringLiteral("models.csv")));
    entry->trigger();
    survey::Request request = window().survey().result()->request;
    const survey::Survey full = survey::run(request);
    request.model = loop::Model::closed_form;
    EXPECT_EQ(content(QStringLiteral("models.csv")).toStdString(),
              report::to_csv(report::models_data(survey::run(request), full)));
}

} // namespace
