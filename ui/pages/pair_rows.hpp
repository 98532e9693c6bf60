#pragma once
// A list that a person makes longer and shorter: rows of two quantities, a button that removes each, one that
// adds another.
#include "pages/context.hpp"
#include "units/text.hpp"

#include <QWidget>

#include <vector>

class QHBoxLayout;
class QPushButton;
class QVBoxLayout;

namespace loopwright::inputs {
class Entry;
}

namespace loopwright::pages {

class PairRows : public QWidget {
    Q_OBJECT
protected:
    struct Row {
        QWidget* widget = nullptr;
        inputs::Entry* first = nullptr;
        inputs::Entry* second = nullptr;
    };
    struct AddButton {
        QString text;
        const char* name;
        QString tip;
    };
    /// The one that derives connects `add_button` and calls follow_design().
    PairRows(const Context& context, const AddButton& add, QWidget* parent);
    [[nodiscard]] const Context& context() const { return context_; }
    [[nodiscard]] QPushButton& add_button() { return *add_; }
    [[nodiscard]] const std::vector<Row>& rows() const { return rows_; }

    /// Shows the design's list: fit_rows(), then the values.
    virtual void refresh() = 0;
    virtual void remove(std::size_t index) = 0;
    /// Fills `line`, all but the button that removes.
    virtual void fill(Row& row, QHBoxLayout& line, std::size_t index) = 0;
    [[nodiscard]] virtual QString remove_tip() const = 0;
    [[nodiscard]] virtual QString remove_name(std::size_t index) const = 0;

    void follow_design();
    void fit_rows(std::size_t count);
    /// A change by hand; a refusal stands beside the field.
    void edit(inputs::Entry* entry, const design::Design& next, const session::EditLabel& label,
              const QString& key);
    /// Ready to type over in the newest row.
    void enter_last_row();
    /// What a person typed, or the value in the units of the window.
    template <class Quantity>
    [[nodiscard]] QString text_of(const units::Typed<Quantity>& typed) const {
        return typed.text.empty() ? given(typed.value.value(), units::DimensionOf<Quantity>::value)
                                  : QString::fromStdString(typed.text);
    }

private:
    [[nodiscard]] QString given(double si, units::Dimension dimension) const;
    void add_row(std::size_t index);
    Context context_;
    QVBoxLayout* column_;
    QPushButton* add_;
    std::vector<Row> rows_;
};

} // namespace loopwright::pages
