#include "models/readout_model.hpp"

#include <algorithm>

namespace loopwright::models {

void ReadoutModel::set_charts(Charts charts, const QString& name, const QString& compared_name) {
    std::vector<const Curve*> curves, compared;
    if (charts) {
        for (const ChartContent& chart : *charts) {
            for (const Curve& curve : chart.curves) {
                (curve.compared ? compared : curves).push_back(&curve);
            }
        }
    }
    const auto same = [](const std::vector<const Curve*>& a, const std::vector<const Curve*>& b) {
        return std::equal(a.begin(), a.end(), b.begin(), b.end(),
                          [](const Curve* one, const Curve* other) { return one->id == other->id; });
    };
    const bool keeps_shape = same(curves, curves_) && same(compared, compared_);
    if (!keeps_shape) {
        beginResetModel();
    }
    curves_ = std::move(curves);
    compared_ = std::move(compared);
    charts_ = std::move(charts);
    name_ = name;
    compared_name_ = compared_name;
    if (!keeps_shape) {
        endResetModel();
    } else if (columnCount() > 0) {
        Q_EMIT dataChanged(index(0, 0), index(rowCount() - 1, columnCount() - 1));
    }
}

void ReadoutModel::set_frequency(double frequency_Hz) {
    if (frequency_Hz == frequency_Hz_) {
        return;
    }
    frequency_Hz_ = frequency_Hz;
    if (columnCount() > 0) {
        Q_EMIT dataChanged(index(0, 0), index(rowCount() - 1, columnCount() - 1));
    }
}

const Curve* ReadoutModel::curve(int column, bool compared) const {
    const auto& all = compared ? compared_ : curves_;
    return column >= 0 && column < static_cast<int>(all.size()) ? all[static_cast<std::size_t>(column)]
                                                                : nullptr;
}

int ReadoutModel::rowCount(const QModelIndex& parent) const {
    return parent.isValid() || curves_.empty() ? 0 : compared_.empty() ? 1 : 2;
}

int ReadoutModel::columnCount(const QModelIndex& parent) const {
    return parent.isValid() ? 0 : static_cast<int>(curves_.size());
}

QVariant ReadoutModel::data(const QModelIndex& index, int role) const {
    const Curve* of = curve(index.column(), index.row() == 1);
    if (of == nullptr) {
        return {};
    }
    switch (role) {
    case Qt::DisplayRole: {
        const auto value = value_at(*of, frequency_Hz_);
        return value ? measured_text(of->measure, *value) : tr("not established");
    }
    case Qt::AccessibleTextRole:
        return of->name + QStringLiteral(": ") + data(index, Qt::DisplayRole).toString();
    case Qt::TextAlignmentRole:
        return static_cast<int>(Qt::AlignHCenter | Qt::AlignVCenter);
    default:
        return {};
    }
}

QVariant ReadoutModel::headerData(int section, Qt::Orientation orientation, int role) const {
    if (role != Qt::DisplayRole && role != Qt::ToolTipRole) {
        return {};
    }
    if (orientation == Qt::Vertical) {
        return section == 1 ? compared_name_ : name_;
    }
    const Curve* of = curve(section);
    return of == nullptr ? QVariant() : QVariant(of->name);
}

} // namespace loopwright::models
