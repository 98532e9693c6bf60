// The page Retune used as a person uses it: keys, clicks, paste. What the calibration computes is tested
// where it stands; here its figures have to arrive.
#include "pages/retune_page.hpp"

#include "charts/dial_figure.hpp"
#include "charts/figure_widget.hpp"
#include "charts/resonance_figure.hpp"
#include "coupling/coupled_loop.hpp"
#include "coupling/mismatch.hpp"
#include "jobs/keying_job.hpp"
#include "models/match_plot.hpp"
#include "models/quantity_words.hpp"
#include "pages/radio_panel.hpp"
#include "pages/retune_card.hpp"
#include "pages/retune_form.hpp"
#include "pages/retune_view.hpp"
#include "support/dummy_radio.hpp"
#include "tuning/design_dial.hpp"

#include <QApplication>
#include <QClipboard>
#include <QElapsedTimer>
#include <QFile>
#include <QFontMetrics>
#include <QLabel>
#include <QLineEdit>
#include <QPushButton>
#include <QSpinBox>
#include <QTableView>
#include <QTemporaryDir>
#include <QTest>
#include <gtest/gtest.h>

#include <cmath>

using namespace loopwright;

namespace {

/// Small and quick: two bands, a dial of 0 to 180 degrees.
design::Design made_design() {
    design::Design made;
    made.station.bands = {"40m", "20m"};
    made.capacitor.maximum = units::picofarads(400);
    made.capacitor.dial = design::Dial{};
    return made;
}

class RetunePageTest : public ::testing::Test {
protected:
    void SetUp() override {
        document_.start_from(made_design());
        focus_.set_frequency(units::megahertz(7.074));
        page_ = std::make_unique<pages::RetunePage>(context_);
        page_->resize(1280, 700);
        page_->show();
        page_->activateWindow();
        ASSERT_TRUE(QTest::qWaitForWindowActive(page_.get()));
        ASSERT_TRUE(settled());
    }
    /// Until the newest request is answered.
    bool settled() {
        return QTest::qWaitFor([this] { return page_->dial().result() && !page_->dial().stale(); }, 30000);
    }
    template <class Widget>
    Widget* on_page(const char* name) {
        auto* found = page_->findChild<Widget*>(QString::fromLatin1(name));
        EXPECT_NE(found, nullptr) << "no " << name;
        return found;
    }
    void enter(const char* name, const QString& text, Qt::Key leave = Qt::Key_Tab) {
        auto* field = on_page<QWidget>(name);
        ASSERT_NE(field, nullptr);
        auto* line = qobject_cast<QLineEdit*>(field);
        line = line == nullptr ? field->findChild<QLineEdit*>() : line;
        field->setFocus(Qt::MouseFocusReason);
        line->selectAll();
        QTest::keyClick(line, Qt::Key_Delete);
        QTest::keyClicks(line, text);
        QTest::keyClick(qobject_cast<QLineEdit*>(field) != nullptr ? static_cast<QWidget*>(line) : field,
                        leave);
    }
    void add_point(const QString& reading, const QString& frequency) {
        enter("calibration.reading", reading);
        enter("calibration.second", frequency, Qt::Key_Return);
    }
    const std::vector<design::CalibrationPoint>& points() {
        static const std::vector<design::CalibrationPoint> none;
        return document_.design().calibration ? document_.design().calibration->points : none;
    }
    QString words(const char* name) { return on_page<QLabel>(name)->text(); }
    const models::DialPlot& dial_plot() {
        return dynamic_cast<const charts::DialFigure&>(*page_->view().dial().figure()).plot();
    }
    const models::ResonancePlot& resonance_plot() {
        return dynamic_cast<const charts::ResonanceFigure&>(*page_->view().resonance().figure()).plot();
    }
    QString file(const char* name) { return folder_.filePath(QString::fromLatin1(name)); }

