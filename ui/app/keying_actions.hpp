#pragma once
// What the page Before keying asks for and cannot do alone: files and printer.
#include "pages/context.hpp"
#include "printing/keying_sheet.hpp"
#include "printing/print_actions.hpp"

#include <QObject>

#include <optional>

class QWidget;

namespace loopwright::pages {
class KeyingPage;
}

namespace loopwright::app {

class KeyingActions : public QObject {
    Q_OBJECT
public:
    KeyingActions(const pages::Context& context, pages::KeyingPage& page, QWidget* window);

    /// Each says why where there is no finished result of the design as it is.
    void print();
    void preview();
    void save_pdf();
    void export_table();
    void export_figure(const std::shared_ptr<const charts::Figure>& figure);

private:
    /// Nothing while figures or their unfavourable ends are missing: such a sheet must not leave the house.
    [[nodiscard]] std::optional<printing::KeyingSheetData> sheet();
    pages::Context context_;
    pages::KeyingPage& page_;
    QWidget* window_;
    printing::PrintActions* actions_;
};

} // namespace loopwright::app
