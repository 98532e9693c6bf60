// The part of the Coupling section that finds the size of the coupling loop.
#include "band/emission.hpp"
#include "charts/figure_widget.hpp"
#include "models/match_words.hpp"
#include "models/quantity_words.hpp"
#include "pages/coupling_panel.hpp"

#include <QGridLayout>
#include <QHBoxLayout>
#include <QLabel>
#include <QProgressBar>
#include <QPushButton>
#include <QVBoxLayout>

#include <cmath>

namespace loopwright::pages {

namespace {
constexpr int unit_px = 8;
constexpr double built_to_m = 1e-3; ///< nobody bends a coupling loop to better than a millimetre
} // namespace

CouplingPanel::CouplingPanel(const Context& context, QWidget* parent)
    : QWidget(parent), context_(context), one_(new QPushButton(tr("Size it for this band"), this)),
      all_(new QPushButton(tr("Size it for all bands"), this)), cancel_(new QPushButton(tr("Cancel"), this)),
      progress_(new QProgressBar(this)), sized_(new QLabel(this)), conditions_(new QLabel(this)),
      numbers_(new QWidget(this)), grid_(new QGridLayout), notices_(new QLabel(numbers_)),
      smith_(new charts::FigureWidget(this)), curve_(new charts::FigureWidget(this)) {
    auto* column = new QVBoxLayout(this);
    column->setContentsMargins(unit_px * 2, 0, 0, 0);
    column->setSpacing(unit_px);
    build_sizing(column);
    build_numbers(column);
    connect_context();
    show_sizing();
}

void CouplingPanel::build_sizing(QVBoxLayout* column) {
    auto* buttons = new QHBoxLayout;
    buttons->setSpacing(unit_px);
    buttons->addWidget(one_);
    buttons->addWidget(all_);
    buttons->addStretch();
    column->addLayout(buttons);
    auto* running = new QHBoxLayout;
    running->addWidget(progress_, 1);
    running->addWidget(cancel_);
    column->addLayout(running);
    sized_->setWordWrap(true);
    sized_->setObjectName(QStringLiteral("coupling.sized"));
    sized_->setTextInteractionFlags(Qt::TextSelectableByMouse);
    column->addWidget(sized_);
    const auto describe = [](QPushButton* button, const QString& name, const QString& tip) {
        button->setObjectName(name);
        button->setAccessibleName(button->text());
        button->setToolTip(tip);
        button->setAccessibleDescription(tip);
    };
    describe(one_, QStringLiteral("coupling.size_one"),
             tr("Finds the diameter with the least VSWR at the frequency in focus and enters it."));
    describe(
        all_, QStringLiteral("coupling.size_all"),
        tr("Finds the one diameter whose worst VSWR over the planned bands in reach is least, and enters "
           "it."));
    describe(cancel_, QStringLiteral("coupling.cancel"), tr("Stops; the coupling loop stays as it is."));
    progress_->setTextVisible(false);
    progress_->setAccessibleName(tr("Progress of the sizing"));
    connect(one_, &QPushButton::clicked, this, [this] { start_sizing(false); });
    connect(all_, &QPushButton::clicked, this, [this] { start_sizing(true); });
    connect(cancel_, &QPushButton::clicked, &sizing_, &jobs::Job::cancel);
    connect(&sizing_, &jobs::Job::progressed, progress_,
            [this](double share) { progress_->setValue(static_cast<int>(100.0 * share)); });
    connect(&sizing_, &jobs::Job::finished, this, &CouplingPanel::take_sizing);
    connect(&sizing_, &jobs::Job::cancelled, this, &CouplingPanel::show_sizing);
    connect(&sizing_, &jobs::Job::failed, this, [this](const QString& message) {
        show_sizing();
        sized_->setText(message);
        sized_->show();
    });
}

void CouplingPanel::start_sizing(bool common) {
    jobs::SizingRequest request;
    request.design = context_.document.design();
    names_.clear();
    common_ = common;
    if (common) {
        const auto emission = band::find_emission(request.design.station.emission);
        for (const band::Band& band : survey::planned_bands(request.design)) {
            request.frequencies.push_back(emission ? band.usual + emission->centre_above_dial : band.usual);
            names_ << QString::fromStdString(band.name);
        }
    } else {
        request.frequencies = {context_.focus.frequency()};
        names_ << (context_.focus.band().isEmpty()
                       ? models::exact_frequency(context_.focus.frequency().value())
                       : context_.focus.band());
    }
    sizing_.start(request);
    progress_->setValue(0);
    progress_->show();
    cancel_->show();
    one_->setEnabled(false);
    all_->setEnabled(false);
    sized_->hide();
}

void CouplingPanel::show_sizing() {
    progress_->hide();
    cancel_->hide();
    one_->setEnabled(true);
    all_->setEnabled(true);
    sized_->setVisible(!sized_->text().isEmpty());
}

void CouplingPanel::take_sizing() {
    const coupling::CouplingSizes& sizes = sizing_.result()->sizes;
    const units::Length* size = models::chosen_size(sizes, common_);
    const QString words = models::sizing_words(sizes, names_, common_, context_.settings.unit_system());
    sized_->setText(words.isEmpty() ? tr("No size matches: no capacitor tunes the loop here.") : words);
    show_sizing();
    if (size != nullptr) {
        apply(*size);
    }
}

/// One step for undo, whatever the size was before.
void CouplingPanel::apply(units::Length diameter) {
    design::Design next = context_.document.design();
    if (!next.coupling) {
        return;
    }
    const auto text = [this](const units::Typed<units::Length>& typed) {
        return models::short_text(typed, context_.settings.unit_system());
    };
    const QString before = text(next.coupling->diameter);
    next.coupling->diameter = units::metres(built_to_m * std::round(diameter.value() / built_to_m));
    context_.document.end_merge();
    context_.document.edit(next, {tr("Coupling loop diameter"), before, text(next.coupling->diameter)});
}

} // namespace loopwright::pages
