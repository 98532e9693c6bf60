#pragma once
// The strip that never leaves the window: the highest capacitor voltage over the planned bands against what
// the capacitor stands, and the distance people must keep, unfavourable ends. Each with symbol, word and
// colour.
#include "pages/context.hpp"

#include <QFrame>
#include <QHash>
#include <QTimer>

class QLabel;

namespace loopwright::app {

class HazardStrip : public QFrame {
    Q_OBJECT
public:
    explicit HazardStrip(const pages::Context& context, QWidget* parent = nullptr);

protected:
    void changeEvent(QEvent* event) override;
    void resizeEvent(QResizeEvent* event) override;

private:
    void refresh();
    void say(QLabel* cell, const QString& text, const QString& detail, const QString& state = {});
    void keep_room();
    void colour();
    [[nodiscard]] QString state_words() const;
    pages::Context context_;
    QLabel* voltage_;
    QLabel* distance_;
    QHash<QLabel*, QString> settled_; ///< each cell's text without the words of a state that passes
    QTimer patience_;                 ///< what takes less is not worth a word
    bool exceeded_ = false;
    bool too_near_ = false;
    bool failed_ = false;
};

} // namespace loopwright::app
