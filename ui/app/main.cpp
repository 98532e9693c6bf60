// The workbench. Usage: loopwright [FILE], or without a display loopwright --write DIR FILE, or --card
// OUT.pdf FILE
#include "app/main_window.hpp"
#include "base/version.hpp"
#include "printing/headless.hpp"
#include "printing/headless_card.hpp"

#include <QApplication>
#include <QCommandLineParser>
#include <QIcon>
#include <QStandardPaths>

#include <algorithm>
#include <string_view>

namespace {

/// Help and version are texts; they come on a machine without a display too.
bool asks_for_text(int argc, char** argv) {
    return std::any_of(argv + 1, argv + argc, [](const char* word) {
        const std::string_view given(word);
        return given == "--version" || given == "-v" || given == "--help" || given == "-h" ||
               given == "--help-all";
    });
}

} // namespace

int main(int argc, char** argv) {
    using namespace loopwright;
    if (const auto status = printing::run_headless(argc, argv)) {
        return *status;
    }
    if (const auto status = printing::run_headless_card(argc, argv)) {
        return *status;
    }
    if (asks_for_text(argc, argv)) {
        qputenv("QT_QPA_PLATFORM", "offscreen");
    }
    QApplication application(argc, argv);
    QApplication::setApplicationName(QStringLiteral("loopwright"));
    QApplication::setApplicationDisplayName(QStringLiteral("Loopwright"));
    QApplication::setApplicationVersion(QString::fromLatin1(base::version));
    QApplication::setDesktopFileName(QStringLiteral("org.loopwright.workbench"));
    QApplication::setWindowIcon(QIcon(QStringLiteral(":/desktop/org.loopwright.workbench.svg")));

    QCommandLineParser parser;
    parser.setApplicationDescription(QApplication::translate(
        "main", "Workbench for designing and tuning small transmitting loop antennas."));
    parser.addHelpOption();
    parser.addVersionOption();
    parser.addPositionalArgument(QStringLiteral("FILE"),
                                 QApplication::translate("main", "Design file to open."),
                                 QStringLiteral("[FILE]"));
    // Handled before, by printing::run_headless: here for the help.
    parser.addOption(
        {QStringLiteral("write"),
         QApplication::translate("main", "Write page, charts and tables of FILE to the folder and end; "
                                         "needs no display."),
         QStringLiteral("folder")});
    parser.addOption(
        {QStringLiteral("card"),
         QApplication::translate("main", "Write the printed retune card of FILE and end; needs no "
                                         "display. With --pocket the half page; --region, --vswr "
                                         "and --power as loopwright-cli card has them."),
         QStringLiteral("pdf")});
    parser.addOption({QStringLiteral("paper"),
                      QApplication::translate("main", "With --write and --card: a4 or letter."),
                      QStringLiteral("size")});
    parser.process(application);
    const QString file = parser.positionalArguments().value(0);

    settings::Settings settings;
    const QString data = QStandardPaths::writableLocation(QStandardPaths::AppLocalDataLocation);
    app::MainWindow window(settings, data + QStringLiteral("/recovery"));
    window.show();
    QMetaObject::invokeMethod(
        &window, [&window, file] { window.begin(file); }, Qt::QueuedConnection);
    return QApplication::exec();
}
