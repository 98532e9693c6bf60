#pragma once
// The sheet before keying as a table: picking a row puts its band in focus.
#include "pages/context.hpp"

#include <QTableView>

namespace loopwright::models {
class KeyingBoardModel;
}

namespace loopwright::pages {

class BandsDelegate;

class KeyingBoard : public QTableView {
    Q_OBJECT
public:
    KeyingBoard(const Context& context, models::KeyingBoardModel& model, QWidget* parent = nullptr);
    void set_stale(bool stale);
    [[nodiscard]] QSize sizeHint() const override;

protected:
    void keyPressEvent(QKeyEvent* event) override;

private:
    void follow_focus();
    void fit_columns(bool anew);
    void pick_row(const QModelIndex& current);
    Context context_;
    models::KeyingBoardModel& model_;
    BandsDelegate* delegate_;
    bool following_ = false;
};

} // namespace loopwright::pages
