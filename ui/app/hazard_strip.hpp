#pragma once
// The strip that never leaves the window: the highest capacitor voltage over the planned bands against what
// the capacitor may carry, and the distance people must keep. Each with symbol, word and colour.
#include "pages/context.hpp"

#include <QFrame>

class QLabel;

namespace loopwright::app {

class HazardStrip : public QFrame {
    Q_OBJECT
public:
    explicit HazardStrip(const pages::Context& context, QWidget* parent = nullptr);

protected:
    void changeEvent(QEvent* event) override;

private:
    void refresh();
    void colour();
    pages::Context context_;
    QLabel* voltage_;
    QLabel* distance_;
    bool exceeded_ = false;
};

} // namespace loopwright::app
