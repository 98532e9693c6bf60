#pragma once
// What the page Before keying asks for: power and use, limits, people, the hand that tunes. It edits the same
// design as Build.
#include "pages/build_specs.hpp"
#include "pages/context.hpp"

#include <QWidget>

class QVBoxLayout;

namespace loopwright::pages {

class KeyingForm : public QWidget {
    Q_OBJECT
public:
    explicit KeyingForm(const Context& context, QWidget* parent = nullptr);

private:
    void add_fold(const QString& id, const QString& title, QWidget* content);
    void add_group(const GroupSpec& spec);
    void add_limits();
    Context context_;
    QVBoxLayout* column_;
};

} // namespace loopwright::pages
