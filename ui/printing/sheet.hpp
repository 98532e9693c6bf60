#pragma once
// The page that a person keeps: title, hazards, the loop to scale, its parts, the bands, three charts,
// cautions, assumptions, file, version and date. Always dark on white. One page of A4 or Letter.
#include "survey/keying.hpp"
#include "survey/survey.hpp"
#include "units/text.hpp"

#include <QDate>
#include <QString>

#include <functional>
#include <memory>

class QPagedPaintDevice;
class QPainter;

namespace loopwright::printing {

struct SheetData {
    /// With bands and curve, complete.
    std::shared_ptr<const survey::Survey> survey;
    QString file; ///< name of the design file; empty: not saved
    QDate date = QDate::currentDate();
    units::UnitSystem units = units::UnitSystem::metric;
    std::shared_ptr<const survey::Keying> keying = nullptr; ///< complete, with intervals; or none
};

/// One page of any kind: what it is called and how it is painted into a width and height of paper [mm],
/// margins already taken off.
struct Paper {
    QString title; ///< in the PDF
    QString stem;  ///< beginning of the proposed file name
    std::function<void(QPainter& painter, const QPointF& origin, double units_per_mm, const QSizeF& size_mm)>
        paint;
};
[[nodiscard]] Paper paper_of(const SheetData& data);

/// Room around the page's content.
inline constexpr double margin_mm = 12.0;

/// Paints the page into a width and height of paper [mm], margins already taken off.
void paint_sheet(QPainter& painter, const QPointF& origin, double units_per_mm, const QSizeF& size_mm,
                 const SheetData& data);

/// Prints on any device with pages (a printer, a PDF). False where it cannot be started.
[[nodiscard]] bool print_sheet(QPagedPaintDevice& device, const SheetData& data);

/// The same for any page.
[[nodiscard]] bool print_paper(QPagedPaintDevice& device, const Paper& paper);
[[nodiscard]] bool write_paper_pdf(const QString& file, const Paper& paper, bool letter);

/// Letter where the system's locale measures in US units, else A4.
[[nodiscard]] bool prefers_letter();

/// Writes a PDF. False where the file cannot be written.
[[nodiscard]] bool write_sheet_pdf(const QString& file, const SheetData& data, bool letter);

} // namespace loopwright::printing
