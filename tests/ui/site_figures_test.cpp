// Polar patterns and what height does: numbers in the right places, in words, with gaps and without data.
#include "charts/chart_picture.hpp"
#include "charts/height_figure.hpp"
#include "charts/polar_figure.hpp"
#include "models/headline.hpp"
#include "ui/figure_words.hpp"
#include "ui/made_site_plots.hpp"

#include <cmath>

namespace loopwright::charts {
namespace {

const QSize sizes[] = {{300, 260}, {420, 300}, {620, 420}, {1200, 700}};

TEST(PolarFigure, RadiusCountsDecibelsEvenly) {
    const PolarFigure figure(test::made_pattern(), PolarCut::elevation);
    const QRectF room(0, 0, 620, 420);
    const auto at = figure.points(room, paper_appearance());
    ASSERT_EQ(at.size(), 61); // 0 to 180 degrees in steps of 3
    // The highest gain drawn is the dipole's 7 dBi: the rim is at 10 dBi, the middle 40 dB below.
    EXPECT_DOUBLE_EQ(polar_rim_dBi(figure.plot()), 10.0);
    // Straight up 2 dBi: (2 - 10)/40 + 1 = 0.8 of the radius; at the horizon -10 dBi: half of it.
    const QPointF middle = (at.front() + at.back()) / 2.0;
    const double half_radius = at.front().x() - middle.x();
    EXPECT_NEAR(middle.y() - at[30].y(), 1.6 * half_radius, 1e-9);
    EXPECT_NEAR(at[30].x(), middle.x(), 1e-9);
    // At 15 degrees 2 - 12 cos^2(15) = -9.196 dBi: 0.5201 of the radius, 15 degrees up.
    const QPointF low = at[5] - middle;
    EXPECT_NEAR(std::hypot(low.x(), low.y()), 2.0 * half_radius * 0.5201, 0.01 * half_radius);
    EXPECT_NEAR(std::atan2(-low.y(), low.x()) * 180.0 / M_PI, 15.0, 1e-6);
}

TEST(PolarFigure, LowAngleStandsInWords) {
    const models::PatternPlot plot = test::made_pattern();
    EXPECT_EQ(
        models::low_angle_words(plot),
        QStringLiteral("At 15°: \u22129.2\u2009dBi, 4.5\u2009dB below the dipole at 5 m (each in its best "
                       "direction)"));
    // 7 + 20 log10(sin 15) = -4.74 dBi; 2 - 12 cos^2(15) = -9.20 dBi.
    EXPECT_EQ(
        models::low_angle_words_in_cut(plot),
        QStringLiteral("In this cut at 15°: loop \u22129.2\u2009dBi, dipole at 5 m \u22124.7\u2009dBi"));
    const auto words =
        test::painted_words(PolarFigure(plot, PolarCut::elevation), {420, 300}, paper_appearance());
    for (const char* part : {"4.5\u2009dB below the dipole at 5 m", "even dB scale", "full-wave model",
                             "loop", "dipole at 5 m", "azimuth 0°", "azimuth 180°", "15°", "90°"}) {
        EXPECT_TRUE(test::has_word(words, QString::fromUtf8(part))) << part;
    }
    EXPECT_FALSE(
        models::low_angle_words(test::made_pattern(false, false)).contains(QStringLiteral("dipole")));
}

TEST(PolarFigure, GainBetweenPointsAndBesideGaps) {
    const models::PatternPlot plot = test::made_pattern();
    EXPECT_FALSE(models::gain_at(*plot.dipole_elevation, 0.0)); // nothing along the horizon
    EXPECT_FALSE(models::gain_at(*plot.dipole_elevation, 1.0));
    EXPECT_FALSE(models::gain_at(plot.loop_elevation, 181.0));
    EXPECT_NEAR(*models::gain_at(plot.loop_elevation, 88.5),
                2.0 - 6.0 * std::pow(std::cos(87 * M_PI / 180), 2), 1e-9);
    const PolarFigure figure(plot, PolarCut::elevation);
    EXPECT_TRUE(figure.point_text(0).contains(QStringLiteral("nothing")))
        << figure.point_text(0).toStdString();
}

TEST(PolarFigure, WordsAreApart) {
    for (const bool free_space : {false, true}) {
        for (const PolarCut cut : {PolarCut::elevation, PolarCut::azimuth}) {
            for (const bool dipole : {true, false}) {
                const PolarFigure figure(test::made_pattern(free_space, dipole), cut);
                for (const QSize& size : sizes) {
                    test::expect_words_apart(figure, size);
                }
            }
        }
    }
}

TEST(PolarFigure, FreeSpaceIsAWholeDisc) {
    const PolarFigure figure(test::made_pattern(true), PolarCut::elevation);
    const auto at = figure.points(QRectF(0, 0, 500, 500), paper_appearance());
    EXPECT_GT(at[115].y(), at.front().y()); // 345 degrees: below the horizon
}

TEST(HeightFigure, SharesStandWhereTheyBelong) {
    const HeightFigure figure(test::made_heights());
    const QRectF room(0, 0, 620, 420);
    const auto at = figure.points(room, paper_appearance());
    ASSERT_EQ(at.size(), 24);
    // 0.1 m to 20 m evenly in ratio: the points stand evenly.
    EXPECT_NEAR(at[12].x() - at[11].x(), at[1].x() - at[0].x(), 1e-9);
    const auto& rows = figure.plot().rows;
    // The sky's line is straight in its share.
    const double per_share = (at[10].y() - at[20].y()) / (rows[20].sky - rows[10].sky);
    EXPECT_NEAR(at[10].y() - at[15].y(), per_share * (rows[15].sky - rows[10].sky), 1e-9);
    EXPECT_TRUE(figure.point_text(0).contains(QStringLiteral("not established")));
    EXPECT_TRUE(figure.point_text(23).contains(models::percent(rows[23].sky)));
}

TEST(HeightFigure, WordsNameSharesAndTheThinOnes) {
    const HeightFigure figure(test::made_heights());
    const auto words = test::painted_words(figure, {620, 420}, paper_appearance());
    for (const char* part : {"sky", "ground", "conductor", "joints at most 0.5", "now 1", "dBi at 15°",
                             "Height of the lowest point", "Near the present height", "full-wave model"}) {
        EXPECT_TRUE(test::has_word(words, QString::fromUtf8(part))) << part;
    }
    for (const double present : {0.12, 1.0, 19.0, 50.0}) {
        for (const QSize& size : sizes) {
            test::expect_words_apart(HeightFigure(test::made_heights(present)), size);
        }
    }
    // At 20 m: 0.845 x 20/23 = 73.5 % to the sky, the most.
    EXPECT_TRUE(models::height_words(test::made_heights()).contains(QStringLiteral("73.5")));
}

TEST(SiteFigures, SayWhyTheyAreEmpty) {
    const QString why = QStringLiteral("the design stands in free space");
    const std::shared_ptr<Figure> figures[] = {
        std::make_shared<HeightFigure>(models::no_height_plot(why)),
        std::make_shared<PolarFigure>(models::no_pattern_plot(why), PolarCut::elevation),
        std::make_shared<PolarFigure>(models::no_pattern_plot(why), PolarCut::azimuth)};
    for (const auto& figure : figures) {
        for (const QSize& size : sizes) {
            test::expect_words_apart(*figure, size);
        }
        const auto words = test::painted_words(*figure, {420, 300}, paper_appearance());
        EXPECT_TRUE(test::has_word(words, QStringLiteral("not established")));
        EXPECT_TRUE(test::has_word(words, why));
        EXPECT_TRUE(figure->description().contains(why));
    }
}

} // namespace
} // namespace loopwright::charts
