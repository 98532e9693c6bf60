#pragma once
// What the page Retune asks for: the dial, the calibration, where the radio is. It edits the same design as
// Build.
#include "pages/build_specs.hpp"
#include "pages/context.hpp"

#include <QWidget>

class QVBoxLayout;

namespace loopwright::inputs {
class Fold;
}

namespace loopwright::pages {

class CalibrationEditor;
class RadioPanel;

class RetuneForm : public QWidget {
    Q_OBJECT
public:
    explicit RetuneForm(const Context& context, QWidget* parent = nullptr);
    [[nodiscard]] CalibrationEditor& calibration() { return *calibration_; }
    [[nodiscard]] RadioPanel& radio() { return *radio_; }

private:
    inputs::Fold* add_fold(const QString& id, const QString& title, QWidget* content);
    Context context_;
    QVBoxLayout* column_;
    CalibrationEditor* calibration_;
    RadioPanel* radio_;
};

} // namespace loopwright::pages
