#pragma once
// Pairs of a reading and a quantity as rows that can be edited in place, with remarks of the program behind
// them. It holds texts only: what is typed is given on, the rows come back from the design.
#include <QAbstractTableModel>
#include <QList>
#include <QString>
#include <QStringList>

namespace loopwright::models {

struct PairRow {
    QString first, second; ///< as texts that can be edited
    QStringList remarks;   ///< as many as remark headings
    QString tip;           ///< one sentence on the row, or empty
    bool doubtful = false; ///< marked, and said so in words
    bool operator==(const PairRow&) const = default;
};

class PairsModel : public QAbstractTableModel {
    Q_OBJECT
public:
    /// headings: of both columns and of the remarks.
    PairsModel(QStringList headings, QStringList tips, QObject* parent = nullptr);

    void set_rows(const QList<PairRow>& rows);
    [[nodiscard]] const QList<PairRow>& rows() const { return rows_; }

    [[nodiscard]] int rowCount(const QModelIndex& parent = {}) const override;
    [[nodiscard]] int columnCount(const QModelIndex& parent = {}) const override;
    [[nodiscard]] QVariant data(const QModelIndex& index, int role) const override;
    [[nodiscard]] QVariant headerData(int section, Qt::Orientation orientation, int role) const override;
    [[nodiscard]] Qt::ItemFlags flags(const QModelIndex& index) const override;
    /// True where the owner took the text: it answers change_wanted() by calling set_rows().
    bool setData(const QModelIndex& index, const QVariant& value, int role) override;

Q_SIGNALS:
    /// column 0: the reading, 1: the quantity.
    void change_wanted(int row, int column, const QString& text);

private:
    QStringList headings_, tips_;
    QList<PairRow> rows_;
};

} // namespace loopwright::models
