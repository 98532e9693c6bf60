#pragma once
// A dialog that only tells something: about, where numbers come from.
#include <QDialog>

namespace loopwright::dialogs {

class TextDialog : public QDialog {
    Q_OBJECT
public:
    /// markdown: headings, paragraphs, lists.
    TextDialog(const QString& title, const QString& markdown, QWidget* parent = nullptr);
};

/// Name, version, licence, what it is.
[[nodiscard]] QString about_text();
/// Models, their range, conventions, sources: what stands behind the numbers.
[[nodiscard]] QString numbers_text();

} // namespace loopwright::dialogs
