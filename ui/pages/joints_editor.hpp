#pragma once
// The joints of the conductor: how many, and the resistance of each; as many kinds as there are.
#include "pages/pair_rows.hpp"

namespace loopwright::pages {

class JointsEditor final : public PairRows {
    Q_OBJECT
public:
    explicit JointsEditor(const Context& context, QWidget* parent = nullptr);
    /// "3 joints, 2.5 mΩ in all" or "none".
    [[nodiscard]] QString summary() const;

Q_SIGNALS:
    void refreshed();

protected:
    void refresh() override;
    void remove(std::size_t index) override;
    void fill(Row& row, QHBoxLayout& line, std::size_t index) override;
    [[nodiscard]] QString remove_tip() const override;
    [[nodiscard]] QString remove_name(std::size_t index) const override;

private:
    void take(inputs::Entry* entry, std::size_t index, bool is_count, double si, const QString& text);
};

} // namespace loopwright::pages
