#pragma once
// A choice among named things; the wheel scrolls the page unless the field has the focus.
#include <QComboBox>

namespace loopwright::inputs {

class ChoiceField : public QComboBox {
    Q_OBJECT
public:
    explicit ChoiceField(QWidget* parent = nullptr);
    /// Shows a choice without emitting chosen().
    void show_choice(int index);

Q_SIGNALS:
    /// The person picked another one.
    void chosen(int index);

protected:
    void wheelEvent(QWheelEvent* event) override;

private:
    int shown_ = -1;
};

} // namespace loopwright::inputs
