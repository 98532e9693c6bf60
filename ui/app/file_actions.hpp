#pragma once
// New, open, save and what goes with them: file dialogs, the question about unsaved changes, recent files,
// errors shown as they are written, with the old document untouched.
#include "pages/context.hpp"

#include <QObject>
#include <QString>

class QWidget;

namespace loopwright::app {

class FileActions : public QObject {
    Q_OBJECT
public:
    FileActions(const pages::Context& context, QWidget* window);

    /// Asks about unsaved changes. True: go on (saved or to be thrown away).
    [[nodiscard]] bool may_leave();
    /// Each returns whether the document is now another one.
    bool start_new();
    bool describe_own();
    bool open_with_dialog();
    bool open(const QString& path);
    bool open_sample(const design::Design& design);
    /// Samples by what they are for, or one's own loop, or a file.
    bool start_dialog();
    /// Offers what a crash left behind. True when something was taken up.
    bool offer_recovery(const QString& folder);
    /// Each returns whether the document is on disk.
    bool save();
    bool save_as();

private:
    void show_error(const QString& title, const QString& text);
    bool save_to(const QString& path);
    pages::Context context_;
    QWidget* window_;
};

} // namespace loopwright::app
