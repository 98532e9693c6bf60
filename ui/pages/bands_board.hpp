#pragma once
// The band board as a table: picking a row puts its band in focus; columns are chosen, a selection is copied.
#include "pages/context.hpp"

#include <QTableView>

#include <memory>

class QMenu;

namespace loopwright::models {
class BandBoardModel;
}

namespace loopwright::pages {

class BandsDelegate;

class BandsBoard : public QTableView {
    Q_OBJECT
public:
    BandsBoard(const Context& context, models::BandBoardModel& model, QWidget* parent = nullptr);
    ~BandsBoard() override;

    /// Fills a menu with one entry a column.
    void fill_columns_menu(QMenu& menu);
    void set_stale(bool stale);
    /// The columns shown of what is selected (of all rows where nothing is), with their headings, separated
    /// by tabulators.
    [[nodiscard]] QString selected_text() const;
    [[nodiscard]] QSize sizeHint() const override;

public Q_SLOTS:
    void copy();

protected:
    void keyPressEvent(QKeyEvent* event) override;

private:
    void restore_columns();
    void follow_focus();
    void fit_columns();
    void pick_row(const QModelIndex& current);
    Context context_;
    models::BandBoardModel& model_;
    BandsDelegate* delegate_;
    bool following_ = false;
};

} // namespace loopwright::pages
