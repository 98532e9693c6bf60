#include "pages/bands_choice.hpp"

#include "band/band.hpp"
#include "settings/measures.hpp"

#include <QCheckBox>
#include <QGridLayout>
#include <QLabel>

#include <algorithm>

namespace loopwright::pages {

namespace {

constexpr int columns = 4;

QString listed(const std::vector<std::string>& bands) {
    QStringList names;
    for (const std::string& band : bands) {
        names << QString::fromStdString(band);
    }
    return names.isEmpty() ? BandsChoice::tr("all") : names.join(QLatin1Char(' '));
}

} // namespace

BandsChoice::BandsChoice(const Context& context, QWidget* parent)
    : QWidget(parent), context_(context), grid_(new QGridLayout(this)), refusal_(new QLabel(this)) {
    grid_->setContentsMargins(0, 0, 0, 0);
    grid_->setHorizontalSpacing(unit_px / 2);
    grid_->setVerticalSpacing(0);
    refusal_->setWordWrap(true);
    refusal_->setText(tr("At least one band has to be planned."));
    refusal_->hide();
    connect(&context_.document, &session::Document::design_changed, this, &BandsChoice::refresh);
    refresh();
}

void BandsChoice::refresh() {
    const design::Station& station = context_.document.design().station;
    const auto& bands = band::bands_of(station.region);
    if (station.region != region_) {
        region_ = station.region;
        qDeleteAll(boxes_);
        boxes_.clear();
        for (const band::Band& band : bands) {
            auto* box = new QCheckBox(QString::fromStdString(band.name), this);
            box->setAccessibleName(tr("Band %1").arg(box->text()));
            box->setToolTip(
                tr("Plan to work on %1: it gets a row on the band board and counts for the highest voltage.")
                    .arg(box->text()));
            connect(box, &QCheckBox::clicked, this, &BandsChoice::take);
            const int index = static_cast<int>(boxes_.size());
            grid_->addWidget(box, index / columns, index % columns);
            boxes_.append(box);
        }
        grid_->addWidget(refusal_, static_cast<int>(boxes_.size()) / columns + 1, 0, 1, columns);
    }
    for (QCheckBox* box : boxes_) {
        const std::string name = box->text().toStdString();
        const bool planned = station.bands.empty() || std::find(station.bands.begin(), station.bands.end(),
                                                                name) != station.bands.end();
        box->setChecked(planned);
    }
    refusal_->hide();
}

void BandsChoice::take() {
    design::Design next = context_.document.design();
    const std::vector<std::string> before = next.station.bands;
    next.station.bands.clear();
    for (const QCheckBox* box : boxes_) {
        if (box->isChecked()) {
            next.station.bands.push_back(box->text().toStdString());
        }
    }
    if (next.station.bands.empty()) {
        refresh();
        refusal_->show();
        return;
    }
    if (static_cast<qsizetype>(next.station.bands.size()) == boxes_.size()) {
        next.station.bands.clear(); // all of them: also those that a later edition adds
    }
    context_.document.edit(next, {tr("Bands"), listed(before), listed(next.station.bands)},
                           QStringLiteral("bands"));
    refresh();
}

} // namespace loopwright::pages
