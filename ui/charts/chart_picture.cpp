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
#include <functional>
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

/// A chart of either kind: how it is called and how it is painted into a room.
struct Picture {
    QString title;
    QString description;
    std::function<void(QPainter&, const QRectF& room, const Appearance&)> paint;
};

void paint_chart(QPainter& painter, const QRectF& room, const models::ChartContent& content,
                 const Span& range, const Appearance& look) {
    QGraphicsScene scene;
    auto* plot = new Plot; // the scene's
    scene.addItem(plot);
    plot->set_appearance(look);
    plot->set_content(content);
    if (range.high > range.low) {
        plot->set_range(range);
    }
    plot->resize(room.size());
    scene.setSceneRect(QRectF(QPointF(0, 0), room.size()));
    scene.render(&painter, room, scene.sceneRect(), Qt::IgnoreAspectRatio);
}

Picture picture_of(const models::ChartContent& content, const Span& range) {
    return {content.title, models::description(content),
            [&content, range](QPainter& painter, const QRectF& room, const Appearance& look) {
                paint_chart(painter, room, content, range, look);
            }};
}

Picture picture_of(const Figure& figure) {
    return {figure.title(), figure.description(),
            [&figure](QPainter& painter, const QRectF& room, const Appearance& look) {
                figure.paint(painter, room, look);
            }};
}

void paint_any(QPainter& painter, const QRectF& target, const Picture& picture, const Origin& origin,
               const PictureSize& size) {
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
    picture.paint(painter, paper.adjusted(0, 0, 0, -below), look);
    painter.restore();
}

QImage image_of(const Picture& picture, const Origin& origin, const PictureSize& size) {
    const auto pixels = [&](double mm) {
        return std::max(1, static_cast<int>(std::lround(mm / mm_per_inch * size.dpi)));
    };
    QImage image(pixels(size.mm.width()), pixels(size.mm.height()), QImage::Format_RGB32);
    const int per_metre = static_cast<int>(std::lround(size.dpi / mm_per_inch * 1000.0));
    image.fill(paper_appearance().paper);
    QPainter painter(&image);
    paint_any(painter, QRectF(image.rect()), picture, origin, size);
    painter.end();
    // Only now: fonts would follow the resolution.
    image.setDotsPerMeterX(per_metre);
    image.setDotsPerMeterY(per_metre);
    return image;
}

bool write_svg(const QString& file, const Picture& picture, const Origin& origin, const PictureSize& size) {
    constexpr int resolution = 96;
    const QSizeF units = size.mm * units_per_mm;
    QSvgGenerator generator;
    generator.setFileName(file);
    generator.setResolution(resolution);
    generator.setSize(units.toSize());
    generator.setViewBox(QRectF(QPointF(0, 0), units));
    generator.setTitle(origin.design.isEmpty() ? picture.title
                                               : origin.design + QStringLiteral(": ") + picture.title);
    generator.setDescription(picture.description);
    QPainter painter;
    if (!painter.begin(&generator)) {
        return false;
    }
    paint_any(painter, QRectF(QPointF(0, 0), units), picture, origin, size);
    return painter.end();
}

bool write_pdf(const QString& file, const Picture& picture, const Origin& origin, const PictureSize& size) {
    constexpr int resolution = 1200;
    QPdfWriter writer(file);
    writer.setResolution(resolution);
    writer.setPageSize(QPageSize(size.mm, QPageSize::Millimeter, {}, QPageSize::ExactMatch));
    writer.setPageMargins(QMarginsF(0, 0, 0, 0));
    writer.setTitle(picture.title);
    writer.setCreator(origin.program);
    QPainter painter;
    if (!painter.begin(&writer)) {
        return false;
    }
    paint_any(painter, QRectF(0, 0, writer.width(), writer.height()), picture, origin, size);
    return painter.end();
}

bool write_any(const QString& file, const Picture& picture, const Origin& origin, const PictureSize& size) {
    const QString ending = QFileInfo(file).suffix().toLower();
    if (ending == QLatin1String("png")) {
        return image_of(picture, origin, size).save(file, "PNG");
    }
    if (ending == QLatin1String("svg")) {
        return write_svg(file, picture, origin, size);
    }
    return ending == QLatin1String("pdf") && write_pdf(file, picture, origin, size);
}

} // namespace

void paint_picture(QPainter& painter, const QRectF& target, const models::ChartContent& content,
                   const Origin& origin, const PictureSize& size) {
    paint_any(painter, target, picture_of(content, size.range), origin, size);
}

QImage picture_image(const models::ChartContent& content, const Origin& origin, const PictureSize& size) {
    return image_of(picture_of(content, size.range), origin, size);
}

bool write_picture(const QString& file, const models::ChartContent& content, const Origin& origin,
                   const PictureSize& size) {
    return write_any(file, picture_of(content, size.range), origin, size);
}

void paint_picture(QPainter& painter, const QRectF& target, const Figure& figure, const Origin& origin,
                   const PictureSize& size) {
    paint_any(painter, target, picture_of(figure), origin, size);
}

QImage picture_image(const Figure& figure, const Origin& origin, const PictureSize& size) {
    return image_of(picture_of(figure), origin, size);
}

bool write_picture(const QString& file, const Figure& figure, const Origin& origin, const PictureSize& size) {
    return write_any(file, picture_of(figure), origin, size);
}

} // namespace loopwright::charts
