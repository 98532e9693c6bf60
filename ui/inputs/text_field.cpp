#include "inputs/text_field.hpp"

#include <QKeyEvent>

namespace loopwright::inputs {

TextField::TextField(QWidget* parent) : QLineEdit(parent) {}

void TextField::show_text(const QString& text) {
    if (text != this->text()) {
        setText(text);
        if (!hasFocus()) {
            setCursorPosition(0); // a long text is read from its beginning
        }
    }
}

bool TextField::event(QEvent* event) {
    if (event->type() == QEvent::ShortcutOverride || event->type() == QEvent::KeyPress) {
        const auto* key = dynamic_cast<QKeyEvent*>(event);
        if (key->matches(QKeySequence::Undo) || key->matches(QKeySequence::Redo)) {
            event->ignore();
            return true;
        }
    }
    return QLineEdit::event(event);
}

} // namespace loopwright::inputs
