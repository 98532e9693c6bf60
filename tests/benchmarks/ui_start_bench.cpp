// Cold start to the first paint of the Bands page, each time in a process of its own; peak memory beside it.
#include "app/main_window.hpp"
#include "pages/bands_page.hpp"
#include "settings/settings.hpp"

#include <QAbstractScrollArea>
#include <QApplication>
#include <QElapsedTimer>
#include <QEvent>
#include <QFile>
#include <QProcess>
#include <QTabWidget>
#include <QTemporaryDir>
#include <benchmark/benchmark.h>

#include "charts/chart_grid.hpp"
#include "charts/chart_widget.hpp"

#include <cstdio>

namespace {

using namespace loopwright;

const QString child_word = QStringLiteral("--first-paint");

/// Ends the program when a chart with curves has been painted.
class FirstPaint : public QObject {
public:
    explicit FirstPaint(app::MainWindow& window) : window_(window) { qApp->installEventFilter(this); }

protected:
    bool eventFilter(QObject* object, QEvent* event) override {
        const bool here = event->type() == QEvent::Paint && window_.survey().result() &&
                          !window_.bands().grid().charts().empty();
        if (here && object == view()->viewport()) {
            QMetaObject::invokeMethod(qApp, &QCoreApplication::quit, Qt::QueuedConnection);
        }
        return false;
    }

private:
    QAbstractScrollArea* view() {
        return qobject_cast<QAbstractScrollArea*>(&window_.bands().grid().charts().front()->view());
    }
    app::MainWindow& window_;
};

int child(int argc, char** argv) {
    const QApplication application(argc, argv);
    const QTemporaryDir folder;
    settings::Settings settings(folder.filePath(QStringLiteral("settings.ini")));
    app::MainWindow window(settings, {});
    window.resize(1280, 800);
    window.pages().setCurrentWidget(&window.bands());
    window.show();
    FirstPaint wait(window);
    const int status = QApplication::exec();
    QFile memory(QStringLiteral("/proc/self/status"));
    static_cast<void>(memory.open(QIODevice::ReadOnly));
    for (const QByteArray& line : memory.readAll().split('\n')) {
        if (line.startsWith("VmHWM:")) {
            std::printf("%s\n", line.mid(6).trimmed().split(' ').front().constData());
        }
    }
    return status;
}

void first_paint_of_the_bands_page(benchmark::State& state) {
    double peak_MB = 0;
    for (auto _ : state) {
        QProcess process;
        QElapsedTimer clock;
        clock.start();
        process.start(QCoreApplication::applicationFilePath(), {child_word});
        process.waitForFinished(20000);
        state.SetIterationTime(static_cast<double>(clock.nsecsElapsed()) * 1e-9);
        if (process.exitStatus() != QProcess::NormalExit || process.exitCode() != 0) {
            state.SkipWithError("the window did not start");
            return;
        }
        peak_MB = std::max(peak_MB, process.readAllStandardOutput().trimmed().toDouble() / 1024.0);
    }
    state.counters["peak_MB"] = peak_MB;
}
BENCHMARK(first_paint_of_the_bands_page)->UseManualTime()->Unit(benchmark::kMillisecond)->Iterations(9);

} // namespace

int main(int argc, char** argv) {
    if (!qEnvironmentVariableIsSet("QT_QPA_PLATFORM")) {
        qputenv("QT_QPA_PLATFORM", "offscreen");
    }
    if (argc > 1 && QString::fromLocal8Bit(argv[1]) == child_word) {
        return child(argc, argv);
    }
    benchmark::Initialize(&argc, argv);
    const QCoreApplication application(argc, argv);
    benchmark::RunSpecifiedBenchmarks();
    return 0;
}
