#pragma once
// A chart as a picture: the same drawing as on the screen, on white paper, at its true size in millimetres.
#include "charts/figure.hpp"
#include "charts/scales.hpp"
#include "models/chart_content.hpp"

#include <QImage>
#include <QRectF>
#include <QSizeF>
#include <QString>

class QPainter;

namespace loopwright::charts {

/// What stands below an exported chart, so that it can be understood alone. Empty parts are left out.
struct Origin {
    QString design{};     ///< title of the design
    QString compared{};   ///< of the second design
    QString conditions{}; ///< model, power, emission
    QString date{};
    QString program{}; ///< name and version
};

struct PictureSize {
    QSizeF mm{160.0, 100.0};
    int dpi = 300;        ///< of pixels; lines and text of SVG and PDF have no pixels
    Span range{0.0, 0.0}; ///< frequencies shown, in hertz; empty: all
};

/// Paints the chart into a rectangle of a painter of any kind. mm: the size that the rectangle has on paper.
void paint_picture(QPainter& painter, const QRectF& target, const models::ChartContent& content,
                   const Origin& origin, const PictureSize& size);

[[nodiscard]] QImage picture_image(const models::ChartContent& content, const Origin& origin,
                                   const PictureSize& size);

/// The same for a figure; `range` of the size is of no account.
void paint_picture(QPainter& painter, const QRectF& target, const Figure& figure, const Origin& origin,
                   const PictureSize& size);
[[nodiscard]] QImage picture_image(const Figure& figure, const Origin& origin, const PictureSize& size);

/// By the ending of the name: png, svg or pdf. False where the file cannot be written or the ending is
/// another.
[[nodiscard]] bool write_picture(const QString& file, const models::ChartContent& content,
                                 const Origin& origin, const PictureSize& size);
[[nodiscard]] bool write_picture(const QString& file, const Figure& figure, const Origin& origin,
                                 const PictureSize& size);

} // namespace loopwright::charts
