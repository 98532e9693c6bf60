// The sheet before keying as a table: its headings.
#include "models/keying_board_model.hpp"

namespace loopwright::models {

QVariant KeyingBoardModel::headerData(int section, Qt::Orientation orientation, int role) const {
    if (orientation != Qt::Horizontal || (role != Qt::DisplayRole && role != Qt::ToolTipRole)) {
        return {};
    }
    const QString length = system_ == units::UnitSystem::imperial ? tr("ft") : tr("m");
    const auto pick = [tip = role == Qt::ToolTipRole](const QString& title, const QString& explained) {
        return tip ? explained : title;
    };
    switch (section) {
    case band_column:
        return pick(tr("Band"), tr("Planned bands of the station, lowest first"));
    case verdict:
        return pick(tr("Verdict"), tr("Unfavourable ends against ratings and limits; never a promise"));
    case voltage:
        return pick(tr("Capacitor\nkV peak"), tr("Peak voltage across the capacitor, as entered"));
    case voltage_high:
        return pick(tr("perhaps\nkV peak"), tr("Its unfavourable end: losses, soil and height varied"));
    case usable:
        return pick(tr("Usable\nkV peak"),
                    tr("What the capacitor stands: its rating, or its air gap less the "
                       "reserve entered, in the air of the site"));
    case distance:
        return pick(tr("People beyond\n%1").arg(length),
                    tr("Horizontal distance from the loop's axis that people must keep: unfavourable end, "
                       "rounded up"));
    case reason:
        return pick(tr("Reason"), tr("What decides; below the table stand all reasons, and what would help"));
    case limit:
        return pick(tr("by limit"), tr("The limit for the general public that asks for most"));
    case cause:
        return pick(tr("Field"), tr("Which field decides: electric or magnetic"));
    case direction:
        return pick(tr("Worst direction"), tr("Azimuth where the distance is largest; 0 is in the plane of a "
                                              "vertical loop"));
    case capacitor_power:
        return pick(tr("Capacitor\nallows, W"),
                    tr("Greatest peak envelope power at which the capacitor stays within what is usable"));
    case people_power:
        return pick(tr("People\nallow, W"),
                    tr("Greatest peak envelope power for people at the distance entered, by the strictest "
                       "public limit chosen; fields as computed"));
    case tuning_power:
        return pick(
            tr("Tuning\nallows, W"),
            tr("Greatest power for the hand that tunes at the reach entered: a carrier, no credit for "
               "averaging"));
    case touch:
        return pick(tr("Touch\nV rms"),
                    tr("Conductor against the ground, the most where a hand reaches: up to 2.5 m above where "
                       "people stand. Burns come from tens of volts"));
    case conductor_rise:
        return pick(tr("Conductor\nwarmer, K"), tr("Over still air in long use, and its interval"));
    case capacitor_rise:
        return pick(tr("Capacitor\nwarmer, K"),
                    tr("Over still air in long use, and its interval; the size of "
                       "its body is assumed"));
    default:
        return {};
    }
}

} // namespace loopwright::models
