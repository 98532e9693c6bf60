#pragma once
// Nested layouts settle one level after the other, each in its own turn of the event loop; between two of
// them a column is shorter than what stands in it, and figures of a fixed height lie over each other.
class QWidget;

namespace loopwright::pages {

/// Not painted before all layouts that are waiting have been done. Call it when something has changed what a
/// widget asks for.
void paint_when_settled(QWidget& widget);

} // namespace loopwright::pages
