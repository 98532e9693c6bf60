#include "ui/harness.hpp"

#include <QAbstractButton>
#include <QAbstractSpinBox>
#include <QAction>
#include <QApplication>
#include <QElapsedTimer>
#include <QLineEdit>
#include <QPointer>
#include <QTest>
#include <QTimer>

namespace loopwright::test {

namespace {

constexpr int patience_ms = 30000; // of a busy machine; a test that passes never waits it out
constexpr int look_again_ms = 20;

QString without_mnemonic(QString text) {
    return text.remove(QLatin1Char('&'));
}

} // namespace

QPalette dark_palette() {
    const QColor window(45, 45, 48), base(30, 30, 32), text(230, 230, 230), grey(150, 150, 150);
    QPalette palette(window, window);
    for (const auto role :
         {QPalette::WindowText, QPalette::Text, QPalette::ButtonText, QPalette::ToolTipText}) {
        palette.setColor(role, text);
    }
    palette.setColor(QPalette::Base, base);
    palette.setColor(QPalette::AlternateBase, QColor(52, 52, 56));
    palette.setColor(QPalette::ToolTipBase, window);
    palette.setColor(QPalette::PlaceholderText, grey);
    palette.setColor(QPalette::Midlight, QColor(110, 110, 115));
    palette.setColor(QPalette::Highlight, QColor(60, 110, 180));
    palette.setColor(QPalette::HighlightedText, QColor(255, 255, 255));
    palette.setColor(QPalette::Link, QColor(120, 170, 255));
    for (const auto role : {QPalette::WindowText, QPalette::Text, QPalette::ButtonText}) {
        palette.setColor(QPalette::Disabled, role, grey);
    }
    return palette;
}

QPalette light_palette() {
    static const QPalette usual = QApplication::palette();
    return usual;
}

bool wait_for_survey(app::MainWindow& window) {
    QElapsedTimer clock;
    clock.start();
    while (clock.elapsed() < patience_ms) {
        QCoreApplication::processEvents(QEventLoop::AllEvents, look_again_ms);
        if (window.survey().result() && !window.survey().stale() && window.point().result() &&
            !window.point().stale()) {
            QCoreApplication::processEvents();
            return true;
        }
    }
    return false;
}

bool wait_for_keying(app::MainWindow& window) {
    constexpr int long_patience_ms = 60000;
    QElapsedTimer clock;
    clock.start();
    while (clock.elapsed() < long_patience_ms) {
        QCoreApplication::processEvents(QEventLoop::AllEvents, look_again_ms);
        const jobs::KeyingJob& keying = window.keying();
        if (keying.settled() && keying.result()->request.design == window.document().design()) {
            QCoreApplication::processEvents();
            return true;
        }
    }
    return false;
}

void in_next_dialog(const std::function<void(QWidget* dialog)>& work) {
    auto* timer = new QTimer(qApp);
    const QPointer<QWidget> before = QApplication::activeModalWidget();
    timer->setInterval(look_again_ms);
    QObject::connect(timer, &QTimer::timeout, timer,
                     [timer, work, before, left = patience_ms / look_again_ms]() mutable {
                         QWidget* dialog = QApplication::activeModalWidget();
                         if (dialog == before) {
                             dialog = nullptr; // the one that is still closing
                         }
                         if (dialog == nullptr && --left > 0) {
                             return;
                         }
                         timer->stop();
                         timer->deleteLater();
                         if (dialog == nullptr) {
                             ADD_FAILURE() << "no dialog opened";
                             return;
                         }
                         work(dialog);
                     });
    timer->start();
}

bool press_button(QWidget* in, const QString& text) {
    for (QAbstractButton* button : in->findChildren<QAbstractButton*>()) {
        if (without_mnemonic(button->text()) == text && button->isVisible()) {
            QTest::mouseClick(button, Qt::LeftButton);
            return true;
        }
    }
    return false;
}

WindowTest::WindowTest() {
    QApplication::setAttribute(Qt::AA_DontUseNativeDialogs);
    settings_ = std::make_unique<settings::Settings>(file(QStringLiteral("settings.ini")));
    settings_->set_caution_read(true);
    settings_->set_last_folder(folder_.path());
}

void WindowTest::open_window(const QSize& size) {
    window_ = std::make_unique<app::MainWindow>(*settings_, file(QStringLiteral("recovery")));
    window_->resize(size);
    window_->show();
    window_->activateWindow();
    ASSERT_TRUE(QTest::qWaitForWindowActive(window_.get()));
    ASSERT_TRUE(wait_for_survey(*window_));
}

void WindowTest::type(const std::string& name, const QString& text) {
    auto* field = find<QWidget>(name);
    ASSERT_NE(field, nullptr);
    auto* line = qobject_cast<QLineEdit*>(field);
    if (line == nullptr) {
        line = field->findChild<QLineEdit*>();
    }
    ASSERT_NE(line, nullptr);
    field->setFocus(Qt::MouseFocusReason);
    line->selectAll();
    QTest::keyClick(line, Qt::Key_Delete);
    QTest::keyClicks(line, text);
}

void WindowTest::press(Qt::Key key, Qt::KeyboardModifiers modifiers) {
    QTest::keyClick(QApplication::focusWidget() != nullptr ? QApplication::focusWidget() : window_.get(), key,
                    modifiers);
}

QString WindowTest::text(const std::string& name) {
    auto* field = find<QWidget>(name);
    auto* line = field == nullptr ? nullptr : field->findChild<QLineEdit*>();
    return line == nullptr ? QString() : line->text();
}

QAction* WindowTest::action(const QString& text) {
    for (QAction* action : window_->findChildren<QAction*>()) {
        if (without_mnemonic(action->text()) == text) {
            return action;
        }
    }
    ADD_FAILURE() << "no action " << text.toStdString();
    return nullptr;
}

} // namespace loopwright::test
