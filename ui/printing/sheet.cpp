#include "printing/sheet.hpp"

#include "base/version.hpp"
#include "printing/canvas.hpp"
#include "printing/chart_export.hpp"
#include "printing/sheet_parts.hpp"

#include <QLocale>
#include <QPageLayout>
#include <QPageSize>
#include <QPagedPaintDevice>
#include <QPdfWriter>

namespace loopwright::printing {

namespace {
constexpr int pdf_dpi = 1200;
constexpr double mm_per_inch = 25.4;
} // namespace

void paint_sheet(QPainter& painter, const QPointF& origin, double units_per_mm, const QSizeF& size_mm,
                 const SheetData& data) {
    painter.save();
    painter.setRenderHint(QPainter::Antialiasing);
    Canvas canvas(painter, origin, units_per_mm);
    SheetParts parts(canvas, data, size_mm);
    parts.paint();
    painter.restore();
}

Paper paper_of(const SheetData& data) {
    const QString title = QString::fromStdString(data.survey->request.design.title);
    return {title, file_stem(title),
            [data](QPainter& painter, const QPointF& origin, double units_per_mm, const QSizeF& size_mm) {
                paint_sheet(painter, origin, units_per_mm, size_mm, data);
            }};
}

bool print_sheet(QPagedPaintDevice& device, const SheetData& data) {
    return print_paper(device, paper_of(data));
}

bool print_paper(QPagedPaintDevice& device, const Paper& sheet) {
    QPainter painter;
    if (!painter.begin(&device)) {
        return false;
    }
    const QRectF paper = device.pageLayout().paintRect(QPageLayout::Millimeter);
    // The painter's origin is the corner of the printable part, where a driver's margins end.
    sheet.paint(painter, QPointF(0, 0), device.logicalDpiX() / mm_per_inch, paper.size());
    return painter.end();
}

bool prefers_letter() {
    return QLocale::system().measurementSystem() == QLocale::ImperialUSSystem;
}

bool write_sheet_pdf(const QString& file, const SheetData& data, bool letter) {
    return write_paper_pdf(file, paper_of(data), letter);
}

bool write_paper_pdf(const QString& file, const Paper& paper, bool letter) {
    QPdfWriter writer(file);
    writer.setResolution(pdf_dpi);
    writer.setPageSize(QPageSize(letter ? QPageSize::Letter : QPageSize::A4));
    writer.setPageMargins(QMarginsF(margin_mm, margin_mm, margin_mm, margin_mm), QPageLayout::Millimeter);
    writer.setTitle(paper.title);
    writer.setCreator(QStringLiteral("Loopwright %1").arg(QString::fromLatin1(base::version)));
    return print_paper(writer, paper);
}

} // namespace loopwright::printing
