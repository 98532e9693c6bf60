#pragma once
// The planned bands as check boxes, in the order of the region's bands.
#include "pages/context.hpp"

#include <QWidget>

class QCheckBox;
class QGridLayout;
class QLabel;

namespace loopwright::pages {

class BandsChoice : public QWidget {
    Q_OBJECT
public:
    explicit BandsChoice(const Context& context, QWidget* parent = nullptr);

private:
    void refresh();
    void take();
    Context context_;
    QGridLayout* grid_;
    QLabel* refusal_;
    QList<QCheckBox*> boxes_;
    int region_ = 0;
};

} // namespace loopwright::pages
