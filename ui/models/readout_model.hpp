#pragma once
// The numbers of every curve at the crosshair: one column a curve, one row a design.
#include "models/chart_content.hpp"

#include <QAbstractTableModel>

#include <memory>
#include <vector>

namespace loopwright::models {

using Charts = std::shared_ptr<const std::vector<ChartContent>>;

class ReadoutModel : public QAbstractTableModel {
    Q_OBJECT
public:
    using QAbstractTableModel::QAbstractTableModel;

    void set_charts(Charts charts, const QString& name, const QString& compared_name);
    void set_frequency(double frequency_Hz);
    [[nodiscard]] double frequency_Hz() const { return frequency_Hz_; }
    /// The curve of a column; compared: of the second design. Null where there is none.
    [[nodiscard]] const Curve* curve(int column, bool compared = false) const;

    [[nodiscard]] int rowCount(const QModelIndex& parent = {}) const override;
    [[nodiscard]] int columnCount(const QModelIndex& parent = {}) const override;
    [[nodiscard]] QVariant data(const QModelIndex& index, int role) const override;
    [[nodiscard]] QVariant headerData(int section, Qt::Orientation orientation, int role) const override;

private:
    Charts charts_;
    std::vector<const Curve*> curves_, compared_; ///< into charts_; the same columns
    QString name_, compared_name_;
    double frequency_Hz_ = 7.074e6;
};

} // namespace loopwright::models
