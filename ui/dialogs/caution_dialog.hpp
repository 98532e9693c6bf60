#pragma once
// The caution of the first start; also in the Help menu.
#include <QDialog>

namespace loopwright::dialogs {

class CautionDialog : public QDialog {
    Q_OBJECT
public:
    explicit CautionDialog(QWidget* parent = nullptr);
    /// The caution as plain paragraphs: what can happen, and what to do.
    [[nodiscard]] static QStringList paragraphs();
};

} // namespace loopwright::dialogs
