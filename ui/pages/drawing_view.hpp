#pragma once
// The drawing of the loop on the Build page.
#include "drawings/loop_drawing.hpp"
#include "pages/context.hpp"

#include <QTimer>
#include <QWidget>

#include <optional>

namespace loopwright::pages {

class DrawingView : public QWidget {
    Q_OBJECT
public:
    explicit DrawingView(const Context& context, QWidget* parent = nullptr);
    [[nodiscard]] QSize sizeHint() const override;
    [[nodiscard]] QSize minimumSizeHint() const override;

    [[nodiscard]] const drawings::LoopDrawing& drawing() const { return *drawing_; }

protected:
    void paintEvent(QPaintEvent* event) override;

private:
    void refresh();
    void refresh_current();
    Context context_;
    std::optional<drawings::LoopDrawing> drawing_;
    QTimer patience_;
};

} // namespace loopwright::pages
