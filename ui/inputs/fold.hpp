#pragma once
// A group that can be folded. Folded, its header still says what is inside, so that nothing is hidden without
// a trace.
#include <QWidget>

class QLabel;
class QToolButton;

namespace loopwright::inputs {

class Fold : public QWidget {
    Q_OBJECT
public:
    Fold(const QString& title, QWidget* content, QWidget* parent = nullptr);
    void set_unfolded(bool unfolded);
    [[nodiscard]] bool unfolded() const { return unfolded_; }
    /// What the folded header says of its content ("gap 20 mm, lead 50 mm").
    void set_summary(const QString& summary);
    /// A group of the first rank has a bold title.
    void set_strong(bool strong);
    [[nodiscard]] QToolButton& header() { return *header_; }

Q_SIGNALS:
    void toggled(bool unfolded);

private:
    void show_state(bool unfolded);
    QToolButton* header_;
    QLabel* summary_;
    QWidget* content_;
    bool unfolded_ = false;
};

} // namespace loopwright::inputs
