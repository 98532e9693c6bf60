#pragma once
// One chart on the screen, with its menu. Charts of one page share a ChartGroup.
#include "charts/chart_group.hpp"
#include "models/chart_content.hpp"

#include <QWidget>

#include <memory>

class QMenu;
class QToolButton;

namespace loopwright::charts {

class Plot;
class PlotView;

class ChartWidget : public QWidget {
    Q_OBJECT
public:
    /// group outlives the chart.
    explicit ChartWidget(ChartGroup& group, QWidget* parent = nullptr);
    ~ChartWidget() override;

    /// Drawn when the chart is next seen; at once where it is visible.
    void set_content(std::shared_ptr<const models::ChartContent> content);
    [[nodiscard]] const models::ChartContent& content() const;
    void set_enlarged(bool enlarged);
    /// Greyed: the content belongs to an older state of the design.
    void set_stale(bool stale);
    /// Internal to charts/ and its tests.
    [[nodiscard]] Plot& plot();
    [[nodiscard]] QWidget& view();

public Q_SLOTS:
    /// A picture of the chart on white paper to the clipboard.
    void copy();

Q_SIGNALS:
    void enlarge_toggled();
    void export_wanted();

protected:
    void changeEvent(QEvent* event) override;
    void showEvent(QShowEvent* event) override;
    void resizeEvent(QResizeEvent* event) override;
    void contextMenuEvent(QContextMenuEvent* event) override;

private:
    void build_menu();
    void adopt_palette();
    void draw_content();
    void follow_range();
    void describe();
    ChartGroup& group_;
    PlotView* view_;
    QToolButton* button_;
    QMenu* menu_;
    QAction* enlarge_;
    std::shared_ptr<const models::ChartContent> content_;
    bool dirty_ = false;
};

} // namespace loopwright::charts
