#pragma once
// Where a number comes from: formula, what stands in it, source, validity. Stays open beside the window and
// follows every edit; the list leads on to the parts that a number is made of.
#include "design/design.hpp"
#include "loop/explain.hpp"
#include "units/text.hpp"

#include <QDialog>
#include <QString>

#include <optional>
#include <vector>

class QLabel;
class QListWidget;
class QTableWidget;

namespace loopwright::dialogs {

class ExplanationDialog : public QDialog {
    Q_OBJECT
public:
    explicit ExplanationDialog(QWidget* parent = nullptr);
    /// The point that the numbers are of; nothing where there is none.
    void set_point(const design::Design& design, const std::optional<loop::OperatingPoint>& point,
                   units::UnitSystem system);
    /// Shows a number, by its key as loop::Explanation has it.
    void select(const QString& key);

private:
    void show_current();
    void fill_symbols(const std::vector<loop::Symbol>& symbols);
    std::vector<loop::Explanation> explanations_;
    QString reason_; ///< why there are none
    QListWidget* list_;
    QLabel* title_;
    QLabel* formula_;
    QTableWidget* symbols_;
    QLabel* source_;
    QLabel* validity_;
};

} // namespace loopwright::dialogs
