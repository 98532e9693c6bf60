#pragma once
// Both models over frequency and the reasons where they part. The other model's survey is computed only while
// this is seen.
#include "charts/chart_group.hpp"
#include "models/readout_model.hpp"
#include "pages/context.hpp"

#include <QTimer>
#include <QWidget>

class QLabel;
class QProgressBar;

namespace loopwright::charts {
class ChartGrid;
}

namespace loopwright::pages {

class ModelsView : public QWidget {
    Q_OBJECT
public:
    /// group: shared with the other charts of the page; outlives this.
    ModelsView(const Context& context, charts::ChartGroup& group, QWidget* parent = nullptr);
    ~ModelsView() override;
    [[nodiscard]] charts::ChartGrid& grid() { return *grid_; }
    /// Null before both models are there.
    [[nodiscard]] const models::Charts& shown_charts() const { return charts_; }
    [[nodiscard]] const QLabel& words() const { return *words_; }

Q_SIGNALS:
    /// New charts are there.
    void charts_changed();

protected:
    void showEvent(QShowEvent* event) override;
    void hideEvent(QHideEvent* event) override;

private:
    void ask();
    void show_charts();
    void show_words();
    void show_state();
    Context context_;
    jobs::SurveyJob other_;
    std::shared_ptr<const survey::Survey> asked_for_; ///< the survey that other_ is to go with
    models::Charts charts_;
    charts::ChartGrid* grid_;
    QLabel* words_;
    QProgressBar* progress_;
};

} // namespace loopwright::pages
