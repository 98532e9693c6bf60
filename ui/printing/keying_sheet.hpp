#pragma once
// The page to have beside the transmitter: verdicts band by band with reasons and what would help, distances,
// assumptions, editions of the limits, cautions. Always dark on white. One page of A4 or Letter.
#include "models/surroundings_plot.hpp"
#include "printing/sheet.hpp"
#include "survey/keying.hpp"

namespace loopwright::printing {

struct KeyingSheetData {
    /// Complete, with its intervals.
    std::shared_ptr<const survey::Keying> keying;
    models::SurroundingsPlot plot; ///< of all planned bands; drawn where there is room
    QString file;                  ///< name of the design file; empty: not saved
    QDate date = QDate::currentDate();
    units::UnitSystem units = units::UnitSystem::metric;
};

[[nodiscard]] Paper paper_of(const KeyingSheetData& data);

/// Computes the pictures of all planned bands together under every limit of the report, with their
/// unfavourable ends: some seconds at most. Of a report with intervals.
[[nodiscard]] models::SurroundingsPlot planned_plot(const survey::Keying& keying, units::UnitSystem system);

} // namespace loopwright::printing
