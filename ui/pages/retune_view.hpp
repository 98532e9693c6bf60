#pragma once
// One frequency live: what to set, where the dial stands, what that costs; the dial as a scale and the VSWR
// at the present setting.
#include "jobs/dial_job.hpp"
#include "jobs/present_match_job.hpp"
#include "models/dial_plot.hpp"
#include "pages/context.hpp"

#include <QWidget>

#include <memory>
#include <optional>

class QLabel;
class QPushButton;

namespace loopwright::charts {
class Figure;
class FigureWidget;
} // namespace loopwright::charts
namespace loopwright::inputs {
class Entry;
}

namespace loopwright::pages {

class RetuneView : public QWidget {
    Q_OBJECT
public:
    explicit RetuneView(const Context& context, QWidget* parent = nullptr);
    void set_result(const std::shared_ptr<const jobs::DialResult>& result);
    void set_stale(bool stale);
    [[nodiscard]] charts::FigureWidget& dial() { return *dial_; }
    [[nodiscard]] charts::FigureWidget& resonance() { return *resonance_; }
    [[nodiscard]] std::optional<double> present() const { return present_; }
    /// The coupling's share in the curve; not busy and not stale once the curve is as it stays.
    [[nodiscard]] jobs::PresentMatchJob& match() { return match_; }

Q_SIGNALS:
    void figure_export_wanted(std::shared_ptr<const loopwright::charts::Figure> figure);

private:
    void set_present(std::optional<double> reading);
    void recall_present();
    void keep_present();
    void show_all();
    [[nodiscard]] models::DialPlot dial_plot() const;
    [[nodiscard]] models::ResonancePlot resonance_plot() const;
    void ask_match(const models::ResonancePlot& plot);
    void add_match(models::ResonancePlot& plot) const;
    Context context_;
    std::shared_ptr<const jobs::DialResult> result_;
    std::optional<double> present_; ///< where the operator says the dial stands
    jobs::PresentMatchJob match_;
    std::optional<jobs::PresentMatchRequest> asked_;
    QString match_failure_;
    QString path_; ///< of the file that present_ is kept for
    QLabel* set_words_;
    QLabel* now_words_;
    inputs::Entry* present_entry_;
    QPushButton* is_set_;
    charts::FigureWidget* dial_;
    charts::FigureWidget* resonance_;
};

} // namespace loopwright::pages
