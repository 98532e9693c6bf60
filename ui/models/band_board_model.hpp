#pragma once
// The band board: one row a planned band, figures with their unit in the header, a verdict in words.
#include "survey/keying.hpp"
#include "survey/survey.hpp"
#include "units/text.hpp"

#include <QAbstractTableModel>
#include <QMetaType>
#include <QString>

#include <memory>

namespace loopwright::models {

/// What a cell shows besides its number. Shares are of the bar's length.
struct Bar {
    enum class Kind {
        share,        ///< from 0 to 1
        against_limit ///< value over limit; more than 1 hurts
        ,
        within_range ///< place in the (logarithmic) range from 0 to 1; outside: not reached
    };
    Kind kind = Kind::share;
    double value = 0;
};

class BandBoardModel : public QAbstractTableModel {
    Q_OBJECT
public:
    enum Column {
        band,
        verdict,
        efficiency,
        low_gain, ///< at a low elevation, which counts for distance
        gain,     ///< in the best direction, which over ground is often straight up
        capacitance,
        voltage,
        distance, ///< people must keep; from the sheet before keying
        bandwidth,
        q,
        current,
        frequency,
        words,
        compared_efficiency,
        compared_verdict,
        column_count
    };
    enum Role {
        bar_role = Qt::UserRole, ///< Bar, or nothing
        strong_role,             ///< bool: to be set in bold
        number_role,             ///< bool: aligned at the decimal sign
        quiet_role,              ///< bool: what would be, were the band in reach
        sentence_role            ///< bool: may be broken into lines
    };

    using QAbstractTableModel::QAbstractTableModel;

    /// Both may be null. Rows are kept where the bands are the same, so that a selection stays.
    void set_surveys(std::shared_ptr<const survey::Survey> survey,
                     std::shared_ptr<const survey::Survey> compared, const QString& compared_name);
    /// The sheet before keying of the same design; null: being computed, not computed, or of an older state.
    void set_keying(std::shared_ptr<const survey::Keying> keying, bool computing = false);
    void set_unit_system(units::UnitSystem system);
    [[nodiscard]] const std::shared_ptr<const survey::Survey>& survey() const { return survey_; }
    [[nodiscard]] bool has_comparison() const { return compared_ != nullptr; }
    /// Null for a row that is not there.
    [[nodiscard]] const survey::BandRow* row_at(int row) const;
    /// -1 where the band is not planned.
    [[nodiscard]] int row_of(const QString& name) const;
    /// Name of a column for a menu: title with unit in one line.
    [[nodiscard]] QString column_name(int column) const;

    [[nodiscard]] int rowCount(const QModelIndex& parent = {}) const override;
    [[nodiscard]] int columnCount(const QModelIndex& parent = {}) const override;
    [[nodiscard]] QVariant data(const QModelIndex& index, int role) const override;
    [[nodiscard]] QVariant headerData(int section, Qt::Orientation orientation, int role) const override;

private:
    [[nodiscard]] const survey::BandRow* compared_row(const std::string& name) const;
    /// Empty where there is no number.
    [[nodiscard]] QString number_text(const survey::BandRow& row, int column) const;
    [[nodiscard]] QString text(const survey::BandRow& row, int column) const;
    [[nodiscard]] QVariant bar(const survey::BandRow& row, int column) const;
    [[nodiscard]] const survey::KeyingBand* keyed(const survey::BandRow& row) const;
    [[nodiscard]] QString distance_text(const survey::BandRow& row) const;
    [[nodiscard]] QString distance_tip(const survey::BandRow& row) const;
    [[nodiscard]] QString tool_tip(const survey::BandRow& row, int column) const;
    void take_rows();
    void all_changed();
    std::shared_ptr<const survey::Survey> survey_, compared_;
    std::vector<survey::BandRow> rows_; ///< of the survey, the voltage as on the sheet where that is there
    std::shared_ptr<const survey::Keying> keying_;
    bool computing_ = false;
    units::UnitSystem system_ = units::UnitSystem::metric;
    QString compared_name_;
};

} // namespace loopwright::models

Q_DECLARE_METATYPE(loopwright::models::Bar)
