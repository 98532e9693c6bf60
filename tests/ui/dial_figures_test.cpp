// The dial and the VSWR at the present setting: what is drawn is what the plot says, in the right places, and
// no word covers another.
#include "charts/dial_figure.hpp"
#include "charts/resonance_figure.hpp"
#include "ui/figure_words.hpp"

#include <cmath>

namespace loopwright::charts {
namespace {

models::DialPlot made_plot() {
    models::DialPlot plot;
    plot.frequency_Hz = 7.074e6;
    plot.predicted = models::DialMark{104.2, 96.0, 112.5};
    plot.calibrated = models::DialMark{101.3, 100.4, 102.2};
    plot.span_low = 100.9;
    plot.span_high = 101.7;
    plot.present = 99.0;
    return plot;
}

models::ResonancePlot made_resonance() {
    models::ResonancePlot plot;
    plot.wanted_Hz = 7.0755e6;
    plot.resonance_Hz = 7.0875e6;
    plot.span_Hz = 12e3;
    plot.window_Hz = 3e3;
    return plot;
}

TEST(DialPlot, ReadingsHaveTheDigitsOfTheDrive) {
    using design::DialScale;
    EXPECT_EQ(models::reading_text(101.26, DialScale::degrees, 1.0), QStringLiteral("101.3°"));
    EXPECT_EQ(models::reading_text(101.26, DialScale::degrees, 10.0), QStringLiteral("101°"));
    EXPECT_EQ(models::reading_text(3.2468, DialScale::turns, 0.05), QStringLiteral("3.25 turns"));
    EXPECT_EQ(models::reading_text(-4.0, DialScale::divisions, 5.0), QStringLiteral("\u22124 div"));
    EXPECT_EQ(models::reading_text(-0.01, DialScale::divisions, 5.0), QStringLiteral("0 div"));
}

TEST(DialPlot, VswrIsOneAtResonanceAndTheLimitAtTheEdges) {
    const models::ResonancePlot plot = made_resonance();
    EXPECT_DOUBLE_EQ(models::vswr_at(plot, plot.resonance_Hz), 1.0);
    for (const double edge : {plot.resonance_Hz - 6e3, plot.resonance_Hz + 6e3}) {
        EXPECT_NEAR(models::vswr_at(plot, edge), 2.0, 1e-9);
    }
    // Z = R (1 + j x): at twice the way to VSWR 2, x = 2 (2 - 1)/sqrt(2) = 1.41421, |reflection| = x/sqrt(4 +
    // x^2) = 0.57735, VSWR = (1 + g)/(1 - g) = 3.7321 (any handbook of transmission lines).
    EXPECT_NEAR(models::vswr_at(plot, plot.wanted_Hz), 3.7321, 1e-4);
    EXPECT_EQ(models::resonance_words(plot),
              QStringLiteral("Set 12.0\u2009kHz too high: VSWR 3.73 at 7.0755\u2009MHz."));
}

TEST(DialFigure, SaysBothMarksAndTheSetting) {
    const DialFigure figure(made_plot());
    const auto words = test::painted_words(figure, QSize(700, 220), paper_appearance());
    EXPECT_TRUE(test::has_word(words, QStringLiteral("calibrated 101.3°")));
    EXPECT_TRUE(test::has_word(words, QStringLiteral("predicted 104.2°")));
    EXPECT_TRUE(test::has_word(words, QStringLiteral("now 99.0°")));
    EXPECT_TRUE(figure.description().contains(QStringLiteral("between 96.0° and 112.5°")));
}

TEST(DialFigure, NoWordCoversAnother) {
    models::DialPlot far = made_plot();
    far.present = 12.0;
    models::DialPlot turned = made_plot(); // the scale runs the other way
    turned.first_stop = 180;
    turned.last_stop = 0;
    models::DialPlot at_stop = made_plot();
    at_stop.calibrated.reset();
    at_stop.predicted = models::DialMark{179.5, 176.0, 183.0};
    at_stop.span_low = 179.2;
    at_stop.span_high = 179.8;
    for (const models::DialPlot& plot : {made_plot(), far, turned, at_stop}) {
        for (const QSize& size : {QSize(420, 190), QSize(700, 220), QSize(1200, 300)}) {
            test::expect_words_apart(DialFigure(plot), size);
        }
    }
}

TEST(DialFigure, TheIntervalIsSeenToBothItsEnds) {
    models::DialPlot plot = made_plot();
    plot.calibrated.reset();
    plot.predicted = models::DialMark{104.2, 94.6, 113.8}; // symmetric: so is its line round the middle
    const Appearance look = paper_appearance();
    const QRgb ink = look.curve(models::Meaning::capacitor).rgb();
    for (const int width : {420, 500, 700}) {
        QImage image(width, 220, QImage::Format_RGB32);
        image.fill(look.paper);
        QPainter painter(&image);
        DialFigure(plot).paint(painter, QRectF(image.rect()), look);
        QList<int> longest;
        for (int y = image.height() / 2; y < image.height(); ++y) {
            QList<int> drawn;
            for (int x = 0; x < width; ++x) {
                if (image.pixel(x, y) == ink) {
                    drawn.append(x);
                }
            }
            if (drawn.size() > longest.size()) {
                longest = drawn;
            }
        }
        ASSERT_GT(longest.size(), width / 3);
        EXPECT_NEAR(longest.first() + longest.last(), width, 4) << width;
    }
}

TEST(DialFigure, WithoutAMarkItSaysWhy) {
    models::DialPlot plot;
    plot.reason = QStringLiteral("The design has no dial yet.");
    const auto words = test::painted_words(DialFigure(plot), QSize(600, 200), paper_appearance());
    EXPECT_TRUE(test::has_word(words, QStringLiteral("no dial yet")));
}

TEST(ResonanceFigure, NoWordCoversAnotherAndTheNumbersAreThere) {
    models::ResonancePlot far = made_resonance();
    far.resonance_Hz += 200e3;
    models::ResonancePlot on = made_resonance();
    on.resonance_Hz = on.wanted_Hz;
    for (const models::ResonancePlot& plot : {made_resonance(), far, on}) {
        for (const QSize& size : {QSize(360, 220), QSize(640, 300)}) {
            test::expect_words_apart(ResonanceFigure(plot), size);
        }
    }
    const auto words =
        test::painted_words(ResonanceFigure(made_resonance()), QSize(500, 260), paper_appearance());
    EXPECT_TRUE(test::has_word(words, QStringLiteral("VSWR 3.73")));
    EXPECT_TRUE(test::has_word(words, QStringLiteral("radio")));
}

TEST(ResonanceFigure, WithoutASettingItSaysWhatIsMissing) {
    models::ResonancePlot plot;
    plot.reason = QStringLiteral("Say where the dial stands now.");
    const auto words = test::painted_words(ResonanceFigure(plot), QSize(500, 260), paper_appearance());
    EXPECT_TRUE(test::has_word(words, QStringLiteral("Say where")));
    EXPECT_TRUE(ResonanceFigure(plot).points(QRectF(0, 0, 500, 260), paper_appearance()).isEmpty());
}

} // namespace
} // namespace loopwright::charts
