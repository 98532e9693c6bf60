#pragma once
// Around the loop at the frequency in focus, or for all planned bands together: from above, from the side,
// and the distance over power, for one limit or the strictest.
#include "jobs/keying_job.hpp"
#include "models/surroundings_plot.hpp"
#include "pages/bands_focused_view.hpp"

class QLabel;

namespace loopwright::inputs {
class ChoiceField;
}

namespace loopwright::pages {

class KeyingPictures final : public FocusedView {
    Q_OBJECT
public:
    explicit KeyingPictures(const Context& context, QWidget* parent = nullptr);
    ~KeyingPictures() override;
    /// The last plot shown, for print.
    [[nodiscard]] const models::SurroundingsPlot& plot() const { return plot_; }

protected:
    void start() override;
    void show_result() override;
    void show_reason(const QString& sentence) override;

private:
    void build_fields();
    void fill_limits();
    void follow_keying();
    /// The limit to draw: the one chosen, or the one that asks for most.
    [[nodiscard]] std::string wanted_limit() const;
    void show_plot(const models::SurroundingsPlot& plot);
    void start_planned();
    inputs::ChoiceField* bands_;
    inputs::ChoiceField* limit_;
    bool planned_ = false;                               ///< all planned bands together
    std::shared_ptr<const survey::Keying> drawn_keying_; ///< of the planned set drawn
    std::vector<std::string> ids_; ///< as limit_ lists them; the first, empty: the one that asks for most
    QStringList names_;
    std::string chosen_;
    /// Of the limit drawn, once the sheet has them for the band in focus.
    [[nodiscard]] std::vector<survey::UpperEnd> upper_ends() const;
    std::vector<survey::UpperEnd> drawn_ends_;
    std::string drawn_;
    models::SurroundingsPlot plot_;
};

} // namespace loopwright::pages
