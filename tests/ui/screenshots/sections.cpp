#include "ui/screenshots/sections.hpp"

#include "coupling/coupling_size.hpp"
#include "dialogs/explanation_dialog.hpp"
#include "dialogs/text_dialog.hpp"
#include "inputs/fold.hpp"
#include "pages/bands_page.hpp"
#include "pages/coupling_panel.hpp"
#include "printing/chart_export.hpp"
#include "ui/harness.hpp"

#include <QDir>
#include <QScrollArea>
#include <QScrollBar>
#include <QTabWidget>
#include <QTest>

#include <array>
#include <cstdio>

namespace loopwright::test {

namespace {

bool save(QWidget& widget, const QString& folder, const QString& name) {
    QCoreApplication::processEvents();
    const QString path = QDir(folder).filePath(name + QStringLiteral(".png"));
    const bool saved = widget.grab().save(path);
    std::printf("%s %s\n", saved ? "wrote" : "could not write", qPrintable(path));
    return saved;
}

design::FeedLine line_with_loss() {
    return {units::metres(12),
            units::ohms(50),
            {{units::megahertz(10), units::DecibelPerMetre{0.045}},
             {units::megahertz(30), units::DecibelPerMetre{0.08}}}};
}

} // namespace

bool save_coupling(app::MainWindow& window, const QString& folder, const QString& scheme) {
    const design::Design before = window.document().design();
    auto* fold = window.findChild<inputs::Fold*>(QStringLiteral("group.coupling"));
    auto* panel = window.findChild<pages::CouplingPanel*>();
    auto* form = window.findChild<QScrollArea*>(QStringLiteral("build.form"));
    window.pages().setCurrentIndex(0);
    fold->set_unfolded(true);
    bool all = true;
    const QStringList names = {QStringLiteral("loop"), QStringLiteral("tap"), QStringLiteral("transformer")};
    for (int kind = 0; kind < names.size(); ++kind) {
        design::Design design = before;
        design.loop.turns = 1; // a tap needs it
        design.coupling = coupling::coupling_of_kind(design, static_cast<design::CouplingKind>(kind));
        design.feed_line = line_with_loss();
        window.document().edit(design, {QStringLiteral("Coupling"), {}, {}});
        all =
            QTest::qWaitFor([&] { return panel->match().result() && !panel->match().stale(); }, 30000) && all;
        for (const QSize& size : std::array{QSize(1280, 800), QSize(1920, 1080)}) {
            window.resize(size);
            QCoreApplication::processEvents();
            int part = 0;
            for (const QWidget* top : std::array<QWidget*, 2>{fold, panel}) {
                form->verticalScrollBar()->setValue(top->mapTo(form->widget(), QPoint(0, 0)).y());
                all = save(window, folder,
                           QStringLiteral("coupling-%1-%2-%3x%4-%5")
                               .arg(names[kind], QString::number(++part))
                               .arg(size.width())
                               .arg(size.height())
                               .arg(scheme)) &&
                      all;
            }
        }
    }
    window.document().edit(before, {QStringLiteral("Coupling"), {}, {}});
    fold->set_unfolded(false);
    form->verticalScrollBar()->setValue(0);
    return wait_for_survey(window) && all;
}

bool save_more_dialogs(app::MainWindow& window, const QString& folder, const QString& scheme) {
    bool all = true;
    const auto show = [&](QDialog& dialog, const char* name) {
        dialog.show();
        all = save(dialog, folder, QStringLiteral("%1-%2").arg(QLatin1String(name), scheme)) && all;
    };
    dialogs::TextDialog numbers(QStringLiteral("Where the numbers come from"), dialogs::numbers_text());
    show(numbers, "dialog-numbers");
    dialogs::TextDialog about(QStringLiteral("About Loopwright"), dialogs::about_text());
    show(about, "dialog-about");
    dialogs::ExplanationDialog explanation;
    const auto point = window.point().result();
    explanation.set_point(point->request.design, point->point, units::UnitSystem::metric);
    show(explanation, "dialog-explanation");
    printing::ChartExport what;
    what.charts = *window.bands().shown_charts();
    what.folder = folder;
    printing::ChartExportDialog exports(what, -1, {});
    show(exports, "dialog-export");
    return all;
}

} // namespace loopwright::test
