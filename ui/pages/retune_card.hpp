#pragma once
// The whole card as a table; picking a row puts its frequency in focus.
#include "jobs/card_job.hpp"
#include "pages/context.hpp"

#include <QWidget>

#include <memory>

class QHBoxLayout;
class QLabel;
class QTableView;
class QTimer;

namespace loopwright::inputs {
class Entry;
}

namespace loopwright::models {
class TextTableModel;
}

namespace loopwright::pages {

class RetuneCard : public QWidget {
    Q_OBJECT
public:
    explicit RetuneCard(const Context& context, QWidget* parent = nullptr);
    [[nodiscard]] jobs::CardJob& job() { return job_; }
    [[nodiscard]] QTableView& table() { return *table_; }
    /// What the table shows: voltages as on the sheet before keying once that is there. Null before the
    /// first.
    [[nodiscard]] std::shared_ptr<const survey::Card> shown() const;
    /// Computes the card of the design as it is.
    void start();
    /// Up to which the loop counts as usable.
    [[nodiscard]] double vswr_limit() const { return vswr_limit_; }

Q_SIGNALS:
    void vswr_limit_changed();
    void print_wanted();
    void pocket_wanted();
    void preview_wanted();
    void pdf_wanted();
    void table_export_wanted();

private:
    void add_vswr(QHBoxLayout& row);
    void wrap_remarks();
    void fit_rows();
    void set_vswr_limit(double limit, const QString& text);
    void show_card();
    void show_state();
    void follow_focus();
    Context context_;
    jobs::CardJob job_;
    models::TextTableModel* model_;
    QTableView* table_;
    QLabel* state_;
    QTimer* later_; ///< one fitting for all that changed at once
    inputs::Entry* vswr_;
    double vswr_limit_ = 2.0;
    QString failure_;
    bool following_ = false;
};

} // namespace loopwright::pages
