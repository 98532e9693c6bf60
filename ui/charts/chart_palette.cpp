#include "charts/chart_palette.hpp"

#include <QFontInfo>

#include <algorithm>

namespace loopwright::charts {

namespace {

// Okabe and Ito 2008, RGB as published.
constexpr QRgb black = 0xff000000, orange = 0xffe69f00, sky_blue = 0xff56b4e9, bluish_green = 0xff009e73,
               yellow = 0xfff0e442, blue = 0xff0072b2, vermillion = 0xffd55e00, reddish_purple = 0xffcc79a7,
               white = 0xffffffff;
/// Their orange has 2.3:1 on white; at 0.84 of its lightness, the hue kept, it has the 3:1 that WCAG 2.1
/// (1.4.11) asks of graphics.
constexpr QRgb deep_orange = 0xffc18500;
constexpr int dark_below = 128; ///< lightness of the paper

/// `share` of a over b.
QColor blend(const QColor& a, const QColor& b, double share) {
    const auto mix = [share](float one, float other) {
        return static_cast<float>(share) * one + static_cast<float>(1.0 - share) * other;
    };
    return QColor::fromRgbF(mix(a.redF(), b.redF()), mix(a.greenF(), b.greenF()), mix(a.blueF(), b.blueF()));
}

/// Lets through what lies below.
QColor thin(QColor colour, double share) {
    colour.setAlphaF(static_cast<float>(share));
    return colour;
}

Appearance appearance_on(const QColor& paper, const QColor& ink) {
    Appearance look;
    look.dark = paper.lightness() < dark_below;
    look.paper = paper;
    look.ink = ink;
    look.quiet_ink = blend(ink, paper, 0.68);
    look.grid = blend(ink, paper, 0.14);
    look.stripe = thin(ink, 0.075);
    look.focus_stripe = thin(QColor::fromRgba(look.dark ? yellow : orange), 0.4);
    look.zone = thin(ink, look.dark ? 0.13 : 0.10);
    look.focus = ink;
    return look;
}

} // namespace

QColor Appearance::curve(models::Meaning meaning) const {
    switch (meaning) {
    case models::Meaning::sky:
        return QColor::fromRgba(dark ? sky_blue : blue);
    case models::Meaning::conductor:
        return QColor::fromRgba(dark ? orange : vermillion);
    case models::Meaning::joints:
        return QColor::fromRgba(bluish_green);
    case models::Meaning::capacitor:
        return QColor::fromRgba(reddish_purple);
    case models::Meaning::soil:
        return QColor::fromRgba(dark ? yellow : deep_orange);
    case models::Meaning::figure:
        return QColor::fromRgba(dark ? white : black);
    }
    return ink;
}

Appearance screen_appearance(const QPalette& palette, const QFont& font) {
    Appearance look = appearance_on(palette.color(QPalette::Base), palette.color(QPalette::Text));
    look.font = font;
    look.font.setPixelSize(std::max(9, QFontInfo(font).pixelSize() - 1));
    return look;
}

Appearance paper_appearance(double font_px) {
    Appearance look = appearance_on(QColor::fromRgba(white), QColor::fromRgba(black));
    look.font = QFont(QStringLiteral("DejaVu Sans"));
    look.font.setPixelSize(static_cast<int>(font_px));
    look.font.setHintingPreference(QFont::PreferNoHinting);
    return look;
}

QPalette paper_palette() {
    const Appearance look = paper_appearance();
    QPalette palette;
    for (const auto role : {QPalette::Window, QPalette::Base, QPalette::Button}) {
        palette.setColor(role, look.paper);
    }
    for (const auto role : {QPalette::WindowText, QPalette::Text, QPalette::ButtonText}) {
        palette.setColor(role, look.ink);
    }
    palette.setColor(QPalette::PlaceholderText, look.quiet_ink);
    palette.setColor(QPalette::AlternateBase, look.grid);
    palette.setColor(QPalette::Mid, look.grid);
    palette.setColor(QPalette::Highlight, look.curve(models::Meaning::sky));
    palette.setColor(QPalette::HighlightedText, look.paper);
    return palette;
}

} // namespace loopwright::charts
