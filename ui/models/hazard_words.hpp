#pragma once
// Sentences that the hazard strip says from either source of figures: the survey of bands or the sheet before
// keying. No widget.
#include "loop/operating_point.hpp"

#include <QString>
#include <QStringList>

namespace loopwright::models {

enum class VoltageState { unknown, no_rating, within, exceeded };

struct VoltageWarning {
    VoltageState state = VoltageState::unknown;
    QString text;   ///< one line
    QString detail; ///< what it means and what to do
};

/// The voltage of the planned bands nearest to its rating or most over it, and what it is held against.
struct VoltageFigures {
    units::Voltage peak{}; ///< unfavourable end
    QString band;          ///< on a card the row
    units::Power power{};
    loop::Model model = loop::Model::full_wave;
    QString held_against;        ///< "rated 4 kV", "usable 3.8 kV"; empty: no rating
    bool over = false;           ///< of that
    bool unrated_member = false; ///< a part of the capacitor has no rating there
    QStringList unrated;         ///< all bands where a part has none
    QString highest;             ///< "1.16 kV peak on 20m" where that is another band; empty otherwise
    QStringList unknown;         ///< bands the sentence cannot speak for
};

/// `figures` null: no planned band is reached and established.
[[nodiscard]] VoltageWarning voltage_warning(const VoltageFigures* figures);

} // namespace loopwright::models
