#pragma once
// Shows a plot and turns pointer and keys into what the group of charts shares. Internal to charts/.
#include "charts/chart_group.hpp"

#include <QChartView>

class QRubberBand;

namespace loopwright::charts {

class Plot;

class PlotView : public QChartView {
    Q_OBJECT
public:
    PlotView(ChartGroup& group, QWidget* parent);
    ~PlotView() override;
    [[nodiscard]] Plot& plot() { return *plot_; }

Q_SIGNALS:
    void enlarge_wanted();

protected:
    void mousePressEvent(QMouseEvent* event) override;
    void mouseMoveEvent(QMouseEvent* event) override;
    void mouseReleaseEvent(QMouseEvent* event) override;
    void mouseDoubleClickEvent(QMouseEvent* event) override;
    void leaveEvent(QEvent* event) override;
    void focusInEvent(QFocusEvent* event) override;
    void focusOutEvent(QFocusEvent* event) override;
    void keyPressEvent(QKeyEvent* event) override;
    void wheelEvent(QWheelEvent* event) override;
    void paintEvent(QPaintEvent* event) override;

private:
    [[nodiscard]] double frequency_at(const QPointF& position) const;
    [[nodiscard]] bool key_moves(int key, bool fast);
    [[nodiscard]] bool key_zooms(int key);
    ChartGroup& group_;
    Plot* plot_;
    QRubberBand* rubber_band_;
    std::optional<QPoint> pressed_;
};

} // namespace loopwright::charts
