#pragma once
// The table of a feed line's matched loss: one row a frequency, as a data sheet prints it.
#include "pages/pair_rows.hpp"

namespace loopwright::pages {

/// Shown only where the design has a feed line.
class LineLossEditor final : public PairRows {
    Q_OBJECT
public:
    explicit LineLossEditor(const Context& context, QWidget* parent = nullptr);

protected:
    void refresh() override;
    void remove(std::size_t index) override;
    void fill(Row& row, QHBoxLayout& line, std::size_t index) override;
    [[nodiscard]] QString remove_tip() const override;
    [[nodiscard]] QString remove_name(std::size_t index) const override;

private:
    void add_point();
    void take(inputs::Entry* entry, std::size_t index, bool is_loss, double si, const QString& text);
};

} // namespace loopwright::pages
