#pragma once
// Cells of the band board: numbers aligned at the decimal sign, a bar below them, verdicts of weight in bold.
#include <QStyledItemDelegate>

namespace loopwright::models {
struct Bar;
}

namespace loopwright::pages {

class BandsDelegate : public QStyledItemDelegate {
    Q_OBJECT
public:
    using QStyledItemDelegate::QStyledItemDelegate;

    /// Greyed: the figures belong to an older state of the design.
    void set_stale(bool stale) { stale_ = stale; }
    void paint(QPainter* painter, const QStyleOptionViewItem& option,
               const QModelIndex& index) const override;
    [[nodiscard]] QSize sizeHint(const QStyleOptionViewItem& option, const QModelIndex& index) const override;

protected:
    void initStyleOption(QStyleOptionViewItem* option, const QModelIndex& index) const override;

private:
    void paint_number(QPainter& painter, const QStyleOptionViewItem& option, const QModelIndex& index) const;
    void paint_bar(QPainter& painter, const QStyleOptionViewItem& option, const models::Bar& bar) const;
    bool stale_ = false;
};

} // namespace loopwright::pages
