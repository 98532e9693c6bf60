#include "ui/screenshots/figures.hpp"

#include "app/samples.hpp"
#include "base/error.hpp"
#include "charts/figure_widget.hpp"
#include "charts/height_figure.hpp"
#include "charts/polar_figure.hpp"
#include "charts/smith_figure.hpp"
#include "charts/vswr_figure.hpp"
#include "models/match_plot.hpp"
#include "ui/made_site_plots.hpp"

#include <QDir>

#include <cstdio>

namespace loopwright::test {

namespace {

/// Of the first sample that can be coupled.
models::MatchPlot sample_plot() {
    for (const app::Sample& sample : app::samples()) {
        try {
            const coupling::CoupledLoop loop(sample.design);
            const coupling::Match match = loop.match(units::megahertz(14.0755));
            return models::match_plot(match, loop.curve(match, units::kilohertz(100), 101), units::ohms(50),
                                      2.0);
        } catch (const base::InputError&) {
            continue;
        }
    }
    return models::no_match_plot(QStringLiteral("no sample has a coupling loop that fits"));
}

bool save(const std::shared_ptr<const charts::Figure>& figure, const QSize& size, const QString& path) {
    charts::FigureWidget widget;
    widget.resize(size);
    widget.set_figure(figure);
    const bool saved = widget.grab().save(path);
    std::printf("%s %s\n", saved ? "wrote" : "could not write", qPrintable(path));
    return saved;
}

} // namespace

bool save_figures(const QString& folder, const QString& scheme) {
    const models::MatchPlot plot = sample_plot();
    const auto file = [&](const char* name) {
        return QDir(folder).filePath(QStringLiteral("figure-%1-%2.png").arg(QLatin1String(name), scheme));
    };
    bool all = save(std::make_shared<charts::SmithFigure>(plot), {300, 300}, file("smith-small"));
    all = save(std::make_shared<charts::SmithFigure>(plot), {520, 480}, file("smith")) && all;
    all = save(std::make_shared<charts::VswrFigure>(plot), {300, 260}, file("vswr-small")) && all;
    all = save(std::make_shared<charts::VswrFigure>(plot), {560, 340}, file("vswr")) && all;
    const auto polar = [](bool free_space, charts::PolarCut cut) {
        return std::make_shared<charts::PolarFigure>(made_pattern(free_space), cut);
    };
    all = save(polar(false, charts::PolarCut::elevation), {620, 420}, file("elevation")) && all;
    all = save(polar(false, charts::PolarCut::azimuth), {420, 420}, file("azimuth")) && all;
    all = save(polar(true, charts::PolarCut::elevation), {420, 420}, file("free-space")) && all;
    return save(std::make_shared<charts::HeightFigure>(made_heights()), {620, 420}, file("height")) && all;
}

} // namespace loopwright::test
