#pragma once
// A label of one line that says with an ellipsis that there is more than fits.
#include <QLabel>

namespace loopwright::inputs {

class ElidedLabel : public QLabel {
    Q_OBJECT
public:
    explicit ElidedLabel(QWidget* parent = nullptr);

protected:
    void paintEvent(QPaintEvent* event) override;
};

} // namespace loopwright::inputs
