#pragma once
// Rows made of specs: labels, fields, what is folded; every accepted text becomes one edit of the document.
#include "pages/build_specs.hpp"
#include "pages/context.hpp"

#include <QWidget>

#include <functional>
#include <vector>

class QFormLayout;
class QLabel;

namespace loopwright::inputs {
class Fold;
class QuantityField;
} // namespace loopwright::inputs

namespace loopwright::pages {

class FormGroup : public QWidget {
    Q_OBJECT
public:
    FormGroup(const Context& context, const GroupSpec& spec, QWidget* parent = nullptr);
    /// A row of its own making, below the others. refresh is called after every change of the design.
    void add_row(const QString& label, QWidget* widget, std::function<void(const design::Design&)> refresh);

    /// What the fields that are not folded away say, in one line.
    [[nodiscard]] QString summary() const;

Q_SIGNALS:
    /// After every change of the design.
    void refreshed();

private:
    struct Row {
        QFormLayout* form = nullptr;
        QWidget* field = nullptr;
        QLabel* label = nullptr; ///< none for a check box
        FieldWords words;
        std::function<void(const design::Design&)> show;
        std::function<QString(const design::Design&)> summary; ///< for the folded header
    };
    void add(const QuantitySpec& spec);
    void add(const ChoiceSpec& spec);
    void add(const CheckSpec& spec);
    void add(const TextSpec& spec);
    void place(Row row, QWidget* buddy);
    void refresh();
    void apply(const design::Design& next, const session::EditLabel& label, const std::string& path,
               const std::function<void(const QString&)>& refuse);
    void take(inputs::QuantityField& field, const QuantitySpec& spec, double si, const QString& text);
    [[nodiscard]] QString plain_label(const FieldWords& words) const;
    [[nodiscard]] QString spoken(const FieldWords& words) const;
    [[nodiscard]] QString shown_text(const QuantitySpec& spec, const design::Design& design) const;
    Context context_;
    std::string id_;
    QFormLayout* main_ = nullptr;
    QFormLayout* rare_ = nullptr;
    inputs::Fold* fold_ = nullptr;
    std::vector<Row> rows_;
    std::vector<std::function<void(const design::Design&)>> refreshes_;
};

} // namespace loopwright::pages
