#pragma once
// A line of free text. Undo and redo belong to the document, not to the line.
#include <QLineEdit>

namespace loopwright::inputs {

class TextField : public QLineEdit {
    Q_OBJECT
public:
    explicit TextField(QWidget* parent = nullptr);
    /// Shows a text from the design; leaves cursor and selection alone where nothing differs.
    void show_text(const QString& text);

protected:
    bool event(QEvent* event) override;
};

} // namespace loopwright::inputs