    QTemporaryDir folder_;
    settings::Settings settings_{folder_.filePath(QStringLiteral("settings.ini"))};
    session::Document document_;
    session::Focus focus_;
    session::Comparison comparison_;
    jobs::SurveyJob survey_, compared_;
    jobs::PointJob point_;
    jobs::KeyingJob keying_;
    pages::Context context_{settings_, document_, focus_, comparison_, survey_, point_, compared_, keying_};
    std::unique_ptr<pages::RetunePage> page_;
};

TEST_F(RetunePageTest, ShowsThePredictedDialOfTheFrequencyInFocus) {
    const auto dial = tuning::calibrated_dial(document_.design());
    const auto wanted = dial.predicted(page_->dial().result()->tuned);
    ASSERT_TRUE(wanted);
    ASSERT_TRUE(dial_plot().predicted);
    EXPECT_DOUBLE_EQ(dial_plot().predicted->reading, wanted->reading);
    EXPECT_FALSE(dial_plot().calibrated);
    EXPECT_TRUE(words("retune.set").contains(QStringLiteral("predicted, not calibrated")));
    EXPECT_TRUE(words("retune.set").contains(QStringLiteral("calibration points narrow it")));
    // FT8: the loop belongs in the middle of the audio passband above the dial frequency.
    EXPECT_NEAR(page_->dial().result()->tuned.value(), 7.074e6 + 1.5e3, 200);
    const double before = dial_plot().predicted->reading;
    focus_.set_frequency(units::megahertz(14.074));
    ASSERT_TRUE(settled());
    EXPECT_LT(dial_plot().predicted->reading, before) << "less capacitance is a smaller reading here";
}

TEST_F(RetunePageTest, APointIsTypedUndoneSavedAndReadAgain) {
    add_point(QStringLiteral("100"), QStringLiteral("7.1"));
    ASSERT_EQ(points().size(), 1U) << words("calibration.refusal").toStdString();
    EXPECT_EQ(points().front().reading, 100);
    EXPECT_EQ(points().front().frequency.value, units::megahertz(7.1));
    EXPECT_FALSE(document_.design().calibration->date.empty());
    ASSERT_TRUE(settled());
    EXPECT_TRUE(dial_plot().calibrated);
    EXPECT_FALSE(words("retune.set").contains(QStringLiteral("calibration points narrow it")));
    EXPECT_EQ(on_page<QTableView>("calibration.table")->model()->rowCount(), 1);
    // The next point can be typed at once: the field of the reading has the focus and is empty.
    EXPECT_TRUE(on_page<QWidget>("calibration.reading")->hasFocus());
    add_point(QStringLiteral("20"), QStringLiteral("14100 kHz"));
    ASSERT_EQ(points().size(), 2U);
    document_.undo_stack().undo();
    EXPECT_EQ(points().size(), 1U);
    document_.undo_stack().redo();
    document_.save_as(file("calibrated.loop"));
    const design::Design kept = document_.design();
    document_.start_from(made_design());
    EXPECT_TRUE(points().empty());
    document_.open(file("calibrated.loop"));
    EXPECT_EQ(document_.design().calibration, kept.calibration);
    EXPECT_EQ(document_.design().capacitor.dial, kept.capacitor.dial);
    ASSERT_TRUE(settled());
    EXPECT_EQ(on_page<QTableView>("calibration.table")->model()->rowCount(), 2);
}

TEST_F(RetunePageTest, WhatIsNoPointIsRefusedInWordsAndChangesNothing) {
    enter("calibration.reading", QStringLiteral("100"));
    QTest::mouseClick(on_page<QPushButton>("calibration.add"), Qt::LeftButton);
    EXPECT_TRUE(points().empty());
    EXPECT_FALSE(words("calibration.refusal").isEmpty());
    enter("calibration.second", QStringLiteral("7.1 turnips"), Qt::Key_Return);
    EXPECT_TRUE(points().empty());
    add_point(QStringLiteral("100"), QStringLiteral("5 GHz")); // beyond what a calibration may hold
    EXPECT_TRUE(points().empty());
    EXPECT_FALSE(words("calibration.refusal").isEmpty());
}

TEST_F(RetunePageTest, PointsArePastedAndTakenOut) {
    QApplication::clipboard()->setText(QStringLiteral("100\t7.1 MHz\n60\t9 MHz\n20\t14.1 MHz\n"));
    auto* table = on_page<QTableView>("calibration.table");
    add_point(QStringLiteral("150"), QStringLiteral("6 MHz")); // a table without rows is not shown
    table->setFocus();
    QTest::keyClick(table, Qt::Key_V, Qt::ControlModifier);
    ASSERT_EQ(points().size(), 4U) << words("calibration.refusal").toStdString();
    table->selectRow(1);
    QTest::keyClick(table, Qt::Key_Delete);
    ASSERT_EQ(points().size(), 3U);
    EXPECT_EQ(points()[1].reading, 60);
    document_.undo_stack().undo();
    EXPECT_EQ(points().size(), 4U);
}

TEST_F(RetunePageTest, TheFirstPointsCanBePastedAsAWhole) {
    QApplication::clipboard()->setText(QStringLiteral("100\t7.1 MHz\n20\t14.1 MHz\n"));
    auto* field = on_page<QWidget>("calibration.reading");
    field->setFocus();
    QTest::keyClick(field, Qt::Key_V, Qt::ControlModifier);
    ASSERT_EQ(points().size(), 2U) << words("calibration.refusal").toStdString();
    EXPECT_EQ(points()[1].frequency.value, units::megahertz(14.1));
    EXPECT_FALSE(document_.design().calibration->date.empty());
    QApplication::clipboard()->setText(QStringLiteral("60"));
    QTest::keyClick(field, Qt::Key_V, Qt::ControlModifier);
    EXPECT_EQ(points().size(), 2U) << "a single number belongs into the field";
    design::Design next = document_.design();
    next.capacitor.dial->law = design::DialLaw::table;
    next.capacitor.dial->table = {{0, units::picofarads(12)}, {180, units::picofarads(400)}};
    document_.edit(next, {QStringLiteral("Table"), {}, {}});
    QApplication::clipboard()->setText(QStringLiteral("60;90 pF\r\n120;210\r\n"));
    auto* reading = on_page<QWidget>("dial_table.reading");
    reading->setFocus();
    QTest::keyClick(reading, Qt::Key_V, Qt::ControlModifier);
    ASSERT_EQ(document_.design().capacitor.dial->table.size(), 4U)
        << words("dial_table.refusal").toStdString();
    EXPECT_EQ(document_.design().capacitor.dial->table[2].capacitance.value, units::picofarads(210));
    QApplication::clipboard()->setText(QStringLiteral("60;90 pF;7\n"));
    QTest::keyClick(reading, Qt::Key_V, Qt::ControlModifier);
    EXPECT_FALSE(words("dial_table.refusal").isEmpty());
    EXPECT_EQ(document_.design().capacitor.dial->table.size(), 4U);
}

TEST_F(RetunePageTest, AMistakenPointIsLeftOutWithItsReason) {
    // Points of hardware that is as the file says, but for one slip of the pen.
    const auto dial = tuning::calibrated_dial(document_.design());
    design::Design next = document_.design();
    design::Calibration calibration;
    for (const double MHz : {7.0, 7.1, 7.2, 14.0, 14.1, 14.3}) {
        const auto at = dial.predicted(units::megahertz(MHz));
        ASSERT_TRUE(at);
        calibration.points.push_back({std::round(10.0 * at->reading) / 10.0, units::megahertz(MHz)});
    }
    calibration.points[1].reading += 40;
    next.calibration = calibration;
    document_.edit(next, {QStringLiteral("Points"), {}, {}});
    ASSERT_TRUE(settled());
    auto* model = on_page<QTableView>("calibration.table")->model();
    const QString first = model->index(1, 0).data().toString();
    EXPECT_TRUE(first.startsWith(QChar(0x25B3))) << first.toStdString();
    EXPECT_EQ(model->index(1, 3).data().toString(), QStringLiteral("left out"));
    EXPECT_GT(model->index(1, 3).data(Qt::ToolTipRole).toString().size(), 20);
    EXPECT_EQ(model->index(0, 3).data().toString(), QStringLiteral("counts"));
    EXPECT_TRUE(words("calibration.next").contains(QStringLiteral("5 of 6")));
    EXPECT_TRUE(words("calibration.next").contains(QStringLiteral("Measure next at")));
}

TEST_F(RetunePageTest, ThePresentSettingIsJudged) {
    ASSERT_TRUE(dial_plot().predicted);
    QTest::mouseClick(on_page<QPushButton>("retune.is_set"), Qt::LeftButton);
    EXPECT_TRUE(words("retune.now").contains(QStringLiteral("is set to")))
        << words("retune.now").toStdString();
    ASSERT_TRUE(resonance_plot().established());
    EXPECT_NEAR(models::vswr_at(resonance_plot(), resonance_plot().wanted_Hz), 1.0, 0.01);
    // Half a usable span away the VSWR is the limit, by the definition of the span.
    const double mark = dial_plot().predicted->reading;
    const double half = std::abs(*dial_plot().span_high - *dial_plot().span_low) / 2.0;
    enter("retune.present", QString::number(mark + half, 'f', 6));
    EXPECT_NEAR(models::vswr_at(resonance_plot(), resonance_plot().wanted_Hz), 2.0, 0.1);
    EXPECT_TRUE(words("retune.now").contains(QStringLiteral("too low"))) << words("retune.now").toStdString();
    enter("retune.present", QString());
    EXPECT_FALSE(on_page<QLabel>("retune.now")->isVisible());
}

// The design's own coupling decides what the radio sees: against the closed form of one resonator with the
// coupling ratio that the match at resonance has (D. Kajfez and E. J. Hwan 1984, from memory).
TEST_F(RetunePageTest, TheCurveIsThatOfTheDesignsOwnCoupling) {
    QTest::mouseClick(on_page<QPushButton>("retune.is_set"), Qt::LeftButton);
    EXPECT_TRUE(resonance_plot().curve.isEmpty());
    EXPECT_TRUE(words("retune.now").contains(QStringLiteral("Assumes a matched loop")));
    design::Design next = document_.design();
    next.coupling = design::Coupling{};
    next.coupling->diameter = units::metres(0.1); // too small: coupled loosely
    document_.edit(next, {QStringLiteral("Coupling"), {}, {}});
    ASSERT_TRUE(settled());
    ASSERT_TRUE(QTest::qWaitFor([&] { return !resonance_plot().curve.isEmpty(); }, 20000));
    EXPECT_TRUE(words("retune.now").contains(QStringLiteral("With the design's coupling, on 50")))
        << words("retune.now").toStdString();
    const models::ResonancePlot plot = resonance_plot();
    const auto resonance = units::hertz(plot.resonance_Hz);
    const coupling::CoupledLoop coupled(next);
    const coupling::Match match = coupled.match(resonance);
    ASSERT_GT(match.vswr, 1.5);
    EXPECT_NEAR(models::vswr_at(plot, plot.resonance_Hz), match.vswr, 0.02 * match.vswr);
    const double q = page_->dial().result()->point.resonance->q_unloaded;
    for (const double share : {-0.5, -0.25, 0.25, 0.5}) {
        const auto frequency = resonance + share * plot.span_Hz * units::hertz(1);
        const double one = coupling::resonator_vswr(resonance, q, 1 / match.vswr, frequency);
        EXPECT_NEAR(models::vswr_at(plot, frequency.value()), one, 0.06 * one) << share;
    }
    // Far off, the number is the coupled loop's own, not an end of the curve.
    enter("retune.present", QString::number(dial_plot().predicted->reading + 6.0, 'f', 3));
    ASSERT_TRUE(QTest::qWaitFor([&] { return !resonance_plot().curve.isEmpty(); }, 20000));
    EXPECT_GT(models::vswr_at(resonance_plot(), resonance_plot().wanted_Hz), 50);
}

TEST_F(RetunePageTest, WhereTheDialStandsIsKeptForTheFileAndNotInIt) {
    document_.save_as(file("one.loop"));
    enter("retune.present", QStringLiteral("71.5"));
    EXPECT_FALSE(document_.is_dirty());
    document_.save_as(file("two.loop"));
    enter("retune.present", QStringLiteral("33"));
    document_.start_from(made_design());
    EXPECT_FALSE(page_->view().present());
    document_.open(file("one.loop"));
    EXPECT_EQ(page_->view().present(), 71.5);
    document_.open(file("two.loop"));
    EXPECT_EQ(page_->view().present(), 33.0);
    EXPECT_EQ(on_page<QWidget>("retune.present")->findChild<QLineEdit*>() == nullptr
                  ? dynamic_cast<QLineEdit*>(on_page<QWidget>("retune.present"))->text()
                  : on_page<QWidget>("retune.present")->findChild<QLineEdit*>()->text(),
              QStringLiteral("33"));
    QFile written(file("one.loop"));
    ASSERT_TRUE(written.open(QIODevice::ReadOnly));
    EXPECT_FALSE(written.readAll().contains("71.5"));
    enter("retune.present", QString());
    EXPECT_FALSE(settings_.dial_left_at(file("two.loop")));
    EXPECT_EQ(settings_.dial_left_at(file("one.loop")), 71.5);
}

TEST_F(RetunePageTest, TheCardHasEveryRowOfTheCoreAndPickingOneFocusesIt) {
    jobs::CardJob& job = page_->card().job();
    ASSERT_TRUE(QTest::qWaitFor([&] { return job.result() && !job.stale(); }, 60000));
    survey::CardRequest request;
    request.design = document_.design();
    const survey::Card core = survey::card(request);
    QTableView& table = page_->card().table();
    ASSERT_EQ(table.model()->rowCount(), static_cast<int>(core.rows.size()));
    ASSERT_GT(core.rows.size(), 4U);
    for (std::size_t i = 0; i < core.rows.size(); ++i) {
        const survey::CardRow& row = core.rows[i];
        EXPECT_EQ(table.model()->index(static_cast<int>(i), 0).data().toString().toStdString(), row.band);
        ASSERT_TRUE(row.dial());
        const QString shown = table.model()->index(static_cast<int>(i), 3).data().toString();
        EXPECT_TRUE(
            shown.startsWith(models::reading_text(row.dial()->reading, design::DialScale::degrees, 1.0)))
            << shown.toStdString();
    }
    const int last = table.model()->rowCount() - 1;
    table.selectRow(last);
    EXPECT_EQ(focus_.frequency(), core.rows.back().radio);
    ASSERT_TRUE(settled());
    EXPECT_DOUBLE_EQ(dial_plot().frequency_Hz, core.rows.back().radio.value());
    focus_.set_frequency(core.rows.front().radio);
    EXPECT_EQ(table.currentIndex().row(), 0);
}

// The row of a frequency that no setting gives says so, and nothing of what the loop would do there. Every
// remark is read in full at the width of a small screen: the row is as high as its lines.
TEST_F(RetunePageTest, TheCardSaysWhatIsOutOfReachAndEveryRemarkInFull) {
    design::Design next = document_.design();
    next.station.bands = {"80m", "40m", "20m"};
    next.capacitor.dial->reduction = 1;
    document_.edit(next, {QStringLiteral("Bands"), {}, {}});
    jobs::CardJob& job = page_->card().job();
    ASSERT_TRUE(QTest::qWaitFor([&] { return job.result() && !job.stale(); }, 60000));
    QTableView& table = page_->card().table();
    const auto& rows = job.result()->rows;
    ASSERT_FALSE(rows.front().reachable);
    EXPECT_EQ(table.model()->index(0, 3).data().toString(), QStringLiteral("out of reach"));
    EXPECT_EQ(table.model()->index(0, 5).data().toString(), QStringLiteral("\u2013"));
    EXPECT_TRUE(table.model()->index(0, 6).data().toString().endsWith(QStringLiteral("pF")));
    const int last = table.model()->columnCount() - 1;
    QCoreApplication::processEvents();
    int wrapped = 0;
    for (int row = 0; row < table.model()->rowCount(); ++row) {
        const QString text = table.model()->index(row, last).data().toString();
        constexpr int margins = 8;
        const QRect room(0, 0, table.columnWidth(last) - margins, 10000);
        const QFontMetrics metrics(table.font());
        const int height = metrics.boundingRect(room, Qt::TextWordWrap, text).height();
        EXPECT_GE(table.rowHeight(row), height) << text.toStdString();
        wrapped += height > metrics.height() ? 1 : 0;
    }
    EXPECT_GT(wrapped, 0);
}

// One plan of further points on page, card and paper, also where all bands of the region are planned.
TEST_F(RetunePageTest, TheNextPointsAreThoseOfTheCard) {
    design::Design next = document_.design();
    next.station.bands.clear();
    document_.edit(next, {QStringLiteral("All bands"), {}, {}});
    jobs::CardJob& job = page_->card().job();
    ASSERT_TRUE(QTest::qWaitFor([&] { return job.result() && !job.stale(); }, 60000));
    ASSERT_TRUE(settled());
    const auto& of_card = job.result()->next;
    const auto& of_page = page_->dial().result()->next;
    ASSERT_EQ(of_card.size(), 3U);
    ASSERT_EQ(of_page.size(), 3U);
    for (std::size_t i = 0; i < 3; ++i) {
        EXPECT_EQ(of_page[i].frequency, of_card[i].frequency);
        EXPECT_DOUBLE_EQ(of_page[i].width_after, of_card[i].width_after);
        EXPECT_TRUE(
            words("calibration.next")
                .contains(models::exact_frequency(std::round(of_card[i].frequency.value() / 1e3) * 1e3)))
            << words("calibration.next").toStdString();
    }
}

// The span grows with the VSWR that counts as usable: of Z = R (1 + j x) it is x = (s - 1)/sqrt(s), so that 3
// gives 2/sqrt(3) : 1/sqrt(2) = 1.633 times the span of 2 (any handbook of transmission lines).
TEST_F(RetunePageTest, TheVswrThatCountsAsUsableIsChosen) {
    jobs::CardJob& job = page_->card().job();
    ASSERT_TRUE(QTest::qWaitFor([&] { return job.result() && !job.stale(); }, 60000));
    const double before = job.result()->rows.front().usable_span->value();
    const double dial_before = *dial_plot().span_high - *dial_plot().span_low;
    enter("card.vswr", QStringLiteral("3"));
    ASSERT_TRUE(QTest::qWaitFor([&] { return !job.stale(); }, 60000));
    ASSERT_TRUE(settled());
    EXPECT_EQ(job.result()->request.vswr_limit, 3.0);
    EXPECT_NEAR(job.result()->rows.front().usable_span->value() / before, 1.633, 0.01);
    EXPECT_NEAR((*dial_plot().span_high - *dial_plot().span_low) / dial_before, 1.633, 0.01);
    enter("card.vswr", QStringLiteral("0.5"));
    EXPECT_EQ(page_->card().vswr_limit(), 3.0);
    pages::RetunePage another(context_);
    EXPECT_EQ(another.card().vswr_limit(), 3.0) << "kept between two starts";
}

TEST_F(RetunePageTest, WithoutADialThePageSaysWhatIsMissing) {
    design::Design next = document_.design();
    next.capacitor.dial.reset();
    document_.edit(next, {QStringLiteral("No dial"), {}, {}});
    ASSERT_TRUE(settled());
    EXPECT_TRUE(words("retune.set").contains(QStringLiteral("no dial yet")));
    EXPECT_FALSE(on_page<QPushButton>("retune.is_set")->isEnabled());
}

TEST_F(RetunePageTest, DialFieldsEditTheDesign) {
    enter("capacitor.dial.reduction", QStringLiteral("6"));
    EXPECT_EQ(document_.design().capacitor.dial->reduction, 6);
    enter("capacitor.dial.at_maximum", QStringLiteral("0")); // the same as the other stop
    EXPECT_EQ(document_.design().capacitor.dial->at_maximum, 180);
    document_.undo_stack().undo();
    EXPECT_EQ(document_.design().capacitor.dial->reduction, 1);
}

TEST_F(RetunePageTest, FollowsTheRadioAndNeverWaitsForIt) {
    support::DummyRadio dummy;
    dummy.tune(7'040'000);
    on_page<QSpinBox>("radio.port")->setValue(dummy.port());
    auto* follow = on_page<QPushButton>("radio.follow");
    QTest::mouseClick(follow, Qt::LeftButton);
    ASSERT_TRUE(QTest::qWaitFor([&] { return focus_.frequency() == units::hertz(7'040'000); }, 10000))
        << words("radio.state").toStdString();
    EXPECT_EQ(settings_.radio().port, dummy.port());
    ASSERT_TRUE(settled());
    EXPECT_DOUBLE_EQ(dial_plot().frequency_Hz, 7'040'000);
    // The knob goes 20 kHz up and the dial stays: the page says how far off, and what that costs. Of Z = R (1
    // + j x), x = 2 (2 - 1)/sqrt(2) (20 kHz/span): any handbook of transmission lines.
    QTest::mouseClick(on_page<QPushButton>("retune.is_set"), Qt::LeftButton);
    dummy.tune(7'060'000);
    ASSERT_TRUE(QTest::qWaitFor([&] { return focus_.frequency() == units::hertz(7'060'000); }, 10000));
    ASSERT_TRUE(settled());
    EXPECT_TRUE(words("retune.now").contains(QStringLiteral("20.0\u2009kHz too low")))
        << words("retune.now").toStdString();
    const double x = std::sqrt(2.0) * 20e3 / resonance_plot().span_Hz;
    const double reflection = x / std::hypot(2.0, x);
    EXPECT_NEAR(models::vswr_at(resonance_plot(), resonance_plot().wanted_Hz),
                (1 + reflection) / (1 - reflection), 0.1);
    dummy.tune(14'074'000);
    ASSERT_TRUE(QTest::qWaitFor([&] { return focus_.frequency() == units::hertz(14'074'000); }, 10000));
    dummy.kill();
    ASSERT_TRUE(
        QTest::qWaitFor([&] { return words("radio.state").contains(QStringLiteral("Last read")); }, 10000));
    EXPECT_TRUE(words("radio.state").contains(QStringLiteral("14.074")))
        << words("radio.state").toStdString();
    QElapsedTimer clock;
    clock.start();
    QTest::mouseClick(follow, Qt::LeftButton);
    EXPECT_LT(clock.elapsed(), 250);
    EXPECT_TRUE(words("radio.state").isEmpty());
}

TEST_F(RetunePageTest, AWrongPortIsSaidAndADeafRadioHoldsNothingUp) {
    on_page<QSpinBox>("radio.port")->setValue(support::free_port());
    auto* follow = on_page<QPushButton>("radio.follow");
    QTest::mouseClick(follow, Qt::LeftButton);
    EXPECT_TRUE(QTest::qWaitFor(
        [&] { return words("radio.state").contains(QStringLiteral("Nothing listens")); }, 10000))
        << words("radio.state").toStdString();
    const support::DummyRadio dummy;
    support::Relay deaf(dummy.port());
    deaf.delay_answers(std::chrono::seconds(60));
    QElapsedTimer longest;
    on_page<QSpinBox>("radio.port")->setValue(deaf.port());
    QTest::mouseClick(follow, Qt::LeftButton); // stops
    QTest::mouseClick(follow, Qt::LeftButton); // follows the other port
    ASSERT_TRUE(QTest::qWaitFor([&] { return !deaf.said().empty(); }, 10000));
    longest.start();
    QTest::mouseClick(follow, Qt::LeftButton);
    EXPECT_LT(longest.elapsed(), 250) << "the window waited for the radio";
    EXPECT_FALSE(page_->form().radio().radio().following());
}

} // namespace
