#pragma once
// Where the radio is, whether it is followed, and what it says. The frequency it shows is put in focus.
#include "jobs/radio_job.hpp"
#include "pages/context.hpp"

#include <QWidget>

class QComboBox;
class QFormLayout;
class QLabel;
class QPushButton;
class QSpinBox;

namespace loopwright::inputs {
class ChoiceField;
class TextField;
} // namespace loopwright::inputs

namespace loopwright::pages {

class RadioPanel : public QWidget {
    Q_OBJECT
public:
    explicit RadioPanel(const Context& context, QWidget* parent = nullptr);
    [[nodiscard]] jobs::RadioJob& radio() { return radio_; }
    /// For a folded header.
    [[nodiscard]] QString summary() const;

Q_SIGNALS:
    void refreshed();

private:
    void build_fields();
    void choose_way();
    void fill_drivers();
    void toggle();
    void take_fields();
    void show_state();
    [[nodiscard]] radio::Connection typed() const;
    Context context_;
    jobs::RadioJob radio_;
    QFormLayout* form_;
    inputs::ChoiceField* way_;
    inputs::TextField* host_;
    QSpinBox* port_;
    QComboBox* driver_;
    inputs::TextField* device_;
    inputs::ChoiceField* speed_;
    QLabel* caution_;
    QPushButton* follow_;
    QLabel* state_;
};

} // namespace loopwright::pages
