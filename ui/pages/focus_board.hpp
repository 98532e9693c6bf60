#pragma once
// A board of one row a band: picking a row puts its band in focus, the focus picks the row; a selection is
// copied with its headings.
#include "pages/context.hpp"

#include <QTableView>

#include <optional>

namespace loopwright::pages {

class BandsDelegate;

class FocusBoard : public QTableView {
    Q_OBJECT
public:
    void set_stale(bool stale);
    /// The columns shown of what is selected (of all rows where nothing is), with their headings, separated
    /// by tabulators.
    [[nodiscard]] QString selected_text() const;

public Q_SLOTS:
    void copy();

protected:
    FocusBoard(const Context& context, QAbstractItemModel& model, QWidget* parent);
    /// What the model's rows are of; -1 and nothing where there is none.
    [[nodiscard]] virtual int row_of(const QString& band) const = 0;
    /// Not the dial frequency but the one the row is of, so that every page shows the row's numbers.
    [[nodiscard]] virtual std::optional<units::Frequency> frequency_at(int row) const = 0;
    [[nodiscard]] const Context& context() const { return context_; }
    /// Selects the row of the band in focus.
    void follow_focus();
    /// What a column needs to show all of its cells and its heading.
    [[nodiscard]] int wanted_width(int column) const;
    void keyPressEvent(QKeyEvent* event) override;

private:
    void pick_row(const QModelIndex& current);
    Context context_;
    BandsDelegate* delegate_;
    bool following_ = false;
};

} // namespace loopwright::pages
