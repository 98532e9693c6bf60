#pragma once
// The table of a feed line's matched loss: one row a frequency, as a data sheet prints it.
#include "pages/context.hpp"

#include <QWidget>

#include <vector>

class QPushButton;
class QVBoxLayout;

namespace loopwright::inputs {
class Entry;
}

namespace loopwright::pages {

/// Shown only where the design has a feed line.
class LineLossEditor : public QWidget {
    Q_OBJECT
public:
    explicit LineLossEditor(const Context& context, QWidget* parent = nullptr);

private:
    struct Row {
        QWidget* widget = nullptr;
        inputs::Entry* loss = nullptr;
        inputs::Entry* frequency = nullptr;
    };
    void refresh();
    void add_row(std::size_t index);
    void add_point();
    void take(inputs::Entry* entry, std::size_t index, bool is_loss, double si, const QString& text);
    void remove(std::size_t index);
    Context context_;
    QVBoxLayout* column_;
    QPushButton* add_;
    std::vector<Row> rows_;
};

} // namespace loopwright::pages
