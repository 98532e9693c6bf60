#include "printing/print_actions.hpp"

#include "printing/chart_export.hpp"

#include <QDir>
#include <QFileDialog>
#include <QFileInfo>
#include <QMessageBox>
#include <QPageLayout>
#include <QPageSize>
#include <QPrintDialog>
#include <QPrintPreviewDialog>
#include <QPrinter>
#include <QSaveFile>

namespace loopwright::printing {

PrintActions::PrintActions(settings::Settings& settings, QWidget* window)
    : QObject(window), settings_(settings), window_(window) {}

PrintActions::~PrintActions() = default;

/// One printer for the whole run, so that its paper and choices are kept.
QPrinter& PrintActions::printer() {
    if (!printer_) {
        printer_ = std::make_unique<QPrinter>(QPrinter::HighResolution);
        printer_->setPageSize(QPageSize(prefers_letter() ? QPageSize::Letter : QPageSize::A4));
        printer_->setPageMargins(QMarginsF(margin_mm, margin_mm, margin_mm, margin_mm),
                                 QPageLayout::Millimeter);
    }
    return *printer_;
}

bool PrintActions::print(const Paper& paper) {
    printer().setDocName(paper.stem);
    QPrintDialog dialog(&printer(), window_);
    dialog.setWindowTitle(tr("Print the page of this design"));
    if (dialog.exec() != QDialog::Accepted) {
        return false;
    }
    if (!print_paper(printer(), paper)) {
        QMessageBox::warning(window_, tr("Print"), tr("The printer could not be started."));
        return false;
    }
    return true;
}

bool PrintActions::preview(const Paper& paper) {
    printer().setDocName(paper.stem);
    QPrintPreviewDialog dialog(&printer(), window_);
    dialog.setWindowTitle(tr("The page of this design"));
    constexpr QSize size{900, 900};
    dialog.resize(size);
    connect(&dialog, &QPrintPreviewDialog::paintRequested, this,
            [&paper](QPrinter* on) { static_cast<void>(print_paper(*on, paper)); });
    return dialog.exec() == QDialog::Accepted;
}

QString PrintActions::ask_file(const QString& title, const QString& proposed, const QString& filter,
                               const QString& ending) {
    QString file = QFileDialog::getSaveFileName(
        window_, title, QDir(settings_.last_folder()).filePath(proposed + ending), filter);
    if (file.isEmpty()) {
        return {};
    }
    if (QFileInfo(file).suffix().isEmpty()) {
        file += ending;
    }
    settings_.set_last_folder(QFileInfo(file).absolutePath());
    return file;
}

bool PrintActions::say_failed(const QString& file) {
    QMessageBox::warning(window_, tr("Not written"),
                         tr("%1 could not be written. Choose a folder that you may write to.").arg(file));
    return false;
}

bool PrintActions::save_pdf(const Paper& paper) {
    const QString file =
        ask_file(tr("The page of this design as PDF"), paper.stem, tr("PDF (*.pdf)"), QStringLiteral(".pdf"));
    if (file.isEmpty()) {
        return false;
    }
    const bool letter = printer().pageLayout().pageSize().id() == QPageSize::Letter;
    return write_paper_pdf(file, paper, letter) || say_failed(file);
}

bool PrintActions::export_charts(const models::Charts& charts, const charts::Origin& origin,
                                 charts::Span shown, int chosen) {
    if (!charts) {
        return false;
    }
    return export_asked({*charts, origin, {}, settings_.last_folder(), file_stem(origin.design)}, chosen,
                        shown);
}

bool PrintActions::export_figure(const std::shared_ptr<const charts::Figure>& figure,
                                 const charts::Origin& origin) {
    if (!figure) {
        return false;
    }
    constexpr double width_mm = 160.0;
    ChartExport start{{}, origin, {}, settings_.last_folder(), file_stem(origin.design)};
    start.figure = figure;
    start.size.mm = {width_mm, width_mm / figure->shape()};
    return export_asked(start, -1, {});
}

bool PrintActions::export_asked(const ChartExport& start, int chosen, charts::Span shown) {
    ChartExportDialog dialog(start, chosen, shown, window_);
    if (dialog.exec() != QDialog::Accepted) {
        return false;
    }
    const ChartExport wanted = dialog.result_wanted();
    QStringList present = file_names(wanted);
    present.removeIf([](const QString& name) { return !QFileInfo::exists(name); });
    if (!present.isEmpty() &&
        QMessageBox::question(
            window_, tr("Replace files?"),
            tr("These files exist. Replace them?\n%1").arg(present.join(QLatin1Char('\n')))) !=
            QMessageBox::Yes) {
        return false;
    }
    settings_.set_last_folder(wanted.folder);
    QString failed;
    static_cast<void>(write_charts(wanted, failed));
    return failed.isEmpty() || say_failed(failed);
}

bool PrintActions::export_table(const std::string& csv, const QString& stem) {
    const QString file =
        ask_file(tr("Table as CSV"), stem, tr("Comma-separated values (*.csv)"), QStringLiteral(".csv"));
    if (file.isEmpty()) {
        return false;
    }
    return write_text(file, csv) || say_failed(file);
}

bool write_text(const QString& file, const std::string& text) {
    QSaveFile out(file);
    return out.open(QIODevice::WriteOnly) &&
           out.write(text.data(), static_cast<qint64>(text.size())) == static_cast<qint64>(text.size()) &&
           out.commit();
}

} // namespace loopwright::printing
