// Smith chart and VSWR curve: the numbers drawn are those of the coupling model, in the right places.
#include "charts/chart_picture.hpp"
#include "charts/figure_widget.hpp"
#include "charts/smith_figure.hpp"
#include "charts/vswr_figure.hpp"
#include "ui/figure_words.hpp"

#include <QFileInfo>
#include <QSignalSpy>
#include <QTemporaryDir>
#include <QTest>

#include <cmath>

namespace loopwright::charts {
namespace {

using Complex = std::complex<double>;

/// A single parallel resonance of Q 200 at 7.074 MHz, transformed to `resistance_ohm` at resonance (D. Kajfez
/// and E. J. Hwan 1984, as coupling/mismatch.hpp has it): Z = R/(1 + 2 j Q df/f).
models::MatchPlot made_match_plot(double resistance_ohm = 50.0, double span_Hz = 200e3, int points = 201) {
    coupling::Match match;
    match.frequency = units::hertz(7.074e6);
    match.input = units::Impedance::from_value({resistance_ohm, 0.0});
    const auto vswr = [](Complex z) {
        const double g = std::abs((z - 50.0) / (z + 50.0));
        return (1.0 + g) / (1.0 - g);
    };
    match.vswr = vswr(match.input.value());
    std::vector<coupling::MatchPoint> curve;
    for (int i = 0; i < points; ++i) {
        const double offset = span_Hz * (static_cast<double>(i) / (points - 1) - 0.5);
        const Complex z = resistance_ohm / Complex(1.0, 2.0 * 200.0 * offset / 7.074e6);
        curve.push_back({units::hertz(7.074e6 + offset), units::Impedance::from_value(z), vswr(z)});
    }
    return models::match_plot(match, curve, units::ohms(50), 2.0);
}

TEST(MatchPlot, BandwidthIsThatOfASingleResonator) {
    // Matched: VSWR s at 2 Q df/f = (s - 1)/sqrt(s), so the width is f (s - 1)/(Q sqrt(s)) with the unloaded
    // Q (Kajfez 1984): 7.074 MHz/200 x 0.70711 = 25.01 kHz.
    const auto width = made_match_plot().bandwidth_Hz();
    ASSERT_TRUE(width);
    EXPECT_NEAR(*width, 25.01e3, 0.05e3);
}

// As many points as a match report has: a chord between two of them would be 3 to 4 per cent short.
TEST(MatchPlot, BandwidthFromFewPointsIsTheSame) {
    const auto width = made_match_plot(50.0, 4 * 70.74e3, 41).bandwidth_Hz();
    ASSERT_TRUE(width);
    EXPECT_NEAR(*width, 25.01e3, 0.06e3);
}

TEST(MatchPlot, NoWidthWhereTheLimitIsNotMetOrTheCurveEnds) {
    EXPECT_FALSE(made_match_plot(150.0).bandwidth_Hz()); // VSWR 3 at the match
    EXPECT_TRUE(models::bandwidth_words(made_match_plot(150.0)).contains(QStringLiteral("above 2")));
    EXPECT_FALSE(made_match_plot(50.0, 10e3).bandwidth_Hz());
    EXPECT_TRUE(models::bandwidth_words(made_match_plot(50.0, 10e3)).contains(QStringLiteral("beyond")));
}

TEST(MatchPlot, ImpedancesAreWrittenWithTheirSign) {
    EXPECT_EQ(models::impedance_text({48.23, -3.08}), QStringLiteral("48.2 \u2212 j3.08\u2009\u03a9"));
    EXPECT_EQ(models::impedance_text({50, 0}), QStringLiteral("50 + j0\u2009\u03a9"));
    EXPECT_EQ(models::offset_text(-12e3), QStringLiteral("\u221212\u2009kHz"));
}

/// Centre and radius of the disc from where it puts known points.
TEST(SmithFigure, PutsImpedancesWhereTheChartHasThem) {
    // Reflection of Z on 50 ohm: 50 -> 0, 100 -> 1/3, 25 -> -1/3, j50 -> j (P. H. Smith 1939).
    models::MatchPlot plot = made_match_plot();
    plot.curve = {{-3e3, {50.0, 0.0}, 1.0},
                  {-2e3, {100.0, 0.0}, 2.0},
                  {-1e3, {25.0, 0.0}, 2.0},
                  {0.0, {0.0, 50.0}, 1e9},
                  {1e3, {0.0, -50.0}, 1e9}};
    const SmithFigure figure(plot);
    const auto at = figure.points(QRectF(0, 0, 300, 300), paper_appearance());
    ASSERT_EQ(at.size(), 5);
    const double radius = at[0].y() - at[3].y();
    EXPECT_GT(radius, 85.0) << "too small to read at 300 x 300";
    EXPECT_NEAR(at[3].x(), at[0].x(), 1e-9);
    EXPECT_NEAR(at[4].y() - at[0].y(), radius, 1e-9);
    EXPECT_NEAR(at[1].x() - at[0].x(), radius / 3.0, 1e-9);
    EXPECT_NEAR(at[2].x() - at[0].x(), -radius / 3.0, 1e-9);
    EXPECT_NEAR(std::abs(reflection({50.0, 50.0}, 50.0)), 1.0 / std::sqrt(5.0), 1e-12);
}

TEST(SmithFigure, WordsAreReadableAndApart) {
    for (const double resistance : {50.0, 30.0, 90.0, 150.0}) {
        const SmithFigure figure(made_match_plot(resistance));
        for (const QSize& size : {QSize(300, 300), QSize(260, 240), QSize(600, 420), QSize(900, 900)}) {
            test::expect_words_apart(figure, size);
        }
        const auto words = test::painted_words(figure, {300, 300}, paper_appearance());
        EXPECT_TRUE(test::has_word(words, QStringLiteral("match")));
        EXPECT_TRUE(test::has_word(words, QStringLiteral("VSWR 2")));
        EXPECT_TRUE(test::has_word(words, QStringLiteral("+50\u2009kHz")));
        EXPECT_TRUE(test::has_word(words, QStringLiteral("Match at 7.074")));
    }
}

TEST(VswrFigure, DrawsTheCurveAndItsBandwidth) {
    const VswrFigure figure(made_match_plot());
    const QRectF room(0, 0, 480, 300);
    const auto at = figure.points(room, paper_appearance());
    ASSERT_EQ(at.size(), 201);
    // Symmetric about the middle, VSWR 1 at the bottom of the scale there, straight in the offset.
    EXPECT_NEAR(at[100].x() - at[50].x(), at[150].x() - at[100].x(), 1e-9);
    EXPECT_GT(at[100].y(), at[90].y());
    const auto words = test::painted_words(figure, {480, 300}, paper_appearance());
    EXPECT_TRUE(test::has_word(words, QStringLiteral("25.0\u2009kHz")));
    EXPECT_TRUE(test::has_word(words, QStringLiteral("Offset from 7.074")));
    for (const QSize& size : {QSize(300, 240), QSize(480, 300), QSize(900, 400)}) {
        for (const double resistance : {50.0, 30.0, 150.0}) {
            test::expect_words_apart(VswrFigure(made_match_plot(resistance)), size);
        }
    }
}

TEST(VswrFigure, InANarrowPlaceItsTitlesAreShorterNotCut) {
    for (const QString& title : {QStringLiteral("VSWR"), QStringLiteral("Offset, kHz")}) {
        const auto words = test::painted_words(VswrFigure(made_match_plot()), {190, 240}, paper_appearance());
        EXPECT_TRUE(std::any_of(words.begin(), words.end(), [&](const auto& word) {
            return word.text == title;
        })) << title.toStdString();
        EXPECT_FALSE(test::has_word(words, QStringLiteral("\u2026")));
    }
}

TEST(MatchFigures, SayWhyTheyAreEmpty) {
    const auto plot = models::no_match_plot(QStringLiteral("the design has no coupling loop"));
    for (const std::shared_ptr<Figure>& figure :
         {std::shared_ptr<Figure>(std::make_shared<SmithFigure>(plot)),
          std::shared_ptr<Figure>(std::make_shared<VswrFigure>(plot))}) {
        test::expect_words_apart(*figure, {320, 300});
        const auto words = test::painted_words(*figure, {320, 300}, paper_appearance());
        EXPECT_TRUE(test::has_word(words, QStringLiteral("not established")));
        EXPECT_TRUE(test::has_word(words, QStringLiteral("no coupling loop")));
        EXPECT_TRUE(figure->points(QRectF(0, 0, 320, 300), paper_appearance()).isEmpty());
        EXPECT_TRUE(figure->description().contains(QStringLiteral("no coupling loop")));
    }
}

TEST(FigureWidget, IsWalkedByKeysAndSaysItsNumbers) {
    FigureWidget widget;
    widget.resize(400, 320);
    widget.set_figure(std::make_shared<VswrFigure>(made_match_plot()));
    widget.show();
    QTest::qWait(20);
    QTest::keyClick(&widget, Qt::Key_End);
    EXPECT_EQ(widget.pointed(), 200);
    QTest::keyClick(&widget, Qt::Key_Left);
    EXPECT_EQ(widget.pointed(), 199);
    EXPECT_TRUE(widget.figure()->point_text(200).startsWith(QStringLiteral("+100\u2009kHz: VSWR ")));
    QTest::keyClick(&widget, Qt::Key_Escape);
    EXPECT_EQ(widget.pointed(), -1);
    EXPECT_TRUE(widget.accessibleDescription().contains(QStringLiteral("25.0")));
    widget.set_stale(true);
    EXPECT_TRUE(widget.stale());
    widget.set_figure(nullptr);
    widget.grab();
}

TEST(FigurePicture, IsWrittenInEveryFormat) {
    const QTemporaryDir folder;
    const SmithFigure figure(made_match_plot());
    for (const char* ending : {"png", "svg", "pdf"}) {
        const QString name = folder.filePath(QStringLiteral("a.") + QLatin1String(ending));
        ASSERT_TRUE(write_picture(name, figure, {QStringLiteral("Made loop")}, {{100.0, 100.0}, 200}));
        EXPECT_GT(QFileInfo(name).size(), 3000) << ending;
    }
    QFile svg(folder.filePath(QStringLiteral("a.svg")));
    ASSERT_TRUE(svg.open(QIODevice::ReadOnly));
    const QString text = QString::fromUtf8(svg.readAll());
    EXPECT_TRUE(text.contains(QStringLiteral("Smith chart")));
    EXPECT_TRUE(text.contains(QStringLiteral("Made loop")));
    EXPECT_FALSE(text.contains(QStringLiteral("<image")));
}

} // namespace
} // namespace loopwright::charts
