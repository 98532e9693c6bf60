#include "models/keying_board_model.hpp"

#include "models/band_board_model.hpp"
#include "models/headline.hpp"
#include "models/keying_words.hpp"
#include "models/quantity_words.hpp"
#include "units/text.hpp"

namespace loopwright::models {

namespace {

using survey::KeyingBand;
using survey::KeyingVerdict;

constexpr double milli = 1e-3;

QString power_figure(const std::optional<units::Power>& power) {
    return power ? number(power_down_W(*power), 2) : QString();
}

/// "12 (5\u201320)": the interval in brackets.
QString rise_figures(const loop::Heating& heating) {
    return heating.rise_K ? QStringLiteral("%1 (%2\u2013%3)")
                                .arg(number(*heating.rise_K, 2), number(heating.rise_range_K.low, 2),
                                     number(heating.rise_range_K.high, 2))
                          : QString();
}

bool is_words(int column) {
    return column == KeyingBoardModel::band_column || column == KeyingBoardModel::verdict ||
           column == KeyingBoardModel::limit || column == KeyingBoardModel::cause ||
           column == KeyingBoardModel::direction || column == KeyingBoardModel::reason ||
           column == KeyingBoardModel::conductor_rise || column == KeyingBoardModel::capacitor_rise;
}

} // namespace

void KeyingBoardModel::set_keying(std::shared_ptr<const survey::Keying> keying) {
    const auto names = [](const std::shared_ptr<const survey::Keying>& of) {
        QStringList all;
        if (of) {
            for (const KeyingBand& band : of->bands) {
                all << band_name(band);
            }
        }
        return all;
    };
    const bool same_rows = names(keying) == names(keying_);
    if (!same_rows) {
        beginResetModel();
    }
    keying_ = std::move(keying);
    if (!same_rows) {
        endResetModel();
    } else if (rowCount() > 0) {
        Q_EMIT dataChanged(index(0, 0), index(rowCount() - 1, columnCount() - 1));
    }
}

void KeyingBoardModel::set_unit_system(units::UnitSystem system) {
    system_ = system;
    if (rowCount() > 0) {
        Q_EMIT dataChanged(index(0, 0), index(rowCount() - 1, columnCount() - 1));
    }
    Q_EMIT headerDataChanged(Qt::Horizontal, 0, column_count - 1);
}

const KeyingBand* KeyingBoardModel::row_at(int row) const {
    return !keying_ || row < 0 || row >= rowCount() ? nullptr
                                                    : &keying_->bands[static_cast<std::size_t>(row)];
}

int KeyingBoardModel::row_of(const QString& name) const {
    for (int row = 0; row < rowCount(); ++row) {
        if (QString::fromStdString(row_at(row)->band) == name) {
            return row;
        }
    }
    return -1;
}

int KeyingBoardModel::rowCount(const QModelIndex& parent) const {
    return parent.isValid() || !keying_ ? 0 : static_cast<int>(keying_->bands.size());
}

int KeyingBoardModel::columnCount(const QModelIndex& parent) const {
    return parent.isValid() ? 0 : static_cast<int>(column_count);
}

QString KeyingBoardModel::figure(const KeyingBand& band, int column) const {
    if (!band.point.resonance || band.verdict == KeyingVerdict::out_of_reach) {
        return {};
    }
    const survey::KeyingDistance* most = survey::widest(band);
    switch (column) {
    case voltage:
        return number(band.point.resonance->capacitor_voltage_peak.value() * milli);
    case voltage_high:
        return settled() ? number(band.voltage_peak.high.value() * milli) : QString();
    case usable:
        return band.usable_voltage ? number(band.usable_voltage->value() * milli) : QString();
    case distance:
        return most == nullptr ? QString() : distance_up(most->range.high, system_, false);
    case capacitor_power:
        return power_figure(band.power_for_capacitor);
    case people_power:
        return power_figure(survey::least_power_for_people(band));
    case tuning_power:
        return power_figure(survey::least_power_for_tuning(band));
    case touch:
        return band.touch_in_reach_rms ? number(band.touch_in_reach_rms->value()) : QString();
    default:
        return {};
    }
}

/// The reason that decides. Where nothing stands against the key it goes on with what is in other columns:
/// left out here.
QString KeyingBoardModel::short_reason(const KeyingBand& band) {
    const QString all = QString::fromStdString(band.reasons.front().text);
    return band.verdict == KeyingVerdict::within ? all.section(QStringLiteral("; "), 0, 0) : all;
}

QString KeyingBoardModel::words(const KeyingBand& band, int column) const {
    const bool reached = band.verdict != KeyingVerdict::out_of_reach;
    const survey::KeyingDistance* most = reached ? survey::widest(band) : nullptr;
    switch (column) {
    case KeyingBoardModel::band_column:
        return band_name(band);
    case verdict:
        return verdict_of(band, settled());
    case reason:
        return short_reason(band);
    case limit:
        return most == nullptr     ? QString()
               : most->from_memory ? QString::fromStdString(most->standard) + tr(" (from memory)")
                                   : QString::fromStdString(most->standard);
    case cause:
        return most == nullptr ? QString() : cause_word(most->farthest->cause);
    case direction:
        return most == nullptr
                   ? QString()
                   : direction_words(most->farthest->azimuth,
                                     keying_->request.design.site.plane == design::Plane::vertical);
    case conductor_rise:
        return reached && band.heating ? rise_figures(band.heating->conductor) : QString();
    case capacitor_rise:
        return reached && band.heating ? rise_figures(band.heating->capacitor) : QString();
    default:
        return {};
    }
}

/// What stands where there is no figure, in words.
QString KeyingBoardModel::missing(const KeyingBand& band, int column) const {
    const design::Design& design = keying_->request.design;
    if (band.verdict == KeyingVerdict::out_of_reach) {
        return QStringLiteral("\u2013");
    }
    if (!band.point.resonance) {
        return tr("not established");
    }
    if (column == voltage_high) {
        return tr("computing");
    }
    if (column == people_power && !design.site.people_distance) {
        return tr("no distance given");
    }
    if (column == tuning_power && !design.station.reach) {
        return tr("no reach given");
    }
    if (column == touch && band.touch) {
        return tr("none in reach");
    }
    if (column == usable || column == capacitor_power) {
        return tr("no rating");
    }
    return column == limit || column == cause || column == direction ? QString() : tr("not established");
}

QString KeyingBoardModel::text(const KeyingBand& band, int column) const {
    const QString value = is_words(column) ? words(band, column) : figure(band, column);
    return value.isEmpty() ? missing(band, column) : value;
}

QVariant KeyingBoardModel::data(const QModelIndex& index, int role) const {
    const KeyingBand* band = row_at(index.row());
    if (band == nullptr) {
        return {};
    }
    const int column = index.column();
    switch (role) {
    case Qt::DisplayRole:
        return text(*band, column);
    case Qt::ToolTipRole:
        return reason_lines(*band).join(QLatin1Char('\n'));
    case Qt::AccessibleTextRole:
        return headerData(column, Qt::Horizontal, Qt::DisplayRole)
                   .toString()
                   .replace(QLatin1Char('\n'), QStringLiteral(", ")) +
               QStringLiteral(": ") + text(*band, column);
    case BandBoardModel::strong_role:
        return column == verdict && forbids(band->verdict);
    case BandBoardModel::quiet_role:
        return band->verdict == KeyingVerdict::out_of_reach && column != KeyingBoardModel::band_column;
    case BandBoardModel::sentence_role:
        return column == KeyingBoardModel::reason;
    case BandBoardModel::number_role:
        return !is_words(column) && !figure(*band, column).isEmpty();
    default:
        return {};
    }
}

} // namespace loopwright::models
