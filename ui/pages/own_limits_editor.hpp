#pragma once
// Limits of the user's own: name, both fields, averaging time, tier; as many as there are.
#include "pages/context.hpp"

#include <QWidget>

#include <functional>
#include <vector>

class QFormLayout;
class QPushButton;
class QVBoxLayout;

namespace loopwright::inputs {
class ChoiceField;
class Entry;
class TextField;
} // namespace loopwright::inputs

namespace loopwright::pages {

class OwnLimitsEditor : public QWidget {
    Q_OBJECT
public:
    explicit OwnLimitsEditor(const Context& context, QWidget* parent = nullptr);

Q_SIGNALS:
    /// There are more or fewer fields than before.
    void rows_changed();

private:
    struct Row {
        QWidget* widget = nullptr;
        inputs::TextField* name = nullptr;
        inputs::Entry* electric = nullptr;
        inputs::Entry* magnetic = nullptr;
        inputs::Entry* averaging = nullptr;
        inputs::ChoiceField* tier = nullptr;
    };
    using Change = std::function<void(design::OwnLimit&)>;
    void refresh();
    void show(const Row& row, const design::OwnLimit& limit);
    void add_row(std::size_t index);
    void add_name(QFormLayout& form, Row& row, std::size_t index);
    void add_tier(QFormLayout& form, Row& row, std::size_t index);
    inputs::Entry* add_entry(QFormLayout& form, std::size_t index, const QString& label,
                             const QString& tooltip, const char* key, units::Dimension dimension,
                             const std::function<void(design::OwnLimit&, double, const std::string&)>& set);
    void take(std::size_t index, const QString& what, const QString& before, const QString& after,
              const char* key, const Change& change, const std::function<void(const QString&)>& refuse);
    void remove(std::size_t index);
    Context context_;
    QVBoxLayout* column_;
    QPushButton* add_;
    std::vector<Row> rows_;
};

} // namespace loopwright::pages
