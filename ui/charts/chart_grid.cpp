#include "charts/chart_grid.hpp"

#include "charts/chart_widget.hpp"

#include <QKeyEvent>

#include <algorithm>

namespace loopwright::charts {

namespace {
constexpr int gap_px = 4;
constexpr int least_width_px = 360, least_height_px = 216;
constexpr int most_columns = 3;
} // namespace

ChartGrid::ChartGrid(ChartGroup& group, QWidget* parent)
    : QScrollArea(parent), group_(group), sheet_(new QWidget(this)) {
    setFrameShape(QFrame::NoFrame);
    setFocusPolicy(Qt::NoFocus);
    setHorizontalScrollBarPolicy(Qt::ScrollBarAlwaysOff);
    setWidget(sheet_);
    setMinimumSize(least_width_px, least_height_px);
}

ChartGrid::~ChartGrid() = default;

void ChartGrid::add_chart() {
    auto* chart = new ChartWidget(group_, sheet_);
    const int index = static_cast<int>(charts_.size());
    connect(chart, &ChartWidget::enlarge_toggled, this,
            [this, index] { enlarge(enlarged_ == index ? -1 : index); });
    connect(chart, &ChartWidget::export_wanted, this, [this, index] { Q_EMIT export_wanted(index); });
    charts_.push_back(chart);
    chart->setVisible(enlarged_ < 0);
}

void ChartGrid::set_charts(const std::shared_ptr<const std::vector<models::ChartContent>>& charts) {
    const bool more = charts->size() > charts_.size();
    while (charts_.size() < charts->size()) {
        add_chart();
    }
    for (std::size_t i = 0; i < charts->size(); ++i) {
        // Shares ownership of the whole list.
        charts_[i]->set_content(std::shared_ptr<const models::ChartContent>(charts, &(*charts)[i]));
    }
    if (!charts->empty()) {
        group_.set_whole({charts->front().from_Hz, charts->front().to_Hz});
    }
    if (more) {
        arrange();
    }
}

void ChartGrid::set_stale(bool stale) {
    for (ChartWidget* chart : charts_) {
        chart->set_stale(stale);
    }
}

void ChartGrid::enlarge(int chart) {
    if (chart == enlarged_ || chart >= static_cast<int>(charts_.size())) {
        return;
    }
    const int before = enlarged_;
    enlarged_ = chart;
    for (int i = 0; i < static_cast<int>(charts_.size()); ++i) {
        ChartWidget* each = charts_[static_cast<std::size_t>(i)];
        each->setVisible(chart < 0 || i == chart);
        each->set_enlarged(i == chart);
    }
    arrange();
    ChartWidget* kept = charts_[static_cast<std::size_t>(chart < 0 ? before : chart)];
    kept->setFocus();
    ensureWidgetVisible(kept);
    Q_EMIT enlarged_changed();
}

void ChartGrid::arrange() {
    const int width = viewport()->width(), height = viewport()->height();
    if (enlarged_ >= 0) {
        sheet_->resize(width, height);
        charts_[static_cast<std::size_t>(enlarged_)]->setGeometry(0, 0, width, height);
        return;
    }
    const int count = static_cast<int>(charts_.size());
    const int columns = std::clamp(width / least_width_px, 1, most_columns);
    const int rows = (count + columns - 1) / columns;
    if (rows == 0) {
        return;
    }
    const int each_width = (width - gap_px * (columns - 1)) / columns;
    const int each_height = std::max(least_height_px, (height - gap_px * (rows - 1)) / rows);
    sheet_->resize(width, rows * each_height + gap_px * (rows - 1));
    for (int i = 0; i < count; ++i) {
        charts_[static_cast<std::size_t>(i)]->setGeometry((i % columns) * (each_width + gap_px),
                                                          (i / columns) * (each_height + gap_px), each_width,
                                                          each_height);
    }
}

void ChartGrid::resizeEvent(QResizeEvent* event) {
    QScrollArea::resizeEvent(event);
    arrange();
}

void ChartGrid::keyPressEvent(QKeyEvent* event) {
    if (event->key() == Qt::Key_Escape && enlarged_ >= 0) {
        enlarge(-1);
        event->accept();
        return;
    }
    QScrollArea::keyPressEvent(event);
}

} // namespace loopwright::charts
