#pragma once
// The fixed capacitors beside the variable one: as many as there are, each with its fields.
#include "pages/context.hpp"

#include <QWidget>

#include <vector>

class QPushButton;
class QVBoxLayout;

namespace loopwright::pages {

class AddedCapacitorsEditor : public QWidget {
    Q_OBJECT
public:
    explicit AddedCapacitorsEditor(const Context& context, QWidget* parent = nullptr);
    /// "100 pF across the loop's ends, 47 pF in series" or "none".
    [[nodiscard]] QString summary() const;

Q_SIGNALS:
    void refreshed();
    /// A capacitor came or went.
    void rows_changed();

private:
    void refresh();
    void add_capacitor();
    void add_row();
    void remove(std::size_t index);
    Context context_;
    QVBoxLayout* column_;
    QPushButton* add_;
    std::vector<QWidget*> rows_;
};

} // namespace loopwright::pages
