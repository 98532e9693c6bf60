#pragma once
// The Coupling section of a small design, used as a person uses it, against the core.
#include "coupling/match_report.hpp"
#include "inputs/fold.hpp"
#include "pages/coupling_panel.hpp"
#include "ui/harness.hpp"

#include <QComboBox>
#include <QLabel>
#include <QTest>

namespace loopwright::test {

class CouplingTest : public WindowTest {
protected:
    static constexpr int coupling_patience_ms = 30000;
    enum Kind { none, loop, tap, transformer };

    void SetUp() override {
        design::Design design;
        design.station.bands = {"40m", "30m"};
        open_window();
        window().document().start_from(design);
        window().focus().set_band(QStringLiteral("30m"));
        find<inputs::Fold>("group.coupling")->set_unfolded(true);
        panel_ = window().findChild<pages::CouplingPanel*>();
    }
    const design::Design& design() { return window().document().design(); }
    /// By keyboard.
    void choose(Kind kind) {
        find<QComboBox>("coupling")->setFocus();
        press(Qt::Key_Home);
        for (int i = 0; i < kind; ++i) {
            press(Qt::Key_Down);
        }
    }
    bool matched() {
        return QTest::qWaitFor([this] { return panel_->match().result() && !panel_->match().stale(); },
                               coupling_patience_ms);
    }
    bool sized() {
        return QTest::qWaitFor([this] { return !panel_->sizing().running(); }, coupling_patience_ms);
    }
    coupling::MatchReport core() {
        return coupling::match_report(design(), window().focus().frequency(), design().station.power.value,
                                      2.0);
    }
    QString words(const char* name) { return find<QLabel>(name)->text(); }
    pages::CouplingPanel* panel_ = nullptr;
};

} // namespace loopwright::test
