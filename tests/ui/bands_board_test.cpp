// The band board and the read-out: every row, words beside symbols, numbers as in the survey.
#include "pages/bands_board.hpp"

#include "models/band_board_model.hpp"
#include "models/readout_model.hpp"
#include "models/survey_charts.hpp"
#include "models/verdict_words.hpp"
#include "pages/readout_view.hpp"
#include "report/table.hpp"
#include "report/tables.hpp"
#include "ui/chart_made_survey.hpp"

#include <QApplication>
#include <QClipboard>
#include <QHeaderView>
#include <QMenu>
#include <QSignalSpy>
#include <QTemporaryDir>
#include <QTest>
#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <set>

namespace loopwright::pages {
namespace {

using models::BandBoardModel;
using ::testing::HasSubstr;

class BandsBoardTest : public ::testing::Test {
protected:
    BandsBoardTest()
        : settings_(folder_.filePath(QStringLiteral("settings.ini"))), context_{settings_, document_,
                                                                                focus_,    comparison_,
                                                                                survey_,   point_,
                                                                                compared_, keying_},
          board_(context_, model_) {
        model_.set_surveys(test::made_survey(), nullptr, {});
        board_.resize(1200, 300);
        board_.show();
    }
    QString cell(int row, int column) { return model_.index(row, column).data().toString(); }
    QTemporaryDir folder_;
    settings::Settings settings_;
    session::Document document_;
    session::Focus focus_;
    session::Comparison comparison_;
    jobs::PointJob point_;
    jobs::SurveyJob survey_, compared_;
    jobs::KeyingJob keying_;
    Context context_;
    BandBoardModel model_;
    BandsBoard board_;
};

TEST_F(BandsBoardTest, OneRowAPlannedBandWithUnitsInTheHeadings) {
    ASSERT_EQ(model_.rowCount(), 3);
    EXPECT_EQ(cell(0, BandBoardModel::band), QStringLiteral("40m"));
    EXPECT_EQ(model_.column_name(BandBoardModel::voltage), QStringLiteral("Capacitor, kV peak"));
    EXPECT_EQ(model_.column_name(BandBoardModel::q), QStringLiteral("Q, unloaded"));
    EXPECT_EQ(model_.column_name(BandBoardModel::current), QStringLiteral("Loop current, A rms"));
    // 1.5 kV sqrt(14.0755/10) = 1.7796 kV
    EXPECT_EQ(cell(1, BandBoardModel::voltage), QStringLiteral("1.78"));
    // x = (7.0755/14)^3.5 = 0.09179; x/(1+x) = 8.41 %
    EXPECT_EQ(cell(0, BandBoardModel::efficiency), QStringLiteral("8.41"));
}

TEST_F(BandsBoardTest, TheGainAtTheLowAngleStandsInTheForeground) {
    EXPECT_FALSE(board_.isColumnHidden(BandBoardModel::low_gain));
    EXPECT_TRUE(board_.isColumnHidden(BandBoardModel::gain)); // to be shown from the menu of columns
    EXPECT_EQ(model_.column_name(BandBoardModel::low_gain), QStringLiteral("Gain at 15°, dBi"));
    survey::Survey survey = *test::made_survey();
    survey.bands[0].point.resonance->gain_low_angle = units::Decibel{-10.7};
    survey.bands[0].point.resonance->gain_max = units::Decibel{-7.8};
    model_.set_surveys(std::make_shared<const survey::Survey>(survey), nullptr, {});
    EXPECT_EQ(cell(0, BandBoardModel::low_gain), QStringLiteral("\u221210.7"));
    EXPECT_EQ(cell(0, BandBoardModel::gain), QStringLiteral("\u22127.8"));
}

TEST_F(BandsBoardTest, VerdictsAreWordsAndEachHasItsOwnSymbol) {
    EXPECT_THAT(cell(1, BandBoardModel::verdict).toStdString(), HasSubstr("over the rating"));
    std::set<QString> symbols, words;
    for (int i = 0; i <= static_cast<int>(survey::BandVerdict::not_established); ++i) {
        symbols.insert(models::verdict_symbol(static_cast<survey::BandVerdict>(i)));
        words.insert(models::verdict_word(static_cast<survey::BandVerdict>(i)));
    }
    EXPECT_EQ(symbols.size(), 8U);
    EXPECT_EQ(words.size(), 8U);
}

TEST_F(BandsBoardTest, WhatIsNotEstablishedIsSaidWithItsReason) {
    for (const int column :
         {BandBoardModel::efficiency, BandBoardModel::capacitance, BandBoardModel::voltage}) {
        EXPECT_EQ(cell(2, column), QStringLiteral("not established"));
        EXPECT_FALSE(model_.index(2, column).data(BandBoardModel::bar_role).isValid());
        EXPECT_THAT(model_.index(2, column).data(Qt::ToolTipRole).toString().toStdString(),
                    HasSubstr("0.35 wavelengths"));
    }
}

TEST_F(BandsBoardTest, BarsHoldSharesOfTheirLimits) {
    const auto bar = [&](int row, int column) {
        return model_.index(row, column).data(BandBoardModel::bar_role).value<models::Bar>();
    };
    EXPECT_NEAR(bar(1, BandBoardModel::voltage).value, 1.7796 / 1.7, 1e-4);
    EXPECT_NEAR(bar(0, BandBoardModel::efficiency).value, 0.0841, 1e-4);
    EXPECT_GT(bar(0, BandBoardModel::capacitance).value, bar(1, BandBoardModel::capacitance).value);
}

TEST_F(BandsBoardTest, PickingARowSetsTheFocusAndTheFocusPicksTheRow) {
    QSignalSpy changed(&focus_, &session::Focus::changed);
    board_.setCurrentIndex(model_.index(1, 0));
    EXPECT_EQ(focus_.band(), QStringLiteral("20m"));
    EXPECT_EQ(focus_.frequency().value(), 14.0755e6);
    focus_.set_band(QStringLiteral("40m"));
    EXPECT_EQ(board_.currentIndex().row(), 0);
    EXPECT_EQ(focus_.frequency().value(), 7.074e6) << "following moved the focus";
    focus_.set_frequency(units::megahertz(12));
    EXPECT_TRUE(board_.selectionModel()->selectedRows().isEmpty());
}

TEST_F(BandsBoardTest, WordsHaveAllTheLinesTheyNeed) {
    QCoreApplication::processEvents();
    const int words = BandBoardModel::words;
    const int one_line = board_.fontMetrics().height() + 8;
    int highest = 0;
    board_.resize(1050, 300);
    QCoreApplication::processEvents();
    QTest::qWait(10);
    for (int row = 0; row < model_.rowCount(); ++row) {
        const QRect room(0, 0, board_.columnWidth(words) - 8, 0);
        const int needed =
            board_.fontMetrics().boundingRect(room, Qt::TextWordWrap, cell(row, words)).height();
        EXPECT_GE(board_.rowHeight(row), needed) << cell(row, words).toStdString();
        highest = std::max(highest, board_.rowHeight(row));
    }
    EXPECT_GT(highest, one_line);
    board_.resize(2400, 300);
    QCoreApplication::processEvents();
    QTest::qWait(10);
    for (int row = 0; row < model_.rowCount(); ++row) {
        EXPECT_EQ(board_.rowHeight(row), one_line);
    }
}

TEST_F(BandsBoardTest, AnEditKeepsTheSelection) {
    board_.setCurrentIndex(model_.index(1, 0));
    model_.set_surveys(test::made_survey({.scale = 0.5}), nullptr, {});
    EXPECT_EQ(board_.currentIndex().row(), 1);
}

TEST_F(BandsBoardTest, CopiesTheSelectionWithHeadings) {
    board_.clearSelection();
    board_.selectRow(1);
    board_.copy();
    const QStringList lines = QApplication::clipboard()->text().split(QLatin1Char('\n'), Qt::SkipEmptyParts);
    ASSERT_EQ(lines.size(), 2);
    EXPECT_TRUE(lines[0].startsWith(QStringLiteral("Band\tVerdict\tEfficiency, %")));
    EXPECT_TRUE(lines[1].startsWith(QStringLiteral("20m\t")));
    board_.clearSelection();
    EXPECT_EQ(board_.selected_text().count(QLatin1Char('\n')), 4) << "all rows where none is selected";
}

TEST_F(BandsBoardTest, ColumnsAreChosen) {
    EXPECT_TRUE(board_.isColumnHidden(BandBoardModel::current));
    QMenu menu;
    board_.fill_columns_menu(menu);
    for (QAction* action : menu.actions()) {
        if (action->text() == model_.column_name(BandBoardModel::current)) {
            action->trigger();
        }
    }
    EXPECT_FALSE(board_.isColumnHidden(BandBoardModel::current));
}

TEST_F(BandsBoardTest, ASecondDesignHasItsColumns) {
    EXPECT_TRUE(board_.isColumnHidden(BandBoardModel::compared_verdict));
    model_.set_surveys(test::made_survey(), test::made_survey({.scale = 0.5}), QStringLiteral("small"));
    EXPECT_FALSE(board_.isColumnHidden(BandBoardModel::compared_verdict));
    EXPECT_EQ(model_.column_name(BandBoardModel::compared_efficiency),
              QStringLiteral("small, efficiency, %"));
    // x halved: 0.0459; 4.39 %
    EXPECT_EQ(cell(0, BandBoardModel::compared_efficiency), QStringLiteral("4.39"));
}

TEST_F(BandsBoardTest, CsvHasEveryBand) {
    const QString csv = QString::fromStdString(report::to_csv(report::band_data(*test::made_survey())));
    const QStringList lines = csv.split(QStringLiteral("\r\n"), Qt::SkipEmptyParts);
    ASSERT_EQ(lines.size(), 4);
    EXPECT_TRUE(lines[0].startsWith(QStringLiteral("band,")));
    EXPECT_TRUE(lines[3].startsWith(QStringLiteral("6m,not_established")));
}

TEST(Readout, ShowsTheDataOfEveryCurveAtTheCrosshair) {
    const auto survey = test::made_survey();
    const auto charts = test::made_charts();
    models::ReadoutModel model;
    model.set_charts(charts, QStringLiteral("Made"), {});
    ASSERT_EQ(model.rowCount(), 1);
    std::size_t curves = 0;
    for (const models::ChartContent& chart : *charts) {
        curves += chart.curves.size();
    }
    ASSERT_EQ(model.columnCount(), static_cast<int>(curves));
    const loop::OperatingPoint& point = survey->curve[120];
    model.set_frequency(point.frequency.value());
    const auto shown = [&](const char* id) {
        for (int column = 0; column < model.columnCount(); ++column) {
            if (model.curve(column)->id == QLatin1String(id)) {
                return model.index(0, column).data().toString();
            }
        }
        return QString();
    };
    const auto text = [](models::Measure measure, double si) { return models::measured_text(measure, si); };
    const loop::Resonance& r = *point.resonance;
    EXPECT_EQ(shown("efficiency"), text(models::Measure::share, r.efficiency));
    EXPECT_EQ(shown("gain_low_angle"), text(models::Measure::dbi, r.gain_low_angle->value));
    EXPECT_EQ(shown("tuning_capacitance"), text(models::Measure::capacitance, r.tuning_capacitance.value()));
    EXPECT_EQ(shown("capacitor_voltage_peak"),
              text(models::Measure::voltage, r.capacitor_voltage_peak.value()));
    EXPECT_EQ(shown("bandwidth_vswr"), text(models::Measure::frequency, r.bandwidth_vswr.value()));
    model.set_frequency(50e6);
    EXPECT_EQ(shown("efficiency"), QStringLiteral("not established"));
}

// A name that is cut begins at the very top of the heading.
TEST(Readout, NoNameIsCutHoweverNarrowItsColumn) {
    models::ChartContent chart;
    for (int i = 0; i < 8; ++i) {
        models::Curve curve;
        curve.name = i == 5 ? QStringLiteral("Usable voltage, peak, with all that is plugged in")
                            : QStringLiteral("Efficiency");
        curve.points = {{1e6, 1.0}, {50e6, 2.0}};
        chart.curves.push_back(curve);
    }
    models::ReadoutModel model;
    ReadoutView view(model);
    view.resize(1600, view.sizeHint().height());
    view.show();
    model.set_charts(std::make_shared<const std::vector<models::ChartContent>>(1, chart),
                     QStringLiteral("Made"), {});
    int before = 0;
    for (const int width : {1600, 800, 560}) {
        view.resize(width, view.height());
        QApplication::processEvents();
        const QImage heading = view.horizontalHeader()->grab().toImage();
        const QRgb paper = heading.pixel(0, 0);
        for (int x = 0; x < heading.width(); ++x) {
            ASSERT_EQ(heading.pixel(x, 1), paper) << width << " at " << x;
        }
        EXPECT_GE(view.height(), before);
        before = view.height();
    }
    const int lines = view.horizontalHeader()->height() / view.fontMetrics().height();
    EXPECT_GE(lines, 4) << "the long name stands in a column of 70 px";
}

} // namespace
} // namespace loopwright::pages
