#pragma once
// The first thing to do: a sample by what it is for, a loop of one's own, or a file.
#include "design/design.hpp"

#include <QDialog>
#include <QList>
#include <QString>

class QLabel;
class QListWidget;

namespace loopwright::dialogs {

class StartDialog : public QDialog {
    Q_OBJECT
public:
    enum class Choice { nothing, sample, own_loop, open_file };

    explicit StartDialog(const QList<design::Design>& samples, QWidget* parent = nullptr);
    [[nodiscard]] Choice choice() const { return choice_; }
    /// The sample that was picked: index into what was given.
    [[nodiscard]] int sample() const;

private:
    void choose(Choice choice);
    void show_note();
    QList<design::Design> samples_;
    QListWidget* list_;
    QLabel* note_;
    Choice choice_ = Choice::nothing;
};

} // namespace loopwright::dialogs
