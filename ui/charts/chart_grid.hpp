#pragma once
// The charts of a page: as many beside each other as fit, the page scrolls; one can be enlarged to the whole
// of it.
#include "charts/chart_group.hpp"
#include "models/chart_content.hpp"

#include <QScrollArea>

#include <memory>
#include <vector>

namespace loopwright::charts {

class ChartWidget;

class ChartGrid : public QScrollArea {
    Q_OBJECT
public:
    explicit ChartGrid(ChartGroup& group, QWidget* parent = nullptr);
    ~ChartGrid() override;

    /// One chart each; charts are made once and kept.
    void set_charts(const std::shared_ptr<const std::vector<models::ChartContent>>& charts);
    [[nodiscard]] const std::vector<ChartWidget*>& charts() const { return charts_; }
    void set_stale(bool stale);
    /// -1: all.
    void enlarge(int chart);
    [[nodiscard]] int enlarged() const { return enlarged_; }

Q_SIGNALS:
    void export_wanted(int chart);
    void enlarged_changed();

protected:
    void resizeEvent(QResizeEvent* event) override;
    void keyPressEvent(QKeyEvent* event) override;

private:
    void add_chart();
    void arrange();
    ChartGroup& group_;
    QWidget* sheet_;
    std::vector<ChartWidget*> charts_;
    int enlarged_ = -1;
};

} // namespace loopwright::charts
