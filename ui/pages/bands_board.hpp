#pragma once
// The band board as a table: picking a row puts its band in focus; columns are chosen, a selection is copied.
#include "pages/focus_board.hpp"

class QMenu;

namespace loopwright::models {
class BandBoardModel;
}

namespace loopwright::pages {

class BandsBoard : public FocusBoard {
    Q_OBJECT
public:
    BandsBoard(const Context& context, models::BandBoardModel& model, QWidget* parent = nullptr);
    ~BandsBoard() override;

    /// Fills a menu with one entry a column.
    void fill_columns_menu(QMenu& menu);
    [[nodiscard]] QSize sizeHint() const override;

protected:
    [[nodiscard]] int row_of(const QString& band) const override;
    [[nodiscard]] std::optional<units::Frequency> frequency_at(int row) const override;

private:
    void restore_columns();
    void fit_columns(bool anew = false);
    models::BandBoardModel& model_;
    bool own_widths_ = false; ///< kept from an earlier session
};

} // namespace loopwright::pages
