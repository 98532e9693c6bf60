#pragma once
// The strip that never leaves the window: the highest capacitor voltage over the planned bands against what
// the capacitor stands, and the distance people must keep, unfavourable ends. Each with symbol, word and
// colour.
#include "pages/context.hpp"

#include <QFrame>
#include <QTimer>

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
    [[nodiscard]] QString state_words() const;
    pages::Context context_;
    QLabel* voltage_;
    QLabel* distance_;
    QTimer patience_; ///< what takes less is not worth a word
    bool exceeded_ = false;
    bool too_near_ = false;
    bool failed_ = false;
};

} // namespace loopwright::app
