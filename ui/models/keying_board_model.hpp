#pragma once
// The sheet before keying as a table: one row a band, a verdict in words, figures with their unit in the
// header, the unfavourable ends.
#include "survey/keying.hpp"
#include "units/text.hpp"

#include <QAbstractTableModel>
#include <QString>

#include <memory>

namespace loopwright::models {

class KeyingBoardModel : public QAbstractTableModel {
    Q_OBJECT
public:
    enum Column {
        band_column,
        verdict,
        voltage,
        voltage_high,
        usable,
        distance,
        reason, ///< the one that decides; of one `within` its first part, the tooltip has all
        limit,
        cause,
        capacitor_power,
        people_power,
        tuning_power,
        direction,
        touch,
        conductor_rise,
        capacitor_rise,
        column_count
    };
    using QAbstractTableModel::QAbstractTableModel;

    /// May be null. Rows are kept where the bands are the same, so that a selection stays. Roles are those of
    /// BandBoardModel.
    void set_keying(std::shared_ptr<const survey::Keying> keying);
    void set_unit_system(units::UnitSystem system);
    [[nodiscard]] const std::shared_ptr<const survey::Keying>& keying() const { return keying_; }
    [[nodiscard]] const survey::KeyingBand* row_at(int row) const;
    /// -1 where there is no such band.
    [[nodiscard]] int row_of(const QString& name) const;

    [[nodiscard]] int rowCount(const QModelIndex& parent = {}) const override;
    [[nodiscard]] int columnCount(const QModelIndex& parent = {}) const override;
    [[nodiscard]] QVariant data(const QModelIndex& index, int role) const override;
    [[nodiscard]] QVariant headerData(int section, Qt::Orientation orientation, int role) const override;

private:
    /// Empty where there is none.
    [[nodiscard]] QString figure(const survey::KeyingBand& band, int column) const;
    [[nodiscard]] static QString short_reason(const survey::KeyingBand& band);
    [[nodiscard]] QString words(const survey::KeyingBand& band, int column) const;
    [[nodiscard]] QString missing(const survey::KeyingBand& band, int column) const;
    [[nodiscard]] QString text(const survey::KeyingBand& band, int column) const;
    [[nodiscard]] bool settled() const { return keying_ && keying_->request.intervals; }
    std::shared_ptr<const survey::Keying> keying_;
    units::UnitSystem system_ = units::UnitSystem::metric;
};

} // namespace loopwright::models
