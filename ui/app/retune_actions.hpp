#pragma once
// What the page Retune asks for and cannot do alone: files and printer.
#include "pages/context.hpp"
#include "printing/card_sheet.hpp"
#include "printing/print_actions.hpp"
#include "survey/card.hpp"

#include <QObject>

#include <memory>
#include <optional>

class QWidget;

namespace loopwright::pages {
class RetunePage;
}

namespace loopwright::app {

class RetuneActions : public QObject {
    Q_OBJECT
public:
    RetuneActions(const pages::Context& context, pages::RetunePage& page, QWidget* window);

    /// Each says why where there is no finished card of the design as it is; paper needs the figures before
    /// keying too, which stand on it.
    void print();
    void print_pocket();
    void preview();
    void save_pdf();
    void export_table();
    void export_figure(const std::shared_ptr<const charts::Figure>& figure);

private:
    /// Nothing while the card is of an older state: such a one must not leave the house.
    [[nodiscard]] std::shared_ptr<const survey::Card> card();
    [[nodiscard]] std::optional<printing::CardSheetData> sheet(bool pocket);
    void say(const QString& sentence);
    pages::Context context_;
    pages::RetunePage& page_;
    QWidget* window_;
    printing::PrintActions* actions_;
};

} // namespace loopwright::app
