#pragma once
// The measured table of the dial: reading and capacitance of the variable capacitor alone. Shown only where
// the design's dial follows a table.
#include "pages/context.hpp"

#include <QWidget>

#include <functional>

namespace loopwright::pages {

class PairsEditor;

class DialTableEditor : public QWidget {
    Q_OBJECT
public:
    explicit DialTableEditor(const Context& context, QWidget* parent = nullptr);

private:
    void edit(const QString& what, const std::function<void(std::vector<design::DialEntry>&)>& change);
    void refresh();
    Context context_;
    PairsEditor* pairs_;
};

} // namespace loopwright::pages
