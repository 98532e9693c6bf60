#pragma once
// A list of pairs, a reading of the dial and a quantity, to be typed, pasted, changed and taken out: for the
// calibration and for a capacitor's measured table. The owner keeps the pairs; this shows them and asks.
#include "models/pairs_model.hpp"
#include "units/text.hpp"

#include <QTableView>
#include <QWidget>

class QLabel;
class QPushButton;

namespace loopwright::inputs {
class Entry;
}

namespace loopwright::pages {

struct PairsWords {
    QString id;            ///< of the objects: "calibration"
    QString first, second; ///< labels of the two fields
    QString first_tip, second_tip;
    units::Dimension dimension = units::Dimension::frequency; ///< of the second
    QStringList headings, tips;                               ///< of the table
    QString add, add_tip;                                     ///< the button
    QString table, table_tip;                                 ///< for assistive technology
};

class PairsEditor : public QWidget {
    Q_OBJECT
public:
    explicit PairsEditor(const PairsWords& words, QWidget* parent = nullptr);
    void set_rows(const QList<models::PairRow>& rows);
    /// Offers what may be read off next; replaces what was offered before and not typed over.
    void offer(const QString& first, const QString& second);
    /// Why the last wish was not met: one sentence, until the next one.
    void refuse(const QString& sentence);
    [[nodiscard]] QTableView& table() { return *table_; }
    /// A row for more buttons.
    void add_button(QPushButton* button);

Q_SIGNALS:
    void add_wanted(double reading, double si, const QString& text);
    void change_wanted(int row, int column, const QString& text);
    void remove_wanted(const QList<int>& rows);
    void paste_wanted(const QString& text);

protected:
    bool eventFilter(QObject* watched, QEvent* event) override;

private:
    void take();
    void remove();
    void fit();
    models::PairsModel* model_;
    inputs::Entry* first_;
    inputs::Entry* second_;
    QPushButton* add_;
    QPushButton* remove_;
    QLabel* refusal_;
    QTableView* table_;
    QWidget* buttons_;
    QString second_text_;
};

} // namespace loopwright::pages
