#pragma once
// Print, preview, PDF, exports: the questions they ask, the files they write, and what is said when one
// fails.
#include "charts/chart_picture.hpp"
#include "models/readout_model.hpp"
#include "printing/sheet.hpp"
#include "settings/settings.hpp"

#include <QObject>

#include <memory>
#include <string>

class QPrinter;
class QWidget;

namespace loopwright::printing {

struct ChartExport;

/// Writes a text so that either the old or the new content is on disk. False where it cannot.
[[nodiscard]] bool write_text(const QString& file, const std::string& text);

class PrintActions : public QObject {
    Q_OBJECT
public:
    /// window: parent of the dialogs. Both outlive this.
    PrintActions(settings::Settings& settings, QWidget* window);
    ~PrintActions() override;

    /// Each returns whether it was done (not cancelled, not failed).
    bool print(const Paper& paper);
    bool preview(const Paper& paper);
    bool save_pdf(const Paper& paper);
    bool print(const SheetData& data) { return print(paper_of(data)); }
    bool preview(const SheetData& data) { return preview(paper_of(data)); }
    bool save_pdf(const SheetData& data) { return save_pdf(paper_of(data)); }
    bool export_charts(const models::Charts& charts, const charts::Origin& origin, charts::Span shown,
                       int chosen);
    bool export_figure(const std::shared_ptr<const charts::Figure>& figure, const charts::Origin& origin);
    /// stem: beginning of the proposed name.
    bool export_table(const std::string& csv, const QString& stem);

private:
    bool export_asked(const ChartExport& start, int chosen, charts::Span shown);
    [[nodiscard]] QPrinter& printer();
    [[nodiscard]] QString ask_file(const QString& title, const QString& proposed, const QString& filter,
                                   const QString& ending);
    bool say_failed(const QString& file);
    settings::Settings& settings_;
    QWidget* window_;
    std::unique_ptr<QPrinter> printer_;
};

} // namespace loopwright::printing
