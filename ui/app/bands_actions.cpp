#include "app/bands_actions.hpp"

#include "base/error.hpp"
#include "document/design_file.hpp"
#include "pages/bands_page.hpp"
#include "printing/chart_export.hpp"
#include "report/match.hpp"
#include "report/table.hpp"
#include "report/tables.hpp"

#include <QFileDialog>
#include <QFileInfo>
#include <QMessageBox>

#include <cmath>
#include <filesystem>

namespace loopwright::app {

BandsActions::BandsActions(const pages::Context& context, pages::BandsPage& page, QWidget* window)
    : QObject(window), context_(context), page_(page), window_(window),
      actions_(new printing::PrintActions(context.settings, window)) {
    connect(&page_, &pages::BandsPage::charts_export_wanted, this, &BandsActions::export_charts);
    connect(&page_, &pages::BandsPage::figure_export_wanted, this, &BandsActions::export_figure);
    connect(&page_, &pages::BandsPage::table_export_wanted, this, &BandsActions::export_bands);
    connect(&page_, &pages::BandsPage::curve_export_wanted, this, &BandsActions::export_curve);
    connect(&page_, &pages::BandsPage::figure_table_export_wanted, this,
            [this](const QString& csv, const QString& what) {
                const QString title = QString::fromStdString(context_.document.design().title);
                actions_->export_table(csv.toStdString(),
                                       printing::file_stem(title) + QLatin1Char('-') + what);
            });
    connect(&page_, &pages::BandsPage::comparison_file_wanted, this, &BandsActions::compare_with_file);
}

std::optional<printing::SheetData> BandsActions::sheet() const {
    const auto survey = context_.survey.result();
    if (!survey) {
        return std::nullopt;
    }
    const bool full_wave = survey->request.model == loop::Model::full_wave;
    return printing::SheetData{survey, QFileInfo(context_.document.path()).fileName(), QDate::currentDate(),
                               context_.settings.unit_system(),
                               full_wave && context_.keying.settled() ? context_.keying.result() : nullptr};
}

void BandsActions::print() {
    if (const auto data = sheet()) {
        actions_->print(*data);
    }
}

void BandsActions::preview() {
    if (const auto data = sheet()) {
        actions_->preview(*data);
    }
}

void BandsActions::save_pdf() {
    if (const auto data = sheet()) {
        actions_->save_pdf(*data);
    }
}

void BandsActions::export_charts(int chosen) {
    actions_->export_charts(page_.shown_charts(), page_.origin(),
                            page_.group().zoomed() ? page_.group().range() : charts::Span{0, 0}, chosen);
}

void BandsActions::export_figure(const std::shared_ptr<const charts::Figure>& figure) {
    charts::Origin origin = page_.origin();
    origin.conditions.clear(); // the figure says its own
    origin.compared.clear();
    actions_->export_figure(figure, origin);
}

void BandsActions::export_bands() {
    if (const auto data = sheet()) {
        const QString title = QString::fromStdString(data->survey->request.design.title);
        actions_->export_table(report::to_csv(report::band_data(*data->survey)),
                               printing::file_stem(title) + QStringLiteral("-bands"));
    }
}

void BandsActions::export_curve() {
    if (const auto data = sheet()) {
        const QString title = QString::fromStdString(data->survey->request.design.title);
        actions_->export_table(report::to_csv(report::sweep_data(*data->survey)),
                               printing::file_stem(title) + QStringLiteral("-curve"));
    }
}

void BandsActions::export_match(const jobs::MatchReportResult& match) {
    const QString title = QString::fromStdString(match.request.design.title);
    constexpr double kilo = 1e3;
    const QString at = QString::number(std::lround(match.request.frequency.value() / kilo));
    actions_->export_table(report::to_csv(report::match_curve_data(match.report)),
                           QStringLiteral("%1-vswr-%2-khz").arg(printing::file_stem(title), at));
}

void BandsActions::compare_with_file() {
    const QString file =
        QFileDialog::getOpenFileName(window_, tr("Design to compare with"), context_.settings.last_folder(),
                                     tr("Loop designs (*.loop);;All files (*)"));
    if (file.isEmpty()) {
        return;
    }
    try {
        const design::Design design = document::load_design(std::filesystem::path(file.toStdString()));
        const QString title = QString::fromStdString(design.title);
        context_.comparison.set(design, title.isEmpty() ? QFileInfo(file).completeBaseName() : title);
    } catch (const base::InputError& error) {
        QMessageBox::warning(window_, tr("The design cannot be read"), QString::fromUtf8(error.what()));
    }
}

} // namespace loopwright::app
