#pragma once
// What height does, at the frequency in focus.
#include "pages/bands_focused_view.hpp"

namespace loopwright::pages {

class HeightView final : public FocusedView {
    Q_OBJECT
public:
    explicit HeightView(const Context& context, QWidget* parent = nullptr);
    ~HeightView() override;

protected:
    void start() override;
    void show_result() override;
    void show_reason(const QString& sentence) override;
    [[nodiscard]] std::string table() override;
    [[nodiscard]] QString table_name() override;
};

} // namespace loopwright::pages
