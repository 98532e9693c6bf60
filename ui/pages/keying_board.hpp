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

protected:
    [[nodiscard]] int row_of(const QString& band) const override;
    [[nodiscard]] std::optional<units::Frequency> frequency_at(int row) const override;
    void resizeEvent(QResizeEvent* event) override;

private:
    void fit_columns(bool anew);
    void fit_reason();
    models::KeyingBoardModel& model_;
};

} // namespace loopwright::pages
