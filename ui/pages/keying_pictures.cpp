#include "pages/keying_pictures.hpp"

#include "charts/distance_power_figure.hpp"
#include "charts/figure_widget.hpp"
#include "charts/surroundings_figure.hpp"
#include "design/limit_ids.hpp"
#include "exposure/limits.hpp"
#include "exposure/station.hpp"
#include "inputs/choice_field.hpp"
#include "models/keying_words.hpp"
#include "settings/measures.hpp"

#include <QHBoxLayout>
#include <QLabel>
#include <QVBoxLayout>

#include <algorithm>

namespace loopwright::pages {

namespace {

constexpr QSize least_figure{176, 150}; ///< three beside each other in the smallest window

jobs::OutlinesJob& outlines_job(jobs::Job& job) {
    return static_cast<jobs::OutlinesJob&>(job);
}

const survey::KeyingBand* band_in_focus(const Context& context) {
    const auto keying = context.keying.result();
    if (!keying) {
        return nullptr;
    }
    const auto found = std::find_if(keying->bands.begin(), keying->bands.end(), [&](const auto& band) {
        return QString::fromStdString(band.band) == context.focus.band();
    });
    return found == keying->bands.end() ? nullptr : &*found;
}

} // namespace

KeyingPictures::KeyingPictures(const Context& context, QWidget* parent)
    : FocusedView(context, new jobs::OutlinesJob, parent), bands_(new inputs::ChoiceField(this)),
      limit_(new inputs::ChoiceField(this)) {
    build_fields();
    auto* row = new QHBoxLayout;
    row->setSpacing(unit_px / 2);
    for (const int stretch : {3, 4, 3}) {
        charts::FigureWidget* figure = add_figure();
        figure->setMinimumSize(least_figure);
        row->addWidget(figure, stretch);
    }
    column().addLayout(row, 1);
    show_reason(tr("not computed yet"));
    connect(&this->context().document, &session::Document::design_changed, this,
            &KeyingPictures::fill_limits);
    connect(&this->context().keying, &jobs::KeyingJob::updated, this, &KeyingPictures::follow_keying);
    connect(&this->context().settings, &settings::Settings::unit_system_changed, this, &KeyingPictures::want);
    fill_limits();
}

KeyingPictures::~KeyingPictures() = default;

void KeyingPictures::build_fields() {
    auto* row = new QHBoxLayout;
    row->setSpacing(unit_px);
    const auto add = [&](inputs::ChoiceField* field, const QString& text, const QString& tip,
                         const char* name) {
        auto* label = new QLabel(text, this);
        label->setBuddy(field);
        field->setObjectName(QLatin1String(name));
        field->setAccessibleName(QString(text).remove(QLatin1Char('&')).remove(QLatin1Char(':')));
        field->setToolTip(tip);
        field->setAccessibleDescription(tip);
        row->addWidget(label);
        row->addWidget(field);
    };
    add(bands_, tr("D&rawn for:"),
        tr("The band of the row picked, or all planned bands together: inside an outline the limit is "
           "exceeded on one of them at least"),
        "pictures.bands");
    bands_->addItems({tr("the band picked"), tr("all planned bands")});
    add(limit_, tr("Limi&t drawn:"),
        tr("Whose outlines the pictures show, both tiers: the unfavourable end, and thin as entered. For all "
           "planned bands the first choice is the strictest of all limits at each place"),
        "pictures.limit");
    limit_->setMinimumContentsLength(20);
    auto* words = new QLabel(models::not_covered(), this);
    words->setWordWrap(true);
    row->addWidget(words, 1);
    column().insertLayout(0, row);
    connect(bands_, &inputs::ChoiceField::chosen, this, [this](int index) {
        planned_ = index == 1;
        drawn_keying_.reset();
        want();
    });
    connect(limit_, &inputs::ChoiceField::chosen, this, [this](int index) {
        chosen_ = ids_.at(static_cast<std::size_t>(index));
        drawn_keying_.reset();
        want();
    });
}

void KeyingPictures::fill_limits() {
    const design::Station& station = context().document.design().station;
    QStringList names = {tr("the one that asks for most")};
    std::vector<std::string> ids = {std::string()};
    for (const std::string& id : design::chosen_limits(station)) {
        if (const exposure::Limit* limit = exposure::find_limit(id)) {
            ids.push_back(id);
            names << QString::fromStdString(limit->standard);
        }
    }
    for (std::size_t i = 0; i < station.own_limits.size(); ++i) {
        const exposure::Limit own = exposure::own_limit(station.own_limits[i], i);
        ids.push_back(own.id);
        names << QString::fromStdString(own.standard);
    }
    if (ids != ids_ || names != names_) {
        ids_ = ids;
        names_ = names;
        limit_->clear();
        limit_->addItems(names);
    }
    const auto found = std::find(ids_.begin(), ids_.end(), chosen_);
    if (found == ids_.end()) {
        chosen_.clear();
    }
    limit_->show_choice(found == ids_.end() ? 0 : static_cast<int>(found - ids_.begin()));
}

std::string KeyingPictures::wanted_limit() const {
    if (!chosen_.empty()) {
        return chosen_;
    }
    const survey::KeyingBand* band = band_in_focus(context());
    const survey::KeyingDistance* most = band == nullptr ? nullptr : survey::widest(*band);
    if (most != nullptr && std::find(ids_.begin(), ids_.end(), most->limit) != ids_.end()) {
        return most->limit;
    }
    return ids_.size() > 1 ? ids_[1] : std::string();
}

std::vector<survey::UpperEnd> KeyingPictures::upper_ends() const {
    const survey::KeyingBand* band = band_in_focus(context());
    return band != nullptr && context().keying.settled()
               ? survey::upper_ends(*context().keying.result(), *band, wanted_limit())
               : std::vector<survey::UpperEnd>();
}

/// The limit that asks for most may be another one than thought, and the unfavourable ends come later.
void KeyingPictures::follow_keying() {
    if (planned_) {
        if (context().keying.result() != drawn_keying_) {
            want();
        }
        return;
    }
    const bool other_limit = chosen_.empty() && wanted_limit() != drawn_;
    const std::vector<survey::UpperEnd> ends = upper_ends();
    if (other_limit || (!ends.empty() && ends != drawn_ends_)) {
        want();
    }
}

/// Asked for only once all unfavourable ends are there: they change every band's outline.
void KeyingPictures::start_planned() {
    if (!context().keying.settled()) {
        drawn_keying_.reset();
        show_reason(tr("the figures of all bands are not there yet"));
        settle();
        return;
    }
    const auto& keying = context().keying.result();
    if (keying == drawn_keying_ && !job().stale()) { // another band in focus, or the other units
        show_result();
        settle();
        return;
    }
    drawn_keying_ = keying;
    jobs::OutlinesRequest request;
    request.limit = chosen_;
    request.planned = keying;
    outlines_job(job()).start(request);
}

void KeyingPictures::start() {
    if (planned_) {
        start_planned();
        return;
    }
    drawn_keying_.reset();
    const survey::KeyingBand* band = band_in_focus(context());
    if (band != nullptr && !context().keying.stale() &&
        band->verdict == survey::KeyingVerdict::out_of_reach) {
        show_reason(tr("the capacitor does not reach this band: there is nothing to key"));
        settle();
        return;
    }
    drawn_ = wanted_limit();
    drawn_ends_ = upper_ends();
    outlines_job(job()).start(
        {context().document.design(), context().focus.frequency(), drawn_, drawn_ends_});
}

void KeyingPictures::show_result() {
    const auto result = outlines_job(job()).result();
    if (!result->outlines) {
        show_reason(
            tr("the full-wave model does not stand behind a number here; treat the loop as hazardous"));
        return;
    }
    show_plot(models::surroundings_plot(*result->outlines, context().settings.unit_system()));
}

void KeyingPictures::show_reason(const QString& sentence) {
    show_plot(models::no_surroundings_plot(sentence));
}

void KeyingPictures::show_plot(const models::SurroundingsPlot& plot) {
    plot_ = plot;
    figures()[0]->set_figure(std::make_shared<charts::SurroundingsFigure>(plot, charts::SeenFrom::above));
    figures()[1]->set_figure(std::make_shared<charts::SurroundingsFigure>(plot, charts::SeenFrom::side));
    figures()[2]->set_figure(std::make_shared<charts::DistancePowerFigure>(plot));
}

} // namespace loopwright::pages
