#pragma once
// Where is it worth using? The band board, the charts over frequency, the numbers at the crosshair.
#include "charts/chart_group.hpp"
#include "charts/chart_picture.hpp"
#include "charts/figure.hpp"
#include "jobs/zoomed_survey.hpp"
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
class QStackedWidget;
class QTabBar;
class QVBoxLayout;

namespace loopwright::charts {
class ChartGrid;
}
namespace loopwright::models {
class BandBoardModel;
}

namespace loopwright::pages {

class BandsBoard;
class HeightView;
class ModelsView;
class PatternView;
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
    /// The charts shown that have a frequency axis, for export.
    [[nodiscard]] const models::Charts& shown_charts() const;
    /// The groups of charts below the board.
    enum Group { over_frequency, directions, heights, two_models };
    void show_group(int group);
    [[nodiscard]] QTabBar& groups() { return *tabs_; }
    [[nodiscard]] PatternView& pattern() { return *pattern_; }
    [[nodiscard]] HeightView& height() { return *height_; }
    /// More points where the charts are zoomed into.
    [[nodiscard]] const jobs::ZoomedSurvey& zoomed() const { return zoomed_; }
    [[nodiscard]] ModelsView& model_comparison() { return *models_; }
    /// What stands below an exported chart.
    [[nodiscard]] charts::Origin origin() const;

Q_SIGNALS:
    /// chosen: the chart to begin with, -1: all.
    void charts_export_wanted(int chosen);
    void figure_export_wanted(std::shared_ptr<const loopwright::charts::Figure> figure);
    /// Every figure of all planned bands, and of the curve.
    void table_export_wanted();
    void curve_export_wanted();
    /// The numbers of directions, heights or both models as CSV; what: for the file's name.
    void figure_table_export_wanted(const QString& csv, const QString& what);
    /// A design file to compare with.
    void comparison_file_wanted();

protected:
    void showEvent(QShowEvent* event) override;
    void hideEvent(QHideEvent* event) override;
    void resizeEvent(QResizeEvent* event) override;

private:
    void build_head(QVBoxLayout& column);
    void build_menus(QPushButton& compare, QPushButton& columns, QPushButton& exports);
    void fill_compare_menu(QMenu& menu);
    [[nodiscard]] QWidget* build_lower();
    void build_groups(QVBoxLayout& column);
    void show_readout_of_group();
    void give_room();
    [[nodiscard]] static QString title_of(const design::Design& design);
    void connect_context();
    void connect_zoom();
    void refresh();
    void refresh_charts();
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
    QTabBar* tabs_ = nullptr;
    QStackedWidget* stack_ = nullptr;
    PatternView* pattern_ = nullptr;
    HeightView* height_ = nullptr;
    ModelsView* models_ = nullptr;
    jobs::ZoomedSurvey zoomed_, zoomed_compared_;
    QTimer stale_timer_;
    bool dirty_ = true;
    bool divided_by_hand_ = false; ///< the person has moved the splitter
};

} // namespace loopwright::pages
