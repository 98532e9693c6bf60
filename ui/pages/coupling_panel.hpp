#pragma once
// The match in the Coupling section: sizing as a job with one undo step, the numbers, Smith chart and VSWR
// curve.
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
class FigureWidget;
}

namespace loopwright::pages {

class CouplingPanel : public QWidget {
    Q_OBJECT
public:
    explicit CouplingPanel(const Context& context, QWidget* parent = nullptr);
    [[nodiscard]] const jobs::MatchReportJob& match() const { return match_; }
    [[nodiscard]] const jobs::SizingJob& sizing() const { return sizing_; }

protected:
    void showEvent(QShowEvent* event) override;

private:
    struct Line {
        QLabel* label = nullptr;
        QLabel* value = nullptr;
        QLabel* remark = nullptr;
    };
    void build_sizing(QVBoxLayout* column);
    void build_numbers(QVBoxLayout* column);
    void connect_context();
    /// Now where it is seen, else when it is.
    void want_match();
    void start_match();
    void start_sizing(bool common);
    void take_sizing();
    void apply(units::Length diameter);
    void refresh();
    void show_line(std::size_t index, const models::Headline* headline);
    void show_notices();
    void show_stale();
    void show_sizing();
    Context context_;
    jobs::MatchReportJob match_;
    jobs::SizingJob sizing_;
    bool wanted_ = true;
    bool common_ = false; ///< what the sizing under way is for
    QStringList names_;   ///< of its bands
    QPushButton* one_;
    QPushButton* all_;
    QPushButton* cancel_;
    QProgressBar* progress_;
    QLabel* sized_;
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
