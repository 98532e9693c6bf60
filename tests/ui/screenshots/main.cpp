// Renders every page at two sizes, light and dark, and the dialogs, into a folder: to be looked at.
#include "app/file_actions.hpp"
#include "app/samples.hpp"
#include "dialogs/caution_dialog.hpp"
#include "dialogs/own_loop_dialog.hpp"
#include "dialogs/start_dialog.hpp"
#include "pages/bands_height_view.hpp"
#include "pages/bands_models_view.hpp"
#include "pages/bands_page.hpp"
#include "pages/bands_pattern_view.hpp"
#include "pages/keying_details.hpp"
#include "pages/keying_page.hpp"
#include "pages/keying_pictures.hpp"
#include "pages/retune_card.hpp"
#include "pages/retune_page.hpp"
#include "ui/harness.hpp"
#include "ui/screenshots/figures.hpp"
#include "ui/screenshots/sections.hpp"

#include <QApplication>
#include <QDir>
#include <QFont>
#include <QTabWidget>
#include <QTest>

#include <array>
#include <cstdio>

namespace {

using namespace loopwright;

bool save(QWidget& widget, const QString& folder, const QString& name) {
    QCoreApplication::processEvents();
    const QString path = QDir(folder).filePath(name + QStringLiteral(".png"));
    const bool saved = widget.grab().save(path);
    std::printf("%s %s\n", saved ? "wrote" : "could not write", qPrintable(path));
    return saved;
}

bool save_dialog(QDialog& dialog, const QString& folder, const QString& name) {
    dialog.show();
    return save(dialog, folder, name);
}

/// Its figures and pictures there.
bool keying_ready(app::MainWindow& window) {
    constexpr int pause_ms = 400, patience_ms = 60000;
    const bool computed = test::wait_for_keying(window);
    QTest::qWait(pause_ms);
    return QTest::qWaitFor([&] { return !window.keying_page().pictures().job().stale(); }, patience_ms) &&
           computed;
}

/// Dial and card of the design as it is; a design without a dial gets a plain one for the picture.
bool retune_ready(app::MainWindow& window) {
    constexpr int patience_ms = 60000;
    if (!window.document().design().capacitor.dial) {
        design::Design next = window.document().design();
        next.capacitor.dial = design::Dial{};
        window.document().edit(next, {QStringLiteral("Dial"), {}, {}});
    }
    pages::RetunePage& page = window.retune();
    return QTest::qWaitFor(
        [&] {
            return page.dial().result() && !page.dial().stale() && page.card().job().result() &&
                   !page.card().job().stale();
        },
        patience_ms);
}

bool save_keying_groups(app::MainWindow& window, const QString& folder, const QString& scheme) {
    bool all = true;
    pages::KeyingPage& page = window.keying_page();
    window.pages().setCurrentWidget(&page);
    window.resize(1280, 800);
    for (const auto& [group, name] : {std::pair(pages::KeyingDetails::distances, "distances"),
                                      std::pair(pages::KeyingDetails::members, "members"),
                                      std::pair(pages::KeyingDetails::touch, "touch"),
                                      std::pair(pages::KeyingDetails::tuning, "tuning")}) {
        page.show_group(group);
        all = save(window, folder, QStringLiteral("keying-%1-%2").arg(QLatin1String(name), scheme)) && all;
    }
    page.show_group(pages::KeyingDetails::around);
    return all;
}

bool save_pages(app::MainWindow& window, const QString& folder, const QString& scheme) {
    bool all = true;
    for (const QSize& size : std::array{QSize(1280, 800), QSize(1920, 1080)}) {
        window.resize(size);
        for (int page = 0; page < window.pages().count(); ++page) {
            window.pages().setCurrentIndex(page);
            if (window.pages().currentWidget() == &window.keying_page()) {
                all = keying_ready(window) && all;
            } else if (window.pages().currentWidget() == &window.retune()) {
                all = retune_ready(window) && all;
            }
            const QString name = QStringLiteral("%1-%2x%3-%4")
                                     .arg(window.pages()
                                              .tabText(page)
                                              .toLower()
                                              .remove(QLatin1Char('&'))
                                              .replace(QLatin1Char(' '), QLatin1Char('-')))
                                     .arg(size.width())
                                     .arg(size.height())
                                     .arg(scheme);
            all = save(window, folder, name) && all;
        }
    }
    return all;
}

/// The groups of charts of the Bands page, each with its figures there.
bool save_groups(app::MainWindow& window, const QString& folder, const QString& scheme) {
    bool all = true;
    pages::BandsPage& bands = window.bands();
    window.pages().setCurrentWidget(&bands);
    constexpr int patience_ms = 60000;
    for (const int group :
         {pages::BandsPage::directions, pages::BandsPage::heights, pages::BandsPage::two_models}) {
        bands.show_group(group);
        QTest::qWait(400);
        all = QTest::qWaitFor(
                  [&] {
                      return group == pages::BandsPage::directions ? !bands.pattern().job().stale()
                             : group == pages::BandsPage::heights  ? !bands.height().job().stale()
                                                                   : bands.shown_charts() != nullptr;
                  },
                  patience_ms) &&
              all;
        for (const QSize& size : std::array{QSize(1280, 800), QSize(1920, 1080)}) {
            window.resize(size);
            const QString name = QStringLiteral("bands-%1-%2x%3-%4")
                                     .arg(QStringList{QString(), "directions", "height", "models"}.at(group))
                                     .arg(size.width())
                                     .arg(size.height())
                                     .arg(scheme);
            all = save(window, folder, name) && all;
        }
    }
    bands.show_group(pages::BandsPage::over_frequency);
    return all;
}

bool save_dialogs(const QString& folder, const QString& scheme) {
    dialogs::CautionDialog caution;
    QList<design::Design> designs;
    for (const app::Sample& sample : app::samples()) {
        designs << sample.design;
    }
    dialogs::StartDialog start(designs);
    dialogs::OwnLoopDialog own(units::UnitSystem::metric);
    const bool first = save_dialog(caution, folder, QStringLiteral("caution-") + scheme);
    const bool second = save_dialog(start, folder, QStringLiteral("start-") + scheme);
    return save_dialog(own, folder, QStringLiteral("own-loop-") + scheme) && first && second;
}

} // namespace

