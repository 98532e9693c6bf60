#include "models/text_table_model.hpp"

#include <utility>

namespace loopwright::models {

void TextTableModel::set_table(TextTable table) {
    beginResetModel();
    table_ = std::move(table);
    endResetModel();
}

int TextTableModel::rowCount(const QModelIndex& parent) const {
    return parent.isValid() ? 0 : static_cast<int>(table_.rows.size());
}

int TextTableModel::columnCount(const QModelIndex& parent) const {
    return parent.isValid() ? 0 : static_cast<int>(table_.headings.size());
}

QVariant TextTableModel::data(const QModelIndex& index, int role) const {
    if (!index.isValid() || index.row() >= rowCount()) {
        return {};
    }
    const QString text = table_.rows[index.row()].value(index.column());
    switch (role) {
    case Qt::DisplayRole:
    case Qt::ToolTipRole:
        return text;
    case Qt::TextAlignmentRole:
        return static_cast<int>((table_.figures.contains(index.column()) ? Qt::AlignRight : Qt::AlignLeft) |
                                Qt::AlignVCenter);
    case Qt::AccessibleTextRole:
        return QString(table_.headings.value(index.column())).replace(QLatin1Char('\n'), QLatin1Char(' ')) +
               QStringLiteral(": ") + text;
    default:
        return {};
    }
}

QVariant TextTableModel::headerData(int section, Qt::Orientation orientation, int role) const {
    if (orientation != Qt::Horizontal) {
        return {};
    }
    if (role == Qt::DisplayRole) {
        return table_.headings.value(section);
    }
    return role == Qt::ToolTipRole ? QVariant(table_.tips.value(section)) : QVariant();
}

} // namespace loopwright::models
