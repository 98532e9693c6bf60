#pragma once
// The Tab key goes through a form as it is read.
class QWidget;

namespace loopwright::inputs {

/// Chains everything below `form` that takes the focus by Tab in the order of its layouts, rows from above,
/// columns from the left; whatever the order of making was.
void tab_in_reading_order(QWidget* form);

} // namespace loopwright::inputs
