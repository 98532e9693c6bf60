#pragma once
// The headline numbers at the frequency in focus, each with its conditions and the way to where it comes
// from, beside them on request those of the other model, and below them what they must be read with.
#include "models/headline.hpp"
#include "pages/context.hpp"

#include <QTimer>
#include <QWidget>

#include <optional>
#include <vector>

class QCheckBox;
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
    /// The point that is shown, and the design it is of.
    [[nodiscard]] std::optional<loop::OperatingPoint> point() const;
    [[nodiscard]] const design::Design& design() const;
    /// True while the numbers belong to an older state and are greyed.
    [[nodiscard]] bool greyed() const { return greyed_; }

Q_SIGNALS:
    /// The person asks where a number comes from; id as in models::Headline.
    void explanation_wanted(const QString& id);
    /// Other numbers are shown.
    void refreshed();

private:
    struct Line {
        QLabel* label = nullptr;
        QLabel* value = nullptr;
        QLabel* other = nullptr;
        QLabel* remark = nullptr;
        QToolButton* why = nullptr;
    };
    void build_focus_row(QVBoxLayout* column);
    void build_model_row(QVBoxLayout* column);
    void connect_context();
    void take_frequency(double hertz);
    void refresh_focus();
    void refresh_model();
    void refresh();
    void show_failure(const QString& message);
    void show_line(std::size_t index, const models::Headline& headline);
    void show_other(std::size_t index, const models::Headline* other);
    void show_stale();
    void add_line();
    void show_notices(const std::optional<loop::OperatingPoint>& point);
    Context context_;
    inputs::Entry* frequency_;
    inputs::ChoiceField* band_;
    inputs::ChoiceField* model_;
    QCheckBox* beside_;
    QWidget* numbers_; ///< all that is greyed while it is of an older state
    QGridLayout* grid_;
    QLabel* head_;
    QLabel* other_head_;
    std::vector<Line> lines_;
    QLabel* model_name_;
    QLabel* notices_;
    QTimer patience_;
    bool greyed_ = false;
};

} // namespace loopwright::pages
