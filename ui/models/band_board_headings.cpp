// The band board: its headings.
#include "models/band_board_model.hpp"
#include "models/chart_content.hpp"

namespace loopwright::models {

QString BandBoardModel::column_name(int column) const {
    QString name = headerData(column, Qt::Horizontal, Qt::DisplayRole).toString();
    return name.replace(QLatin1Char('\n'), QStringLiteral(", "));
}

QVariant BandBoardModel::headerData(int section, Qt::Orientation orientation, int role) const {
    if (orientation != Qt::Horizontal || (role != Qt::DisplayRole && role != Qt::ToolTipRole)) {
        return {};
    }
    const bool tip = role == Qt::ToolTipRole;
    const auto pick = [tip](const QString& title, const QString& explained) {
        return tip ? explained : title;
    };
    switch (section) {
    case band:
        return pick(tr("Band"), tr("Planned bands of the station, lowest first"));
    case verdict:
        return pick(tr("Verdict"), tr("The worst that stands against the band"));
    case efficiency:
        return pick(tr("Efficiency\n%"),
                    tr("Share of the accepted power that goes to the sky; the bar runs from 0 to 100 %"));
    case low_gain:
        return pick(tr("Gain at 15°\ndBi"),
                    tr("Gain over isotropic at 15° elevation in the best azimuth: what "
                       "counts for distance"));
    case gain:
        return pick(tr("Best gain\ndBi"), tr("Gain over isotropic in the best direction"));
    case capacitance:
        return pick(tr("Capacitance\npF"), tr("What the capacitor with its stray must supply; the mark shows "
                                              "where in its range, on a logarithmic scale"));
    case voltage:
        return pick(tr("Capacitor\nkV peak"),
                    tr("Peak voltage across the capacitor; a full bar is its rating"));
    case distance:
        return pick(
            tr("People beyond\n%1")
                .arg(system_ == units::UnitSystem::imperial ? QStringLiteral("ft") : QStringLiteral("m")),
            tr("Distance that people must keep, from the page Before keying: unfavourable end, "
               "rounded up, public limit that asks for most"));
    case bandwidth:
        return pick(
            tr("Bandwidth\nkHz, VSWR %1")
                .arg(survey_ ? label_text(survey_->request.vswr_limit, units::Dimension::number)
                             : tr("limit")),
            tr("Between the frequencies where the loop, matched at resonance, reaches the VSWR limit"));
    case q:
        return pick(tr("Q\nunloaded"), tr("Of the loop alone; loaded and matched it is half of this"));
    case current:
        return pick(tr("Loop current\nA rms"), tr("Opposite the capacitor, the largest current"));
    case frequency:
        return pick(tr("Computed at\nMHz"),
                    tr("Usual working frequency, in the middle of the emission's window"));
    case words:
        return pick(tr("In words"), tr("Everything that decides about the band, worst first"));
    case compared_efficiency:
        return pick(tr("%1\nefficiency, %").arg(compared_name_), tr("The second design"));
    case compared_verdict:
        return pick(tr("%1\nverdict").arg(compared_name_), tr("The second design"));
    default:
        return {};
    }
}

} // namespace loopwright::models
