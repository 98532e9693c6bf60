#pragma once
// Where it radiates: elevation and azimuth cut at the frequency in focus, a dipole to compare with.
#include "field/pattern.hpp"
#include "pages/bands_focused_view.hpp"

class QHBoxLayout;

namespace loopwright::inputs {
class ChoiceField;
class Entry;
} // namespace loopwright::inputs

namespace loopwright::pages {

class PatternView final : public FocusedView {
    Q_OBJECT
public:
    explicit PatternView(const Context& context, QWidget* parent = nullptr);
    ~PatternView() override;
    /// As the fields say it.
    [[nodiscard]] const field::PatternRequest& request() const { return request_; }

protected:
    void start() override;
    void show_result() override;
    void show_reason(const QString& sentence) override;
    [[nodiscard]] std::string table() override;
    [[nodiscard]] QString table_name() override;

private:
    struct Field {
        const char* where;
        QString label, name, tooltip;
        double low = 0, high = 1;
        QString accepted;
    };
    void build_fields();
    inputs::Entry* add_field(QHBoxLayout& row, const Field& field, units::Dimension dimension, double* value);
    void show_fields();
    void keep();
    field::PatternRequest request_;
    double height_m_ = 5.0, dipole_deg_rad_ = 0.0, cut_rad_ = 0.0;
    inputs::ChoiceField* wire_;
    inputs::Entry* height_ = nullptr;
    inputs::Entry* direction_ = nullptr;
};

} // namespace loopwright::pages
