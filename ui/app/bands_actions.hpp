#pragma once
// What the pages ask for and a page alone cannot do: files, printer, a second design.
#include "jobs/coupling_jobs.hpp"
#include "pages/context.hpp"
#include "printing/print_actions.hpp"

#include <QObject>

#include <optional>

class QWidget;

namespace loopwright::pages {
class BandsPage;
}

namespace loopwright::app {

class BandsActions : public QObject {
    Q_OBJECT
public:
    BandsActions(const pages::Context& context, pages::BandsPage& page, QWidget* window);

    /// Each does nothing before the first survey of a valid design is there.
    void print();
    void preview();
    void save_pdf();
    void export_charts(int chosen = -1);
    void export_figure(const std::shared_ptr<const charts::Figure>& figure);
    void export_bands();
    void export_curve();
    /// The VSWR curve around a match, as a table.
    void export_match(const jobs::MatchReportResult& match);
    /// Asks for a design file to lay over this design.
    void compare_with_file();

private:
    [[nodiscard]] std::optional<printing::SheetData> sheet() const;
    pages::Context context_;
    pages::BandsPage& page_;
    QWidget* window_;
    printing::PrintActions* actions_;
};

} // namespace loopwright::app
