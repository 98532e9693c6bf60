#include "app/keying_actions.hpp"

#include "base/version.hpp"
#include "models/keying_words.hpp"
#include "pages/keying_page.hpp"
#include "pages/keying_pictures.hpp"
#include "printing/chart_export.hpp"
#include "report/keying.hpp"

#include <QFileInfo>
#include <QGuiApplication>
#include <QLocale>
#include <QMessageBox>

namespace loopwright::app {

KeyingActions::KeyingActions(const pages::Context& context, pages::KeyingPage& page, QWidget* window)
    : QObject(window), context_(context), page_(page), window_(window),
      actions_(new printing::PrintActions(context.settings, window)) {
    connect(&page_, &pages::KeyingPage::print_wanted, this, &KeyingActions::print);
    connect(&page_, &pages::KeyingPage::pdf_wanted, this, &KeyingActions::save_pdf);
    connect(&page_, &pages::KeyingPage::table_export_wanted, this, &KeyingActions::export_table);
    connect(&page_, &pages::KeyingPage::figure_export_wanted, this, &KeyingActions::export_figure);
}

std::optional<printing::KeyingSheetData> KeyingActions::sheet() {
    if (!context_.keying.settled()) {
        QMessageBox::information(
            window_, tr("Before keying"),
            context_.keying.running()
                ? tr("The sheet is still being computed. It can be printed as soon as the "
                     "unfavourable ends are there.")
                : tr("There are no figures of the design as it is; the page says why."));
        return std::nullopt;
    }
    const auto& keying = context_.keying.result();
    const units::UnitSystem system = context_.settings.unit_system();
    QGuiApplication::setOverrideCursor(Qt::WaitCursor);
    const models::SurroundingsPlot plot = printing::planned_plot(*keying, system);
    QGuiApplication::restoreOverrideCursor();
    return printing::KeyingSheetData{keying, plot, QFileInfo(context_.document.path()).fileName(),
                                     QDate::currentDate(), system};
}

void KeyingActions::print() {
    if (const auto data = sheet()) {
        actions_->print(printing::paper_of(*data));
    }
}

void KeyingActions::preview() {
    if (const auto data = sheet()) {
        actions_->preview(printing::paper_of(*data));
    }
}

void KeyingActions::save_pdf() {
    if (const auto data = sheet()) {
        actions_->save_pdf(printing::paper_of(*data));
    }
}

void KeyingActions::export_table() {
    if (const auto data = sheet()) {
        const QString title = QString::fromStdString(data->keying->request.design.title);
        actions_->export_table(report::to_csv(report::keying_data(*data->keying)),
                               printing::file_stem(title) + QStringLiteral("-keying"));
    }
}

void KeyingActions::export_figure(const std::shared_ptr<const charts::Figure>& figure) {
    charts::Origin origin;
    const auto& keying = context_.keying.result();
    const design::Design& design = keying ? keying->request.design : context_.document.design();
    origin.design = QString::fromStdString(design.title);
    origin.conditions = models::keying_conditions(design);
    origin.date = QLocale().toString(QDate::currentDate(), QLocale::LongFormat);
    origin.program = QStringLiteral("Loopwright %1").arg(QString::fromLatin1(base::version));
    actions_->export_figure(figure, origin);
}

} // namespace loopwright::app
