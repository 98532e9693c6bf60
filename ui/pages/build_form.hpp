#pragma once
// All parameters of the design, grouped as the hands meet them; each group can be folded.
#include "pages/build_specs.hpp"
#include "pages/context.hpp"

#include <QWidget>

class QVBoxLayout;

namespace loopwright::inputs {
class Fold;
}

namespace loopwright::pages {

class CouplingPanel;
class FormGroup;

class BuildForm : public QWidget {
    Q_OBJECT
public:
    explicit BuildForm(const Context& context, QWidget* parent = nullptr);
    [[nodiscard]] CouplingPanel& match() { return *match_; }

private:
    void add_title();
    FormGroup* add_group(const GroupSpec& spec, bool unfolded);
    void add_coupling();
    void add_joints();
    void add_fixed_capacitors();
    void add_made_capacitor();
    inputs::Fold* add_fold(const std::string& id, const QString& title, QWidget* content, bool unfolded);
    Context context_;
    QVBoxLayout* column_;
    CouplingPanel* match_ = nullptr;
};

} // namespace loopwright::pages
