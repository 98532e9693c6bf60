#include "models/band_board_model.hpp"

#include "loop/fitted_capacitor.hpp"
#include "models/chart_content.hpp"
#include "models/headline.hpp"
#include "models/keying_words.hpp"
#include "models/quantity_words.hpp"
#include "models/verdict_words.hpp"
#include "survey/site_voltage.hpp"
#include "survey/verdict.hpp"
#include "units/text.hpp"

#include <algorithm>
#include <cmath>

namespace loopwright::models {

namespace {

using loop::Resonance;

/// The figure of a column in the unit of its header.
QString board_figure(const Resonance& r, int column) {
    switch (column) {
    case BandBoardModel::efficiency:
    case BandBoardModel::compared_efficiency: {
        const survey::EfficiencyFigure printed = survey::efficiency_to_print(r.efficiency, 3);
        return number(100.0 * printed.share, printed.digits);
    }
    case BandBoardModel::gain:
    case BandBoardModel::low_gain: {
        const auto& gain = column == BandBoardModel::gain ? r.gain_max : r.gain_low_angle;
        const QString text = gain ? decibels(*gain, QString()) : QString();
        return text.trimmed();
    }
    case BandBoardModel::capacitance:
        return number(r.tuning_capacitance.value() * 1e12);
    case BandBoardModel::voltage:
        return number(r.capacitor_voltage_peak.value() * 1e-3);
    case BandBoardModel::bandwidth:
        return number(r.bandwidth_vswr.value() * 1e-3);
    case BandBoardModel::q:
        return number(r.q_unloaded);
    case BandBoardModel::current:
        return number(r.loop_current_rms.value());
    default:
        return {};
    }
}

bool is_figure(int column) {
    return (column >= BandBoardModel::efficiency && column <= BandBoardModel::current &&
            column != BandBoardModel::distance) ||
           column == BandBoardModel::compared_efficiency;
}

} // namespace

void BandBoardModel::set_surveys(std::shared_ptr<const survey::Survey> survey,
                                 std::shared_ptr<const survey::Survey> compared,
                                 const QString& compared_name) {
    const auto names = [](const std::shared_ptr<const survey::Survey>& of) {
        std::vector<std::string> all;
        if (of) {
            for (const survey::BandRow& row : of->bands) {
                all.push_back(row.band.name);
            }
        }
        return all;
    };
    const bool same_rows = names(survey) == names(survey_);
    if (!same_rows) {
        beginResetModel();
    }
    survey_ = std::move(survey);
    take_rows();
    compared_ = std::move(compared);
    compared_name_ = compared_name;
    if (!same_rows) {
        endResetModel();
    }
    all_changed();
}

void BandBoardModel::all_changed() {
    if (rowCount() > 0) {
        Q_EMIT dataChanged(index(0, 0), index(rowCount() - 1, columnCount() - 1));
    }
    Q_EMIT headerDataChanged(Qt::Horizontal, 0, column_count - 1);
}

void BandBoardModel::set_keying(std::shared_ptr<const survey::Keying> keying, bool computing) {
    keying_ = std::move(keying);
    computing_ = computing;
    take_rows();
    all_changed();
}

void BandBoardModel::take_rows() {
    rows_ = survey_ ? survey_->bands : std::vector<survey::BandRow>{};
    if (keying_ && survey_ && keying_->request.design == survey_->request.design) {
        rows_ = survey::with_keying(std::move(rows_), *keying_);
    }
}

void BandBoardModel::set_unit_system(units::UnitSystem system) {
    system_ = system;
    all_changed();
}

const survey::KeyingBand* BandBoardModel::keyed(const survey::BandRow& row) const {
    if (!keying_) {
        return nullptr;
    }
    const auto found =
        std::find_if(keying_->bands.begin(), keying_->bands.end(),
                     [&](const survey::KeyingBand& each) { return each.band == row.band.name; });
    return found == keying_->bands.end() ? nullptr : &*found;
}

/// Empty where no distance is established.
QString BandBoardModel::distance_text(const survey::BandRow& row) const {
    const survey::KeyingBand* sheet = keyed(row);
    const bool reached = sheet != nullptr && sheet->verdict != survey::KeyingVerdict::out_of_reach;
    const survey::KeyingDistance* most = reached ? survey::widest(*sheet) : nullptr;
    return most == nullptr ? QString() : distance_up(most->range.high, system_, false);
}

QString BandBoardModel::distance_tip(const survey::BandRow& row) const {
    const survey::KeyingBand* sheet = keyed(row);
    if (sheet == nullptr) {
        return tr("Not computed yet: treat the loop as hazardous");
    }
    const survey::KeyingDistance* most = survey::widest(*sheet);
    const QString by = most == nullptr ? QString() : limit_words(*most) + QLatin1Char('\n');
    return by + reason_lines(*sheet).join(QLatin1Char('\n'));
}

const survey::BandRow* BandBoardModel::row_at(int row) const {
    if (row < 0 || row >= rowCount()) {
        return nullptr;
    }
    return &rows_[static_cast<std::size_t>(row)];
}

int BandBoardModel::row_of(const QString& name) const {
    for (int row = 0; row < rowCount(); ++row) {
        if (QString::fromStdString(row_at(row)->band.name) == name) {
            return row;
        }
    }
    return -1;
}

const survey::BandRow* BandBoardModel::compared_row(const std::string& name) const {
    if (!compared_) {
        return nullptr;
    }
    const auto found = std::find_if(compared_->bands.begin(), compared_->bands.end(),
                                    [&](const survey::BandRow& row) { return row.band.name == name; });
    return found == compared_->bands.end() ? nullptr : &*found;
}

int BandBoardModel::rowCount(const QModelIndex& parent) const {
    return parent.isValid() ? 0 : static_cast<int>(rows_.size());
}

int BandBoardModel::columnCount(const QModelIndex& parent) const {
    return parent.isValid() ? 0 : static_cast<int>(column_count);
}

QString BandBoardModel::number_text(const survey::BandRow& row, int column) const {
    const survey::BandRow* from = column == compared_efficiency ? compared_row(row.band.name) : &row;
    return is_figure(column) && from != nullptr && from->point.resonance
               ? board_figure(*from->point.resonance, column)
               : QString();
}

QString BandBoardModel::text(const survey::BandRow& row, int column) const {
    switch (column) {
    case band:
        return QString::fromStdString(row.band.name);
    case verdict:
        return verdict_symbol(row.verdict) + QLatin1Char(' ') + verdict_word(row.verdict);
    case frequency:
        return QString::number(row.point.frequency.value() * 1e-6, 'f', 4);
    case words:
        return verdict_sentences(row);
    case distance: {
        const QString figure = distance_text(row);
        const survey::KeyingBand* sheet = keyed(row);
        return !figure.isEmpty()  ? figure
               : sheet == nullptr ? computing_ ? tr("computing") : tr("not computed")
               : sheet->verdict == survey::KeyingVerdict::out_of_reach ? QStringLiteral("\u2013")
                                                                       : tr("not established");
    }
    case compared_verdict:
    case compared_efficiency: {
        const survey::BandRow* other = compared_row(row.band.name);
        if (other == nullptr) {
            return compared_ ? tr("not planned") : QString();
        }
        if (column == compared_verdict) {
            return verdict_symbol(other->verdict) + QLatin1Char(' ') + verdict_word(other->verdict);
        }
        break;
    }
    default:
        break;
    }
    const QString value = number_text(row, column);
    return value.isEmpty() ? tr("not established") : value;
}

QVariant BandBoardModel::bar(const survey::BandRow& row, int column) const {
    if (!row.point.resonance) {
        return {};
    }
    const Resonance& r = *row.point.resonance;
    switch (column) {
    case efficiency:
        return QVariant::fromValue(Bar{Bar::Kind::share, r.efficiency});
    case voltage: {
        const auto held = survey::voltage_limit(row.point, survey_->request.design);
        return held ? QVariant::fromValue(
                          Bar{Bar::Kind::against_limit, r.capacitor_voltage_peak / held->limit})
                    : QVariant();
    }
    case capacitance: {
        const auto [low, high] = loop::capacitor_range_at(survey_->request.design, row.point.frequency);
        const double place = std::log(r.tuning_capacitance / low) / std::log(high.value() / low.value());
        return std::isfinite(place) ? QVariant::fromValue(Bar{Bar::Kind::within_range, place}) : QVariant();
    }
    default:
        return {};
    }
}

QString BandBoardModel::tool_tip(const survey::BandRow& row, int column) const {
    if (column == distance) {
        return distance_tip(row);
    }
    if (!row.point.resonance) {
        return reason_not_established(row.point);
    }
    const Resonance& r = *row.point.resonance;
    const auto between = [](const QString& low, const QString& high) {
        return tr("expected between %1 and %2").arg(low, high);
    };
    if (column == efficiency && known(r.efficiency_range)) {
        return between(percent(r.efficiency_range.low), percent(r.efficiency_range.high));
    }
    if (column == capacitance && known(r.tuning_capacitance_range)) {
        return between(shown(r.tuning_capacitance_range.low), shown(r.tuning_capacitance_range.high));
    }
    if (column == voltage && known(r.capacitor_voltage_peak_range)) {
        return between(shown(r.capacitor_voltage_peak_range.low), shown(r.capacitor_voltage_peak_range.high));
    }
    if (column == bandwidth && known(r.bandwidth_vswr_range)) {
        return between(shown(r.bandwidth_vswr_range.low), shown(r.bandwidth_vswr_range.high));
    }
    return verdict_sentences(row);
}

QVariant BandBoardModel::data(const QModelIndex& index, int role) const {
    const survey::BandRow* row = row_at(index.row());
    if (row == nullptr) {
        return {};
    }
    const int column = index.column();
    switch (role) {
    case Qt::DisplayRole:
        return text(*row, column);
    case Qt::ToolTipRole:
        return tool_tip(*row, column);
    case Qt::AccessibleTextRole:
        return column_name(column) + QStringLiteral(": ") + text(*row, column);
    case bar_role:
        return bar(*row, column);
    case sentence_role:
        return column == words;
    case strong_role:
        return column == verdict && forbids(row->verdict);
    case quiet_role:
        return is_figure(column) && column != capacitance && column != compared_efficiency &&
               row->verdict == survey::BandVerdict::out_of_reach;
    case number_role:
        return column == frequency || (column == distance && !distance_text(*row).isEmpty()) ||
               !number_text(*row, column).isEmpty();
    default:
        return {};
    }
}

} // namespace loopwright::models
