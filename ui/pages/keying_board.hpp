#pragma once
// The sheet before keying as a table: picking a row puts its band in focus.
#include "pages/focus_board.hpp"

namespace loopwright::models {
class KeyingBoardModel;
}

namespace loopwright::pages {

class KeyingBoard : public FocusBoard {
    Q_OBJECT
public:
    KeyingBoard(const Context& context, models::KeyingBoardModel& model, QWidget* parent = nullptr);

    [[nodiscard]] QSize sizeHint() const override;
    /// Room for four rows.
    [[nodiscard]] QSize minimumSizeHint() const override;

Q_SIGNALS:
    /// Reasons take more lines or fewer than before.
    void rows_changed();

protected:
    [[nodiscard]] int row_of(const QString& band) const override;
    [[nodiscard]] std::optional<units::Frequency> frequency_at(int row) const override;
    void resizeEvent(QResizeEvent* event) override;

private:
    void fit_columns(bool anew);
    void fit_reason();
    void fit_rows();
    /// Header and as many rows as they stand.
    [[nodiscard]] int height_of_first(int most) const;
    models::KeyingBoardModel& model_;
};

} // namespace loopwright::pages
