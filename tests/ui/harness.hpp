#pragma once
// A window with settings and files of its own, and hands to use it with.
#include "app/main_window.hpp"
#include "settings/settings.hpp"

#include <QPalette>
#include <QTemporaryDir>
#include <QWidget>
#include <gtest/gtest.h>

#include <functional>
#include <memory>
#include <string>

class QAbstractSpinBox;
class QAction;
class QLineEdit;

namespace loopwright::test {

/// A palette as a dark desktop sets it, and the usual light one.
[[nodiscard]] QPalette dark_palette();
[[nodiscard]] QPalette light_palette();

/// Lets the event loop run until survey and headline point of the newest edit are there. False after five
/// seconds.
bool wait_for_survey(app::MainWindow& window);

/// The same until the sheet before keying is there with its unfavourable ends. False after a minute.
bool wait_for_keying(app::MainWindow& window);

/// Does `work` as soon as a modal dialog is open (a second at most), for code that opens one and waits.
void in_next_dialog(const std::function<void(QWidget* dialog)>& work);

/// Presses the button with a text (without its mnemonic) in a widget. False where there is none.
bool press_button(QWidget* in, const QString& text);

class WindowTest : public ::testing::Test {
protected:
    WindowTest();
    /// Opens the window at a size and waits until it can be typed in and its first survey is there.
    void open_window(const QSize& size = QSize(1280, 800));
    [[nodiscard]] QString file(const QString& name) const { return folder_.filePath(name); }
    [[nodiscard]] app::MainWindow& window() { return *window_; }
    [[nodiscard]] settings::Settings& settings() { return *settings_; }

    /// The widget named after a path in the design ("loop.size"); a test fails where there is none.
    template <class Widget>
    Widget* find(const std::string& name) {
        auto* found = window_->findChild<Widget*>(QString::fromStdString(name));
        EXPECT_NE(found, nullptr) << "no field " << name;
        return found;
    }
    /// Clicks into a field, replaces its text key by key; does not leave it.
    void type(const std::string& name, const QString& text);
    void press(Qt::Key key, Qt::KeyboardModifiers modifiers = Qt::NoModifier);
    /// The text a field shows.
    QString text(const std::string& name);
    /// An action of the menus by its text without mnemonic; a test fails where there is none.
    QAction* action(const QString& text);

    QTemporaryDir folder_;
    std::unique_ptr<settings::Settings> settings_;
    std::unique_ptr<app::MainWindow> window_;
};

} // namespace loopwright::test
