#pragma once
// The headline numbers at the frequency in focus, each with its conditions and the way to where it comes
// from, and below them what they must be read with.
#include "loop/loop_model.hpp"
#include "models/headline.hpp"
#include "pages/context.hpp"

#include <QWidget>

#include <memory>
#include <optional>
#include <vector>

class QGridLayout;
class QLabel;
class QToolButton;
class QVBoxLayout;

namespace loopwright::inputs {
class ChoiceField;
class Entry;
} // namespace loopwright::inputs

namespace loopwright::pages {

class HeadlinePanel : public QWidget {
    Q_OBJECT
public:
    explicit HeadlinePanel(const Context& context, QWidget* parent = nullptr);
    /// The point that is shown.
    [[nodiscard]] const std::optional<loop::OperatingPoint>& point() const { return point_; }

Q_SIGNALS:
    /// The person asks where a number comes from; id as in models::Headline.
    void explanation_wanted(const QString& id);
    /// Other numbers are shown.
    void refreshed();

private:
    struct Line {
        QLabel* label = nullptr;
        QLabel* value = nullptr;
        QLabel* remark = nullptr;
        QToolButton* why = nullptr;
    };
    void build_focus_row(QVBoxLayout* column);
    void take_frequency(double hertz);
    void prepare_model();
    void refresh_focus();
    void refresh();
    void show_line(std::size_t index, const models::Headline& headline);
    void add_line();
    void show_notices();
    Context context_;
    inputs::Entry* frequency_;
    inputs::ChoiceField* band_;
    QGridLayout* grid_;
    std::vector<Line> lines_;
    QLabel* model_name_;
    QLabel* notices_;
    std::unique_ptr<loop::LoopModel> model_;
    std::optional<loop::OperatingPoint> point_;
};

} // namespace loopwright::pages
