#pragma once
// The numbers of every curve at the crosshair, as a table that the keyboard reaches.
#include "charts/chart_palette.hpp"

#include <QTableView>

namespace loopwright::models {
class ReadoutModel;
}

namespace loopwright::pages {

class ReadoutView final : public QTableView {
    Q_OBJECT
public:
    explicit ReadoutView(models::ReadoutModel& model, QWidget* parent = nullptr);

    [[nodiscard]] QSize sizeHint() const override;
    [[nodiscard]] QSize minimumSizeHint() const override;
    /// The table with its headings, separated by tabulators.
    [[nodiscard]] QString text() const;

protected:
    void keyPressEvent(QKeyEvent* event) override;
    void resizeEvent(QResizeEvent* event) override;

private:
    void fit();
    models::ReadoutModel& model_;
};

} // namespace loopwright::pages
