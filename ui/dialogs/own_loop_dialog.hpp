#pragma once
// The five things that matter of a loop of one's own: outline and size, conductor, the capacitor's range,
// power, where it stands. All else starts with its default and can be typed on the Build page.
#include "design/design.hpp"
#include "units/text.hpp"

#include <QDialog>

#include <functional>
#include <vector>

class QDialogButtonBox;
class QFormLayout;
class QLabel;

namespace loopwright::inputs {
class ChoiceField;
class Entry;
} // namespace loopwright::inputs

namespace loopwright::dialogs {

class OwnLoopDialog : public QDialog {
    Q_OBJECT
public:
    explicit OwnLoopDialog(units::UnitSystem system, QWidget* parent = nullptr);
    /// What was described; without refusals once the dialog was accepted.
    [[nodiscard]] const design::Design& design() const { return design_; }

private:
    using Change = std::function<void(design::Design&)>;
    template <class Access>
    inputs::Entry* quantity(const QString& label, const QString& tooltip, const std::string& where,
                            Access access);
    inputs::ChoiceField* choice(const QString& label, const QString& tooltip, const QStringList& options,
                                int current, std::function<void(design::Design&, int)> set);
    void add_loop();
    void add_conductor();
    void add_rest();
    void change(const Change& change);
    void check();
    void accept_if_read();
    void show_applicable();
    units::UnitSystem system_;
    design::Design design_;
    QFormLayout* form_;
    QLabel* refusal_;
    QDialogButtonBox* buttons_;
    inputs::Entry* size_ = nullptr;
    inputs::Entry* width_ = nullptr;
    inputs::Entry* height_ = nullptr;
    inputs::Entry* diameter_ = nullptr;
    inputs::Entry* wall_ = nullptr;
    inputs::Entry* strip_width_ = nullptr;
    inputs::Entry* strip_thickness_ = nullptr;
    inputs::Entry* lowest_ = nullptr;
};

} // namespace loopwright::dialogs
