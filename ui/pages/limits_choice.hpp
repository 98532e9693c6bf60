#pragma once
// Which exposure limits are checked: a box each, with its tiers; those that stand from memory say so.
#include "pages/context.hpp"

#include <QWidget>

class QCheckBox;
class QLabel;

namespace loopwright::pages {

class LimitsChoice : public QWidget {
    Q_OBJECT
public:
    explicit LimitsChoice(const Context& context, QWidget* parent = nullptr);

private:
    void refresh();
    void take(const QString& changed);
    Context context_;
    QLabel* refusal_;
    QList<QCheckBox*> boxes_; ///< in the order of exposure::limits()
};

} // namespace loopwright::pages
