// Colours and strokes: from the published set, strong enough on both papers, and never alone.
#include "charts/chart_palette.hpp"
#include "charts/strokes.hpp"
#include "models/survey_charts.hpp"
#include "ui/chart_made_survey.hpp"

#include <gtest/gtest.h>

#include <cmath>
#include <set>

namespace loopwright::charts {
namespace {

using models::Meaning;
constexpr Meaning meanings[] = {Meaning::sky,       Meaning::conductor, Meaning::joints,
                                Meaning::capacitor, Meaning::soil,      Meaning::figure};

/// The eight colours of M. Okabe and K. Ito, "Color Universal Design" (2002, revised 2008), and white.
const std::set<QString> published = {
    QStringLiteral("#000000"), QStringLiteral("#e69f00"), QStringLiteral("#56b4e9"),
    QStringLiteral("#009e73"), QStringLiteral("#f0e442"), QStringLiteral("#0072b2"),
    QStringLiteral("#d55e00"), QStringLiteral("#cc79a7"), QStringLiteral("#ffffff")};

/// Relative luminance and contrast ratio as W3C WCAG 2.1 defines them.
double luminance(const QColor& colour) {
    const auto part = [](double c) { return c <= 0.03928 ? c / 12.92 : std::pow((c + 0.055) / 1.055, 2.4); };
    return 0.2126 * part(colour.redF()) + 0.7152 * part(colour.greenF()) + 0.0722 * part(colour.blueF());
}

double contrast(const QColor& a, const QColor& b) {
    const double one = luminance(a), other = luminance(b);
    return (std::max(one, other) + 0.05) / (std::min(one, other) + 0.05);
}

Appearance dark_look() {
    QPalette palette;
    palette.setColor(QPalette::Base, QColor(30, 30, 32));
    palette.setColor(QPalette::Text, QColor(230, 230, 230));
    return screen_appearance(palette, QFont());
}

TEST(ChartColours, ComeFromThePublishedSetAndDiffer) {
    for (const Appearance& look : {paper_appearance(), dark_look()}) {
        std::set<QString> used;
        for (const Meaning meaning : meanings) {
            if (meaning == Meaning::soil && !look.dark) {
                // Their orange, darker: the same hue and saturation.
                const QColor orange(QStringLiteral("#e69f00"));
                EXPECT_NEAR(look.curve(meaning).hsvHueF(), orange.hsvHueF(), 0.002);
                EXPECT_FLOAT_EQ(look.curve(meaning).hsvSaturationF(), orange.hsvSaturationF());
                used.insert(look.curve(meaning).name());
                continue;
            }
            EXPECT_TRUE(published.count(look.curve(meaning).name()))
                << look.curve(meaning).name().toStdString();
            used.insert(look.curve(meaning).name());
        }
        EXPECT_EQ(used.size(), std::size(meanings));
    }
}

TEST(ChartColours, ContrastOfGraphicsIsEnough) {
    // WCAG 2.1 success criterion 1.4.11 asks 3:1 of graphics, 1.4.3 4.5:1 of text.
    for (const Appearance& look : {paper_appearance(), dark_look()}) {
        for (const Meaning meaning : meanings) {
            EXPECT_GE(contrast(look.curve(meaning), look.paper), 3.0)
                << look.curve(meaning).name().toStdString();
        }
        EXPECT_GE(contrast(look.ink, look.paper), 4.5);
        EXPECT_GE(contrast(look.quiet_ink, look.paper), 4.5);
    }
    EXPECT_TRUE(dark_look().dark);
    EXPECT_FALSE(paper_appearance().dark);
}

TEST(ChartColours, CurvesOfAChartDifferWithoutColour) {
    const auto first = test::made_survey();
    const auto second = test::made_survey({.scale = 0.5});
    const Appearance look = paper_appearance();
    for (const models::ChartContent& chart :
         models::survey_charts(*first, second.get(), QStringLiteral("b"))) {
        std::set<std::vector<qreal>> dashes;
        std::set<std::pair<int, bool>> markers;
        std::set<QString> labels;
        for (const models::Curve& curve : chart.curves) {
            const QList<qreal> dash = pen_of(curve, look).dashPattern();
            dashes.insert({dash.begin(), dash.end()});
            const MarkerStyle marker = marker_of(curve);
            markers.insert({static_cast<int>(marker.shape), marker.hollow});
            labels.insert(curve.label);
        }
        EXPECT_EQ(dashes.size(), chart.curves.size()) << chart.id.toStdString();
        EXPECT_EQ(markers.size(), chart.curves.size()) << chart.id.toStdString();
        EXPECT_EQ(labels.size(), chart.curves.size()) << chart.id.toStdString();
    }
}

} // namespace
} // namespace loopwright::charts