int main(int argc, char** argv) {
    if (!qEnvironmentVariableIsSet("QT_QPA_PLATFORM")) {
        qputenv("QT_QPA_PLATFORM", "offscreen");
    }
    QApplication application(argc, argv);
    const QString folder = argc > 1 ? QString::fromLocal8Bit(argv[1]) : QStringLiteral("screenshots");
    QDir().mkpath(folder);
    QTemporaryDir home;
    if (argc > 2 && qstrcmp(argv[2], "figures") == 0) { // only the figures
        return test::save_figures(folder, QStringLiteral("light")) ? 0 : 1;
    }
    settings::Settings settings(home.filePath(QStringLiteral("settings.ini")));
    app::MainWindow window(settings, {});
    if (argc > 2) {
        window.document().open(QString::fromLocal8Bit(argv[2]));
    } else if (!app::samples().isEmpty()) {
        window.document().start_from(app::samples().front().design);
    }
    window.show();
    bool all = test::wait_for_survey(window) && test::wait_for_keying(window);
    for (const bool dark : {false, true}) {
        QApplication::setPalette(dark ? test::dark_palette() : test::light_palette());
        const QString scheme = dark ? QStringLiteral("dark") : QStringLiteral("light");
        all = save_pages(window, folder, scheme) && all;
        settings.set_other_model_beside(true);
        settings.set_current_drawn(true);
        all = test::wait_for_survey(window) && all;
        window.pages().setCurrentIndex(0);
        all = save(window, folder, QStringLiteral("build-both-models-") + scheme) && all;
        settings.set_other_model_beside(false);
        settings.set_current_drawn(false);
        all = save_groups(window, folder, scheme) && all;
        all = save_keying_groups(window, folder, scheme) && all;
        all = test::save_coupling(window, folder, scheme) && all;
        all = save_dialogs(folder, scheme) && all;
        all = test::save_more_dialogs(window, folder, scheme) && all;
        all = test::save_figures(folder, scheme) && all;
    }
    return all ? 0 : 1;
}
