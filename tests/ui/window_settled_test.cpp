// No frame shows fields squeezed: what is painted first, and after every change, is laid out as it stays.
#include "inputs/fold.hpp"
#include "pages/retune_form.hpp"
#include "pages/retune_page.hpp"
#include "ui/harness.hpp"

#include <QAbstractSpinBox>
#include <QApplication>
#include <QComboBox>
#include <QEvent>
#include <QLabel>
#include <QLineEdit>
#include <QPushButton>
#include <QTabWidget>
#include <QTest>

#include <map>
#include <tuple>

using namespace loopwright;

namespace {

/// Notes how high everything in a part of the window is each time that part is painted. It only looks: asking
/// a label for its height at a width lays it out anew.
class FrameWatch : public QObject {
public:
    explicit FrameWatch(QWidget* part) : part_(part) { qApp->installEventFilter(this); }
    [[nodiscard]] int frames() const { return frames_; }
    bool eventFilter(QObject* watched, QEvent* event) override {
        if (event->type() == QEvent::Paint && watched == part_) {
            ++frames_;
            look();
        }
        return false;
    }
    /// What is now another height than it had, with the same words at the same width, in some frame.
    [[nodiscard]] QStringList other_than_settled() const {
        QStringList found;
        for (const QWidget* child : shown()) {
            for (auto it = seen_.lower_bound({child, {}, 0}); it != seen_.end(); ++it) {
                const auto& [widget, text, width] = it->first;
                if (widget != child) {
                    break;
                }
                for (const auto& [height, frame] : it->second) {
                    if (text == text_of(*child) && width == child->width() && height != child->height()) {
                        found << QStringLiteral("%1 “%2”: %3 high in frame %4, %5 at last")
                                     .arg(QString::fromLatin1(child->metaObject()->className()),
                                          child->objectName() + text.left(40))
                                     .arg(height)
                                     .arg(frame)
                                     .arg(child->height());
                    }
                }
            }
        }
        return found;
    }

private:
    static QString text_of(const QWidget& widget) {
        const auto* label = qobject_cast<const QLabel*>(&widget);
        return label == nullptr ? QString() : label->text();
    }
    [[nodiscard]] std::vector<const QWidget*> shown() const {
        std::vector<const QWidget*> widgets;
        for (const QWidget* child : part_->findChildren<QWidget*>()) {
            const bool counts = qobject_cast<const QLineEdit*>(child) != nullptr ||
                                qobject_cast<const QAbstractSpinBox*>(child) != nullptr ||
                                qobject_cast<const QComboBox*>(child) != nullptr ||
                                qobject_cast<const QPushButton*>(child) != nullptr ||
                                qobject_cast<const QLabel*>(child) != nullptr;
            if (counts && child->isVisible()) {
                widgets.push_back(child);
            }
        }
        return widgets;
    }
    void look() {
        for (const QWidget* child : shown()) {
            seen_[{child, text_of(*child), child->width()}].emplace(child->height(), frames_);
        }
    }
    using Key = std::tuple<const QWidget*, QString, int>;
    QWidget* part_;
    int frames_ = 0;
    std::map<Key, std::map<int, int>> seen_; ///< height, first frame with it
};

class WindowSettledTest : public test::WindowTest {
protected:
    void SetUp() override {
        open_window();
        design::Design made;
        made.station.bands = {"40m", "20m"};
        made.capacitor.maximum = units::picofarads(400);
        made.capacitor.dial = design::Dial{};
        made.coupling = design::Coupling{};
        window().document().start_from(made);
        ASSERT_TRUE(test::wait_for_survey(window()));
    }
    static void expect_none(const FrameWatch& watch, const char* after) {
        EXPECT_GT(watch.frames(), 0) << after;
        for (const QString& one : watch.other_than_settled()) {
            ADD_FAILURE() << after << ": " << one.toStdString();
        }
    }
};

TEST_F(WindowSettledTest, TheRetunePageIsRightInEveryFrame) {
    {
        const FrameWatch watch(&window().retune().form());
        window().pages().setCurrentWidget(&window().retune());
        QTest::qWait(800);
        expect_none(watch, "shown");
    }
    auto* fold = find<inputs::Fold>("group.retune_calibration");
    for (const bool unfolded : {false, true, false, true}) {
        const FrameWatch watch(&window().retune().form());
        fold->set_unfolded(unfolded);
        QTest::qWait(150);
        expect_none(watch, unfolded ? "unfolded" : "folded");
    }
    const FrameWatch watch(&window().retune().form());
    design::Design next = window().document().design();
    next.calibration = design::Calibration{};
    for (const double MHz : {7.0, 7.1, 7.2, 14.0}) {
        next.calibration->points.push_back({20.0 * MHz, units::megahertz(MHz)});
    }
    window().document().edit(next, {QStringLiteral("Points"), {}, {}});
    QTest::qWait(800);
    expect_none(watch, "points put in");
}

// What the strip adds while an edit is computed fits into the room that it has, and the page stays where it
// is.
TEST_F(WindowSettledTest, AnEditDoesNotMoveThePageBelowTheStrip) {
    ASSERT_TRUE(test::wait_for_keying(window()));
    auto* volts = find<QLabel>("hazard.voltage");
    int lines_at_most = 0;
    for (const int width : {1600, 1280, 1100}) {
        window().resize(width, 800);
        QTest::qWait(50);
        for (QLabel* cell : {volts, find<QLabel>("hazard.distance")}) {
            QLabel alone(cell->text() + QStringLiteral(" (of before the last change)"));
            alone.setFont(cell->font());
            alone.setContentsMargins(cell->contentsMargins());
            alone.setWordWrap(true);
            EXPECT_GE(cell->height(), alone.heightForWidth(cell->width())) << width;
            lines_at_most = std::max(lines_at_most, cell->height() / cell->fontMetrics().height());
        }
    }
    EXPECT_GE(lines_at_most, 2) << "no width here asks for a second line";
    const int top = window().pages().mapTo(&window(), QPoint(0, 0)).y();
    design::Design next = window().document().design();
    next.site.lowest_point = units::metres(2.5);
    window().document().edit(next, {QStringLiteral("Height"), {}, {}});
    bool said = false;
    const auto settled = [&] {
        said = said || volts->text().contains(QLatin1Char('('));
        EXPECT_EQ(window().pages().mapTo(&window(), QPoint(0, 0)).y(), top);
        return !volts->text().contains(QStringLiteral("change)")) &&
               window().keying().result()->request.design == next && window().keying().settled();
    };
    ASSERT_TRUE(QTest::qWaitFor(settled, 60000));
    EXPECT_TRUE(said);
}

TEST_F(WindowSettledTest, TheCouplingSectionIsRightInEveryFrame) {
    auto* fold = find<inputs::Fold>("group.coupling");
    for (const bool unfolded : {true, false, true}) {
        const FrameWatch watch(fold->parentWidget());
        fold->set_unfolded(unfolded);
        QTest::qWait(unfolded ? 1000 : 100);
        expect_none(watch, unfolded ? "unfolded" : "folded");
    }
    const FrameWatch watch(fold->parentWidget());
    window().resize(1400, 800);
    QTest::qWait(100);
    window().resize(1280, 800);
    QTest::qWait(200);
    expect_none(watch, "resized");
}

} // namespace
