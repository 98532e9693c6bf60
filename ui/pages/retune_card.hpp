#pragma once
// The whole card as a table; picking a row puts its frequency in focus.
#include "jobs/card_job.hpp"
#include "pages/context.hpp"

#include <QWidget>

class QLabel;
class QTableView;

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
    /// Computes the card of the design as it is.
    void start();

Q_SIGNALS:
    void print_wanted();
    void pocket_wanted();
    void preview_wanted();
    void pdf_wanted();
    void table_export_wanted();

private:
    void show_card();
    void show_state();
    void follow_focus();
    Context context_;
    jobs::CardJob job_;
    models::TextTableModel* model_;
    QTableView* table_;
    QLabel* state_;
    QString failure_;
    bool following_ = false;
};

} // namespace loopwright::pages
