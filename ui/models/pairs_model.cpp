#include "models/pairs_model.hpp"

#include <utility>

namespace loopwright::models {

namespace {
constexpr int edited_columns = 2;
} // namespace

PairsModel::PairsModel(QStringList headings, QStringList tips, QObject* parent)
    : QAbstractTableModel(parent), headings_(std::move(headings)), tips_(std::move(tips)) {}

void PairsModel::set_rows(const QList<PairRow>& rows) {
    if (rows == rows_) {
        return;
    }
    if (rows.size() == rows_.size()) { // a selection and an open field stay
        rows_ = rows;
        Q_EMIT dataChanged(index(0, 0), index(rowCount() - 1, columnCount() - 1));
        return;
    }
    beginResetModel();
    rows_ = rows;
    endResetModel();
}

int PairsModel::rowCount(const QModelIndex& parent) const {
    return parent.isValid() ? 0 : static_cast<int>(rows_.size());
}

int PairsModel::columnCount(const QModelIndex& parent) const {
    return parent.isValid() ? 0 : static_cast<int>(headings_.size());
}

QVariant PairsModel::data(const QModelIndex& index, int role) const {
    if (!index.isValid() || index.row() >= rowCount()) {
        return {};
    }
    const PairRow& row = rows_[index.row()];
    const int column = index.column();
    const QString text = column == 0   ? row.first
                         : column == 1 ? row.second
                                       : row.remarks.value(column - edited_columns);
    switch (role) {
    case Qt::DisplayRole:
        return column == 0 && row.doubtful ? QStringLiteral("\u25B3 ") + text : text;
    case Qt::EditRole:
        return text;
    case Qt::ToolTipRole:
        return row.tip.isEmpty() ? QVariant(text) : QVariant(row.tip);
    case Qt::TextAlignmentRole:
        return static_cast<int>((column < edited_columns + 1 ? Qt::AlignRight : Qt::AlignLeft) |
                                Qt::AlignVCenter);
    case Qt::AccessibleTextRole:
        return headings_.value(column) + QStringLiteral(": ") + text;
    case Qt::AccessibleDescriptionRole:
        return row.tip;
    default:
        return {};
    }
}

QVariant PairsModel::headerData(int section, Qt::Orientation orientation, int role) const {
    if (orientation != Qt::Horizontal) {
        return {};
    }
    if (role == Qt::DisplayRole) {
        return headings_.value(section);
    }
    return role == Qt::ToolTipRole ? QVariant(tips_.value(section)) : QVariant();
}

Qt::ItemFlags PairsModel::flags(const QModelIndex& index) const {
    const Qt::ItemFlags usual = QAbstractTableModel::flags(index);
    return index.isValid() && index.column() < edited_columns ? usual | Qt::ItemIsEditable : usual;
}

bool PairsModel::setData(const QModelIndex& index, const QVariant& value, int role) {
    if (role != Qt::EditRole || !index.isValid() || index.column() >= edited_columns) {
        return false;
    }
    const QString text = value.toString().trimmed();
    if (text != data(index, Qt::EditRole).toString()) {
        Q_EMIT change_wanted(index.row(), index.column(), text);
    }
    return true;
}

} // namespace loopwright::models
