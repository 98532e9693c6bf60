#pragma once
// The match in the Coupling section: sizing as a job with one undo step, the numbers, Smith chart and VSWR
// curve, for every kind of coupling.
#include "jobs/coupling_jobs.hpp"
#include "models/headline.hpp"
#include "pages/context.hpp"

#include <QStringList>
#include <QTimer>
#include <QWidget>

#include <vector>

class QGridLayout;
class QLabel;
class QProgressBar;
class QPushButton;
class QVBoxLayout;

namespace loopwright::charts {
class Figure;
class FigureWidget;
} // namespace loopwright::charts

namespace loopwright::pages {

class CouplingPanel : public QWidget {
    Q_OBJECT
public:
    explicit CouplingPanel(const Context& context, QWidget* parent = nullptr);
    [[nodiscard]] const jobs::MatchReportJob& match() const { return match_; }
    [[nodiscard]] const jobs::SizingJob& sizing() const { return sizing_; }
    /// Smith chart and VSWR curve.
    [[nodiscard]] charts::FigureWidget& smith() { return *smith_; }
    [[nodiscard]] charts::FigureWidget& curve() { return *curve_; }

Q_SIGNALS:
    void figure_export_wanted(std::shared_ptr<const loopwright::charts::Figure> figure);
    /// The VSWR curve of the newest match as a table.
    void curve_export_wanted();

protected:
    void showEvent(QShowEvent* event) override;

private:
    struct Line {
        QLabel* label = nullptr;
        QLabel* value = nullptr;
        QLabel* remark = nullptr;
    };
    void build_sizing(QVBoxLayout* column);
    void build_progress(QVBoxLayout* column);
    void build_numbers(QVBoxLayout* column);
    void build_figures(QVBoxLayout* column);
    void connect_context();
    void connect_match();
    /// Now where it is seen, else when it is.
    void want_match();
    void start_match();
    void start_sizing(bool common);
    void take_sizing();
    void apply(double size);
    void show_kind();
    void refresh();
    void show_line(std::size_t index, const models::Headline* headline);
    void show_notices();
    void show_stale();
    void show_sizing();
    Context context_;
    jobs::MatchReportJob match_;
    jobs::SizingJob sizing_;
    bool wanted_ = true;
    QStringList names_; ///< of the bands that are sized for
    QPushButton* one_;
    QPushButton* all_;
    QPushButton* cancel_;
    QPushButton* stop_;
    QProgressBar* progress_;
    QLabel* sized_;
    QLabel* kind_;    ///< what the model of this kind of coupling leaves out
    QLabel* working_; ///< what is under way, or why there is nothing new
    QString failure_; ///< of the newest match
    QLabel* conditions_;
    QWidget* numbers_;
    QGridLayout* grid_;
    std::vector<Line> lines_;
    QLabel* notices_;
    charts::FigureWidget* smith_;
    charts::FigureWidget* curve_;
    QTimer patience_;
};

} // namespace loopwright::pages
