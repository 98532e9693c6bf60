#pragma once
// A quantity field with what belongs beside it: the unit chooser, what the text comes to, and the sentence
// that says why a text was refused.
#include "inputs/quantity_field.hpp"

#include <QWidget>

class QLabel;
class QToolButton;

namespace loopwright::inputs {

class Entry : public QWidget {
    Q_OBJECT
public:
    Entry(const Kind& kind, const std::string& where, QWidget* parent = nullptr);
    [[nodiscard]] QuantityField& field() { return *field_; }
    /// Name for assistive technology and tooltip, of the field and what is beside it.
    void describe(const QString& name, const QString& tooltip);

private:
    void show_remarks();
    void fill_units();
    QuantityField* field_;
    QToolButton* units_ = nullptr;
    QLabel* equivalent_;
    QLabel* refusal_;
};

} // namespace loopwright::inputs
