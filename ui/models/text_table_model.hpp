#pragma once
// A small table of finished texts: headings, rows, which columns hold figures.
#include <QAbstractTableModel>
#include <QList>
#include <QStringList>

namespace loopwright::models {

struct TextTable {
    QStringList headings; ///< with unit, may break over two lines
    QStringList tips;     ///< as many, or none
    QList<QStringList> rows;
    QList<int> figures; ///< columns aligned to the right
};

class TextTableModel : public QAbstractTableModel {
    Q_OBJECT
public:
    using QAbstractTableModel::QAbstractTableModel;
    void set_table(TextTable table);
    [[nodiscard]] const TextTable& table() const { return table_; }

    [[nodiscard]] int rowCount(const QModelIndex& parent = {}) const override;
    [[nodiscard]] int columnCount(const QModelIndex& parent = {}) const override;
    [[nodiscard]] QVariant data(const QModelIndex& index, int role) const override;
    [[nodiscard]] QVariant headerData(int section, Qt::Orientation orientation, int role) const override;

private:
    TextTable table_;
};

} // namespace loopwright::models
