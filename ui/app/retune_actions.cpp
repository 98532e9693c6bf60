#include "app/retune_actions.hpp"

#include "base/version.hpp"
#include "pages/retune_card.hpp"
#include "pages/retune_page.hpp"
#include "printing/chart_export.hpp"
#include "report/card.hpp"

#include <QDate>
#include <QLocale>
#include <QMessageBox>

namespace loopwright::app {

RetuneActions::RetuneActions(const pages::Context& context, pages::RetunePage& page, QWidget* window)
    : QObject(window), context_(context), page_(page), window_(window),
      actions_(new printing::PrintActions(context.settings, window)) {
    connect(&page_.card(), &pages::RetuneCard::table_export_wanted, this, &RetuneActions::export_table);
    connect(&page_, &pages::RetunePage::figure_export_wanted, this, &RetuneActions::export_figure);
}

std::shared_ptr<const survey::Card> RetuneActions::card() {
    const auto& known = page_.card().job().result();
    if (known && !page_.card().job().stale() && known->request.design == context_.document.design()) {
        return known;
    }
    QMessageBox::information(
        window_, tr("Retune card"),
        page_.card().job().running()
            ? tr("The card is still being computed.")
            : tr("There is no card of the design as it is yet; the page Retune makes it."));
    return nullptr;
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
