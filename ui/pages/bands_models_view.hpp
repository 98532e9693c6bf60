#pragma once
// Both models over frequency and the reasons where they part. The other model's survey is computed only while
// this is seen.
#include "charts/chart_group.hpp"
#include "jobs/zoomed_survey.hpp"
#include "models/readout_model.hpp"
#include "pages/context.hpp"

#include <QTimer>
#include <QWidget>

#include <string>

class QLabel;
class QProgressBar;
class QPushButton;
class QVBoxLayout;

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
    /// The curves of both as CSV; empty before both models are there.
    [[nodiscard]] std::string table() const;
    [[nodiscard]] const QLabel& words() const { return *words_; }
    [[nodiscard]] const QLabel& state() const { return *state_; }
    [[nodiscard]] QPushButton& stop() { return *stop_; }
    [[nodiscard]] jobs::SurveyJob& job() { return other_; }

Q_SIGNALS:
    /// New charts are there.
    void charts_changed();

protected:
    void showEvent(QShowEvent* event) override;
    void hideEvent(QHideEvent* event) override;

private:
    using Survey = std::shared_ptr<const survey::Survey>;
    void build(QVBoxLayout* column);
    void connect_jobs();
    void connect_zoom();
    void ask();
    void take_result();
    void show_charts();
    void show_words();
    void show_state();
    [[nodiscard]] QString state_words(bool working) const;
    Context context_;
    charts::ChartGroup& group_;
    jobs::SurveyJob other_;
    Survey asked_for_; ///< the survey that other_ is to go with
    Survey shown_, shown_other_;
    jobs::ZoomedSurvey zoomed_, zoomed_other_; ///< of shown_ and shown_other_
    models::Charts charts_;
    charts::ChartGrid* grid_;
    QLabel* words_;
    QLabel* state_;
    QProgressBar* progress_;
    QPushButton* stop_;
    QString failure_; ///< why there is no newer result
    QTimer patience_; ///< what takes less is not worth a sign
};

} // namespace loopwright::pages
