#pragma once
// The retune card on paper: every working frequency with its dial, in large black figures on white, with the
// highest voltage, the distance to keep and the order of tuning. One page of A4 or Letter, or its upper half
// for the pocket.
#include "printing/sheet.hpp"
#include "survey/card.hpp"
#include "survey/keying.hpp"

namespace loopwright::printing {

struct CardSheetData {
    std::shared_ptr<const survey::Card> card;     ///< complete
    std::shared_ptr<const survey::Keying> keying; ///< complete, with its intervals
    QString file;                                 ///< name of the design file; empty: not saved
    QDate date = QDate::currentDate();
    units::UnitSystem units = units::UnitSystem::metric;
    bool pocket = false; ///< the upper half of the page, to be cut off
};

[[nodiscard]] Paper paper_of(const CardSheetData& data);

} // namespace loopwright::printing
