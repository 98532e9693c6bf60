#include "app/retune_actions.hpp"

#include "base/version.hpp"
#include "pages/retune_card.hpp"
#include "pages/retune_page.hpp"
#include "printing/chart_export.hpp"
#include "report/card.hpp"

#include <QDate>
#include <QFileInfo>
#include <QLocale>
#include <QMessageBox>

namespace loopwright::app {

RetuneActions::RetuneActions(const pages::Context& context, pages::RetunePage& page, QWidget* window)
    : QObject(window), context_(context), page_(page), window_(window),
      actions_(new printing::PrintActions(context.settings, window)) {
    connect(&page_.card(), &pages::RetuneCard::table_export_wanted, this, &RetuneActions::export_table);
    connect(&page_.card(), &pages::RetuneCard::print_wanted, this, &RetuneActions::print);
    connect(&page_.card(), &pages::RetuneCard::pocket_wanted, this, &RetuneActions::print_pocket);
    connect(&page_.card(), &pages::RetuneCard::preview_wanted, this, &RetuneActions::preview);
    connect(&page_.card(), &pages::RetuneCard::pdf_wanted, this, &RetuneActions::save_pdf);
    connect(&page_, &pages::RetunePage::figure_export_wanted, this, &RetuneActions::export_figure);
}

std::shared_ptr<const survey::Card> RetuneActions::card() {
    const auto& known = page_.card().job().result();
    if (known && !page_.card().job().stale() && known->request.design == context_.document.design()) {
        return page_.card().shown();
    }
    say(page_.card().job().running()
            ? tr("The card is still being computed.")
            : tr("There is no card of the design as it is yet; the page Retune makes it."));
    return nullptr;
}

void RetuneActions::say(const QString& sentence) {
    QMessageBox::information(window_, tr("Retune card"), sentence);
}

std::optional<printing::CardSheetData> RetuneActions::sheet(bool pocket) {
    const auto known = card();
    if (!known) {
        return std::nullopt;
    }
    if (!context_.keying.settled()) {
        say(tr("The highest voltage and the distance to keep stand on the card, and they are still being "
               "computed. It can be printed as soon as they are there."));
        return std::nullopt;
    }
    return printing::CardSheetData{known,
                                   context_.keying.result(),
                                   QFileInfo(context_.document.path()).fileName(),
                                   QDate::currentDate(),
                                   context_.settings.unit_system(),
                                   pocket};
}

void RetuneActions::print() {
    if (const auto data = sheet(false)) {
        actions_->print(printing::paper_of(*data));
    }
}

void RetuneActions::print_pocket() {
    if (const auto data = sheet(true)) {
        actions_->print(printing::paper_of(*data));
    }
}

void RetuneActions::preview() {
    if (const auto data = sheet(false)) {
        actions_->preview(printing::paper_of(*data));
    }
}

void RetuneActions::save_pdf() {
    if (const auto data = sheet(false)) {
        actions_->save_pdf(printing::paper_of(*data));
    }
}

void RetuneActions::export_table() {
    if (const auto known = card()) {
        const QString title = QString::fromStdString(known->request.design.title);
        actions_->export_table(report::to_csv(report::card_data(*known)),
                               printing::file_stem(title) + QStringLiteral("-retune"));
    }
}

void RetuneActions::export_figure(const std::shared_ptr<const charts::Figure>& figure) {
    charts::Origin origin;
    origin.design = QString::fromStdString(context_.document.design().title);
    origin.conditions = tr("full-wave model");
    origin.date = QLocale().toString(QDate::currentDate(), QLocale::LongFormat);
    origin.program = QStringLiteral("Loopwright %1").arg(QString::fromLatin1(base::version));
    actions_->export_figure(figure, origin);
}

} // namespace loopwright::app
