#pragma once
// A group of charts of the Bands page that shows one figure or more of the frequency in focus, computed in a
// job: progress and stop where the result will appear, the last result greyed meanwhile.
#include "charts/figure.hpp"
#include "jobs/job.hpp"
#include "pages/context.hpp"

#include <QTimer>
#include <QWidget>

#include <memory>
#include <string>
#include <vector>

class QLabel;
class QProgressBar;
class QPushButton;
class QVBoxLayout;

namespace loopwright::charts {
class FigureWidget;
}

namespace loopwright::pages {

class FocusedView : public QWidget {
    Q_OBJECT
public:
    /// job becomes a child of this.
    FocusedView(const Context& context, jobs::Job* job, QWidget* parent);
    ~FocusedView() override;
    [[nodiscard]] const std::vector<charts::FigureWidget*>& figures() const { return figures_; }
    [[nodiscard]] jobs::Job& job() { return *job_; }
    /// Whether the figures are those of design and focus as they are.
    [[nodiscard]] bool current() const;

    /// Gives one figure the whole view, -1: all of them.
    void enlarge(int figure);
    [[nodiscard]] int enlarged() const { return enlarged_; }

Q_SIGNALS:
    void enlarged_changed();
    void export_wanted(std::shared_ptr<const loopwright::charts::Figure> figure);
    /// The figures' numbers as CSV; what: for the file's name.
    void table_export_wanted(const QString& csv, const QString& what);

protected:
    void showEvent(QShowEvent* event) override;
    void hideEvent(QHideEvent* event) override;
    void keyPressEvent(QKeyEvent* event) override;
    /// Starts the job on design and focus as they are now; or shows at once why there is nothing to compute.
    virtual void start() = 0;
    /// The job has a result.
    virtual void show_result() = 0;
    /// Why there is none, in one sentence.
    virtual void show_reason(const QString& sentence) = 0;
    /// Something the figures depend on has changed: computed anew in a moment, or when next seen.
    void want();
    /// Nothing is to be computed: the figures say why and are not greyed.
    void settle();
    /// The numbers of the newest result as CSV; asked for only after offer_table(true).
    [[nodiscard]] virtual std::string table() { return {}; }
    /// For a file's name: "height-14100-khz".
    [[nodiscard]] virtual QString table_name() { return {}; }
    [[nodiscard]] static QString table_name(const QString& what, units::Frequency frequency);
    /// Whether what is drawn has numbers that can be had.
    void offer_table(bool offered);
    charts::FigureWidget* add_figure();
    [[nodiscard]] const Context& context() const { return context_; }
    [[nodiscard]] QVBoxLayout& column() { return *column_; }

private:
    void build_work_row();
    void show_state();
    Context context_;
    jobs::Job* job_;
    QVBoxLayout* column_;
    QLabel* state_;
    QProgressBar* progress_;
    QPushButton* stop_;
    std::vector<charts::FigureWidget*> figures_;
    QTimer pause_;    ///< typing goes on
    QTimer patience_; ///< what takes less is not worth a sign
    int enlarged_ = -1;
    bool dirty_ = true;
    bool settled_ = false;
    bool computing_ = false; ///< the newest request is under way
};

} // namespace loopwright::pages
