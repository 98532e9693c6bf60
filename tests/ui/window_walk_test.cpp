// Walks over every widget of the window: nothing without a name, nothing out of reach of the keyboard,
// nothing cut off.
#include "inputs/fold.hpp"
#include "ui/harness.hpp"

#include <QAbstractButton>
#include <QAbstractSpinBox>
#include <QApplication>
#include <QComboBox>
#include <QLabel>
#include <QLineEdit>
#include <QScrollArea>
#include <QSet>
#include <QTabBar>
#include <QTabWidget>
#include <QTest>

using namespace loopwright;

namespace {

bool is_input(const QWidget* widget) {
    if (widget->objectName().startsWith(QStringLiteral("qt_"))) {
        return false; // parts of Qt's own widgets
    }
    const bool part_of_another = qobject_cast<const QLineEdit*>(widget) != nullptr &&
                                 (qobject_cast<const QAbstractSpinBox*>(widget->parentWidget()) != nullptr ||
                                  qobject_cast<const QComboBox*>(widget->parentWidget()) != nullptr);
    return !part_of_another && (qobject_cast<const QLineEdit*>(widget) != nullptr ||
                                qobject_cast<const QComboBox*>(widget) != nullptr ||
                                qobject_cast<const QAbstractSpinBox*>(widget) != nullptr ||
                                qobject_cast<const QAbstractButton*>(widget) != nullptr);
}

std::string describe(const QWidget* widget) {
    return std::string(widget->metaObject()->className()) + " '" + widget->objectName().toStdString() +
           "' in " + widget->parentWidget()->metaObject()->className();
}

class WindowWalkTest : public test::WindowTest {
protected:
    void SetUp() override {
        open_window();
        for (inputs::Fold* fold : window().findChildren<inputs::Fold*>()) {
            fold->set_unfolded(true);
        }
        QCoreApplication::processEvents();
    }
    QList<QWidget*> inputs() {
        QList<QWidget*> found;
        for (QWidget* widget : window().findChildren<QWidget*>()) {
            if (is_input(widget)) {
                found << widget;
            }
        }
        EXPECT_GT(found.size(), 40);
        return found;
    }
};

TEST_F(WindowWalkTest, EveryInputHasNameAndTooltip) {
    for (const QWidget* widget : inputs()) {
        const auto* button = qobject_cast<const QAbstractButton*>(widget);
        const bool named =
            !widget->accessibleName().isEmpty() || (button != nullptr && button->text().size() > 1);
        if (widget->objectName().startsWith(QStringLiteral("Scroll"))) {
            continue; // the tab bar's own arrows, which only show where the tabs do not fit
        }
        EXPECT_TRUE(named) << describe(widget);
        EXPECT_FALSE(widget->toolTip().isEmpty()) << describe(widget);
    }
}

TEST_F(WindowWalkTest, EveryFieldHasALabelThatPointsToIt) {
    QSet<const QWidget*> labelled;
    for (const QLabel* label : window().findChildren<QLabel*>()) {
        if (label->buddy() != nullptr) {
            labelled.insert(label->buddy());
        }
    }
    for (const QWidget* widget : inputs()) {
        const bool field = qobject_cast<const QAbstractButton*>(widget) == nullptr;
        if (field && widget->objectName() != QStringLiteral("focus.band") &&
            !QString::fromStdString(describe(widget)).contains(QStringLiteral("joints"))) {
            EXPECT_TRUE(labelled.contains(widget)) << describe(widget);
        }
    }
}

TEST_F(WindowWalkTest, TabReachesEveryInput) {
    QSet<const QWidget*> reached;
    find<QWidget>("focus.frequency")->setFocus();
    for (int step = 0; step < 400; ++step) {
        const QWidget* focused = QApplication::focusWidget();
        ASSERT_NE(focused, nullptr);
        if (reached.contains(focused)) {
            break;
        }
        reached.insert(focused);
        QTest::keyClick(QApplication::focusWidget(), Qt::Key_Tab);
    }
    for (QWidget* widget : inputs()) {
        if (widget->isVisible() && widget->isEnabled() && (widget->focusPolicy() & Qt::TabFocus) != 0) {
            EXPECT_TRUE(reached.contains(widget)) << describe(widget);
        }
    }
}

TEST_F(WindowWalkTest, TabGoesDownTheForm) {
    const QWidget* form = find<QScrollArea>("build.form")->widget();
    find<QWidget>("loop.outline")->setFocus();
    int last = -1, steps = 0;
    while (form->isAncestorOf(QApplication::focusWidget())) {
        QWidget* focused = QApplication::focusWidget();
        const int here = focused->mapTo(form, QPoint(0, focused->height() / 2)).y();
        EXPECT_GE(here + focused->height() / 2, last) << describe(focused);
        last = here;
        ++steps;
        QTest::keyClick(focused, Qt::Key_Tab);
    }
    EXPECT_GT(steps, 30);
}

/// What can be seen together: Alt and a letter goes to what is shown, whatever the other pages have.
TEST_F(WindowWalkTest, MnemonicsOfAPageAreUnique) {
    for (int page = 0; page < window().pages().count(); ++page) {
        window().pages().setCurrentIndex(page);
        QCoreApplication::processEvents();
        QHash<QString, QString> taken;
        const auto take = [&taken](const QString& text) {
            const auto at = text.indexOf(QLatin1Char('&'));
            if (at < 0 || at + 1 >= text.size() || text.at(at + 1) == QLatin1Char('&')) {
                return;
            }
            const QString key = text.mid(at + 1, 1).toLower();
            EXPECT_FALSE(taken.contains(key))
                << text.toStdString() << " and " << taken.value(key).toStdString();
            taken.insert(key, text);
        };
        for (const QWidget* widget : window().findChildren<QWidget*>()) {
            if (!widget->isVisible()) {
                continue;
            }
            if (const auto* label = qobject_cast<const QLabel*>(widget);
                label != nullptr && label->buddy() != nullptr) {
                take(label->text());
            } else if (const auto* button = qobject_cast<const QAbstractButton*>(widget);
                       button != nullptr && is_input(widget)) {
                take(button->text());
            } else if (const auto* tabs = qobject_cast<const QTabBar*>(widget)) {
                for (int i = 0; i < tabs->count(); ++i) {
                    take(tabs->tabText(i));
                }
            }
        }
        EXPECT_GE(taken.size(), 4) << page;
    }
}

TEST_F(WindowWalkTest, NothingIsCutOffAtAnySize) {
    for (const QSize& size : {QSize(1280, 800), QSize(1920, 1080), QSize(1000, 600)}) {
        window().resize(size);
        QCoreApplication::processEvents();
        EXPECT_EQ(window().size(), size); // the pages' least sizes allow it
        for (const QLabel* label : window().findChildren<QLabel*>()) {
            if (label->isVisible() && !label->wordWrap() &&
                label->sizePolicy().horizontalPolicy() != QSizePolicy::Ignored) {
                EXPECT_GE(label->width(), label->sizeHint().width()) << label->text().toStdString();
            }
        }
    }
}

} // namespace
