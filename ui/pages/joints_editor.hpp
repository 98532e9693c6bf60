#pragma once
// The joints of the conductor: how many, and the resistance of each; as many kinds as there are.
#include "pages/context.hpp"

#include <QWidget>

#include <vector>

class QPushButton;
class QVBoxLayout;

namespace loopwright::inputs {
class Entry;
}

namespace loopwright::pages {

class JointsEditor : public QWidget {
    Q_OBJECT
public:
    explicit JointsEditor(const Context& context, QWidget* parent = nullptr);
    /// "3 joints, 2.5 mΩ in all" or "none".
    [[nodiscard]] QString summary() const;

Q_SIGNALS:
    void refreshed();

private:
    struct Row {
        QWidget* widget = nullptr;
        inputs::Entry* count = nullptr;
        inputs::Entry* resistance = nullptr;
    };
    void refresh();
    void add_row(std::size_t index);
    void take(inputs::Entry* entry, std::size_t index, bool is_count, double si, const QString& text);
    void remove(std::size_t index);
    Context context_;
    QVBoxLayout* column_;
    QPushButton* add_;
    std::vector<Row> rows_;
};

} // namespace loopwright::pages
