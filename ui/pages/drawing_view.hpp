#pragma once
// The drawing of the loop on the Build page.
#include "drawings/loop_drawing.hpp"
#include "pages/context.hpp"

#include <QWidget>

#include <optional>

namespace loopwright::pages {

class DrawingView : public QWidget {
    Q_OBJECT
public:
    explicit DrawingView(const Context& context, QWidget* parent = nullptr);
    [[nodiscard]] QSize sizeHint() const override;
    [[nodiscard]] QSize minimumSizeHint() const override;

protected:
    void paintEvent(QPaintEvent* event) override;

private:
    void refresh();
    Context context_;
    std::optional<drawings::LoopDrawing> drawing_;
};

} // namespace loopwright::pages
