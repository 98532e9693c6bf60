#pragma once
// Where is it worth using? The band board, the charts over frequency, the numbers at the crosshair.
#include "charts/chart_group.hpp"
#include "charts/chart_picture.hpp"
#include "models/readout_model.hpp"
#include "pages/context.hpp"

#include <QTimer>
#include <QWidget>

#include <memory>
#include <vector>

class QLabel;
class QMenu;
class QProgressBar;
class QPushButton;
class QSplitter;
class QVBoxLayout;

namespace loopwright::charts {
class ChartGrid;
}
namespace loopwright::models {
class BandBoardModel;
}

namespace loopwright::pages {

class BandsBoard;
class ReadoutView;

class BandsPage : public QWidget {
    Q_OBJECT
public:
    explicit BandsPage(const Context& context, QWidget* parent = nullptr);
    ~BandsPage() override;

    [[nodiscard]] BandsBoard& board() { return *board_; }
    [[nodiscard]] charts::ChartGrid& grid() { return *grid_; }
    [[nodiscard]] charts::ChartGroup& group() { return group_; }
    [[nodiscard]] models::ReadoutModel& readout() { return *readout_; }
    /// The charts shown, for export.
    [[nodiscard]] const models::Charts& shown_charts() const { return charts_; }
    /// What stands below an exported chart.
    [[nodiscard]] charts::Origin origin() const;

Q_SIGNALS:
    /// chosen: the chart to begin with, -1: all.
    void charts_export_wanted(int chosen);
    /// Every figure of all planned bands, and of the curve.
    void table_export_wanted();
    void curve_export_wanted();
    /// A design file to compare with.
    void comparison_file_wanted();

protected:
    void showEvent(QShowEvent* event) override;
    void resizeEvent(QResizeEvent* event) override;

private:
    void build_head(QVBoxLayout& column);
    void build_menus(QPushButton& compare, QPushButton& columns, QPushButton& exports);
    void fill_compare_menu(QMenu& menu);
    [[nodiscard]] QWidget* build_lower();
    void connect_context();
    void refresh();
    void refresh_when_seen();
    void show_state();
    void follow_focus();
    void show_readout();
    void show_words();
    void share_height();
    Context context_;
    charts::ChartGroup group_;
    models::BandBoardModel* model_;
    models::ReadoutModel* readout_;
    models::Charts charts_;
    QLabel* conditions_;
    QLabel* state_;
    QProgressBar* progress_;
    QSplitter* splitter_;
    BandsBoard* board_;
    QLabel* words_;
    QLabel* at_;
    ReadoutView* readout_view_;
    charts::ChartGrid* grid_;
    QTimer stale_timer_;
    bool dirty_ = true;
    bool divided_by_hand_ = false; ///< the person has moved the splitter
};

} // namespace loopwright::pages
