#pragma once
// A small table of texts: how every table of the window looks, and how it is copied.
#include "models/text_table_model.hpp"

#include <QTableView>

namespace loopwright::pages {

void make_plain(QTableView& table, const QString& name, const QString& description);
/// Selected rows (all where none is) with their headings, separated by tabulators.
[[nodiscard]] QString rows_as_text(const QTableView& table);

class PlainTable : public QTableView {
    Q_OBJECT
public:
    PlainTable(models::TextTableModel& model, const QString& name, const QString& description,
               QWidget* parent = nullptr);

protected:
    void keyPressEvent(QKeyEvent* event) override;
};

} // namespace loopwright::pages
