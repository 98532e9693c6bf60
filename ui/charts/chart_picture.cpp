#include "charts/chart_picture.hpp"

#include "charts/plot.hpp"

#include <QFileInfo>
#include <QFontMetricsF>
#include <QGraphicsScene>
#include <QPageLayout>
#include <QPageSize>
#include <QPainter>
#include <QPdfWriter>
#include <QSvgGenerator>

#include <algorithm>
#include <cmath>
#include <memory>

namespace loopwright::charts {

namespace {

constexpr double mm_per_inch = 25.4;
/// A picture is laid out in these units: 96 to the inch, so that its text has the size it has on a screen.
constexpr double units_per_mm = 96.0 / mm_per_inch;
constexpr double title_font_px = 11.0, small_share = 0.8;

QStringList lines_of(const Origin& origin) {
    const auto joined = [](QStringList parts) {
        parts.removeAll(QString());
        return parts.join(QStringLiteral(" · "));
    };
    QStringList lines = {joined({origin.design, origin.compared}), joined({origin.conditions}),
                         joined({origin.date, origin.program})};
    lines.removeAll(QString());
    return lines;
}

/// Height that the lines below the chart take.
double paint_origin(QPainter& painter, const QRectF& paper, const Origin& origin, const Appearance& look) {
    QFont font = look.font;
    font.setPixelSize(std::max(7, static_cast<int>(std::lround(look.font.pixelSize() * small_share))));
    const QFontMetricsF metrics(font);
    const QStringList lines = lines_of(origin);
    const double height = metrics.height() * static_cast<double>(lines.size()) + 2.0;
    painter.setFont(font);
    painter.setPen(look.quiet_ink);
    for (int i = 0; i < lines.size(); ++i) {
        const QRectF room(paper.left() + 6.0, paper.bottom() - height + i * metrics.height(),
                          paper.width() - 12.0, metrics.height());
        painter.drawText(room, Qt::AlignLeft | Qt::AlignVCenter | Qt::TextSingleLine,
                         metrics.elidedText(lines[i], Qt::ElideRight, room.width()));
    }
    return lines.isEmpty() ? 0.0 : height;
}

} // namespace

void paint_picture(QPainter& painter, const QRectF& target, const models::ChartContent& content,
                   const Origin& origin, const PictureSize& size) {
    const QSizeF paper_size = size.mm * units_per_mm;
    const QRectF paper(QPointF(0, 0), paper_size);
    const double font_px = std::clamp(paper_size.width() / 40.0, 8.0, title_font_px);
    const Appearance look = paper_appearance(font_px);
    painter.save();
    painter.setRenderHint(QPainter::Antialiasing);
    painter.translate(target.topLeft());
    painter.scale(target.width() / paper.width(), target.height() / paper.height());
    painter.fillRect(paper, look.paper);
    const double below = paint_origin(painter, paper, origin, look);

    QGraphicsScene scene;
    auto* plot = new Plot; // the scene's
    scene.addItem(plot);
    plot->set_appearance(look);
    plot->set_content(content);
    if (size.range.high > size.range.low) {
        plot->set_range(size.range);
    }
    const QRectF room = paper.adjusted(0, 0, 0, -below);
    plot->resize(room.size());
    scene.setSceneRect(QRectF(QPointF(0, 0), room.size()));
    scene.render(&painter, room, scene.sceneRect(), Qt::IgnoreAspectRatio);
    painter.restore();
}

QImage picture_image(const models::ChartContent& content, const Origin& origin, const PictureSize& size) {
    const auto pixels = [&](double mm) {
        return std::max(1, static_cast<int>(std::lround(mm / mm_per_inch * size.dpi)));
    };
    QImage image(pixels(size.mm.width()), pixels(size.mm.height()), QImage::Format_RGB32);
    const int per_metre = static_cast<int>(std::lround(size.dpi / mm_per_inch * 1000.0));
    image.fill(paper_appearance().paper);
    QPainter painter(&image);
    paint_picture(painter, QRectF(image.rect()), content, origin, size);
    painter.end();
    // Only now: fonts would follow the resolution.
    image.setDotsPerMeterX(per_metre);
    image.setDotsPerMeterY(per_metre);
    return image;
}

namespace {

bool write_svg(const QString& file, const models::ChartContent& content, const Origin& origin,
               const PictureSize& size) {
    constexpr int resolution = 96;
    const QSizeF units = size.mm * units_per_mm;
    QSvgGenerator generator;
    generator.setFileName(file);
    generator.setResolution(resolution);
    generator.setSize(units.toSize());
    generator.setViewBox(QRectF(QPointF(0, 0), units));
    generator.setTitle(origin.design.isEmpty() ? content.title
                                               : origin.design + QStringLiteral(": ") + content.title);
    generator.setDescription(models::description(content));
    QPainter painter;
    if (!painter.begin(&generator)) {
        return false;
    }
    paint_picture(painter, QRectF(QPointF(0, 0), units), content, origin, size);
    return painter.end();
}

bool write_pdf(const QString& file, const models::ChartContent& content, const Origin& origin,
               const PictureSize& size) {
    constexpr int resolution = 1200;
    QPdfWriter writer(file);
    writer.setResolution(resolution);
    writer.setPageSize(QPageSize(size.mm, QPageSize::Millimeter, {}, QPageSize::ExactMatch));
    writer.setPageMargins(QMarginsF(0, 0, 0, 0));
    writer.setTitle(content.title);
    writer.setCreator(origin.program);
    QPainter painter;
    if (!painter.begin(&writer)) {
        return false;
    }
    paint_picture(painter, QRectF(0, 0, writer.width(), writer.height()), content, origin, size);
    return painter.end();
}

} // namespace

bool write_picture(const QString& file, const models::ChartContent& content, const Origin& origin,
                   const PictureSize& size) {
    const QString ending = QFileInfo(file).suffix().toLower();
    if (ending == QLatin1String("png")) {
        return picture_image(content, origin, size).save(file, "PNG");
    }
    if (ending == QLatin1String("svg")) {
        return write_svg(file, content, origin, size);
    }
    return ending == QLatin1String("pdf") && write_pdf(file, content, origin, size);
}

} // namespace loopwright::charts
