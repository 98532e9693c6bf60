// The part of the Coupling section that finds the size of the coupling that matches.
#include "band/emission.hpp"
#include "charts/figure_widget.hpp"
#include "models/match_words.hpp"
#include "models/quantity_words.hpp"
#include "pages/coupling_panel.hpp"
#include "settings/measures.hpp"

#include <QGridLayout>
#include <QHBoxLayout>
#include <QLabel>
#include <QProgressBar>
#include <QPushButton>
#include <QVBoxLayout>

#include <cmath>

namespace loopwright::pages {

namespace {
constexpr double built_to_m = 1e-3; ///< nobody bends a coupling loop or a rod to better than a millimetre
} // namespace

CouplingPanel::CouplingPanel(const Context& context, QWidget* parent)
    : QWidget(parent), context_(context), one_(new QPushButton(tr("Size it for this band"), this)),
      all_(new QPushButton(tr("Size it for all bands"), this)), cancel_(new QPushButton(tr("Cancel"), this)),
      stop_(new QPushButton(tr("Stop"), this)), progress_(new QProgressBar(this)), sized_(new QLabel(this)),
      kind_(new QLabel(this)), working_(new QLabel(this)), conditions_(new QLabel(this)),
      numbers_(new QWidget(this)), grid_(new QGridLayout), notices_(new QLabel(numbers_)),
      smith_(new charts::FigureWidget(this)), curve_(new charts::FigureWidget(this)) {
    auto* column = new QVBoxLayout(this);
    column->setContentsMargins(unit_px * 2, 0, 0, 0);
    column->setSpacing(unit_px);
    build_sizing(column);
    build_progress(column);
    build_numbers(column);
    build_figures(column);
    connect_context();
    connect_match();
    show_sizing();
    show_kind();
    show_stale();
}

void CouplingPanel::build_sizing(QVBoxLayout* column) {
    auto* buttons = new QHBoxLayout;
    buttons->setSpacing(unit_px);
    buttons->addWidget(one_);
    buttons->addWidget(all_);
    buttons->addStretch();
    column->addLayout(buttons);
    one_->setObjectName(QStringLiteral("coupling.size_one"));
    all_->setObjectName(QStringLiteral("coupling.size_all"));
    connect(one_, &QPushButton::clicked, this, [this] { start_sizing(false); });
    connect(all_, &QPushButton::clicked, this, [this] { start_sizing(true); });
}

void CouplingPanel::build_progress(QVBoxLayout* column) {
    auto* running = new QHBoxLayout;
    running->addWidget(progress_, 1);
    running->addWidget(cancel_);
    column->addLayout(running);
    sized_->setWordWrap(true);
    sized_->setObjectName(QStringLiteral("coupling.sized"));
    sized_->setTextInteractionFlags(Qt::TextSelectableByMouse);
    column->addWidget(sized_);
    cancel_->setObjectName(QStringLiteral("coupling.cancel"));
    cancel_->setAccessibleName(tr("Cancel the sizing"));
    cancel_->setToolTip(tr("Stops; the coupling stays as it is."));
    cancel_->setAccessibleDescription(cancel_->toolTip());
    progress_->setTextVisible(false);
    progress_->setAccessibleName(tr("Progress of the sizing"));
    connect(cancel_, &QPushButton::clicked, &sizing_, &jobs::Job::cancel);
    connect(&sizing_, &jobs::Job::progressed, progress_,
            [this](double share) { progress_->setValue(static_cast<int>(100.0 * share)); });
    connect(&sizing_, &jobs::Job::finished, this, &CouplingPanel::take_sizing);
    connect(&sizing_, &jobs::Job::cancelled, this, &CouplingPanel::show_sizing);
    connect(&sizing_, &jobs::Job::failed, this, [this](const QString& message) {
        sized_->setText(message);
        show_sizing();
    });
}

/// What is sized, and what the model of this kind leaves out.
void CouplingPanel::show_kind() {
    const auto& coupling = context_.document.design().coupling;
    const auto kind = coupling ? coupling->kind : design::CouplingKind::loop;
    const QString measure = models::size_name(kind);
    const auto describe = [](QPushButton* button, const QString& tip) {
        button->setAccessibleName(button->text());
        button->setToolTip(tip);
        button->setAccessibleDescription(tip);
    };
    describe(
        one_,
        tr("%1: finds the one with the least VSWR at the frequency in focus and enters it.").arg(measure));
    describe(all_, tr("%1: finds the one whose worst VSWR over the planned bands in reach is least, and "
                      "enters it.")
                       .arg(measure));
    kind_->setText(models::coupling_model_words(kind));
    kind_->setVisible(!kind_->text().isEmpty());
}

void CouplingPanel::start_sizing(bool common) {
    jobs::SizingRequest request;
    request.design = context_.document.design();
    names_.clear();
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
    sized_->clear();
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
    const coupling::FeedSize& found = sizing_.result()->size;
    sized_->setText(found.size ? models::sizing_words(found, names_, context_.settings.unit_system())
                               : tr("No size matches: no capacitor tunes the loop here."));
    show_sizing();
    if (found.size) {
        apply(*found.size);
    }
}

/// One step for undo, whatever the size was before.
void CouplingPanel::apply(double size) {
    design::Design next = context_.document.design();
    if (!next.coupling) {
        return;
    }
    design::Coupling& coupling = *next.coupling;
    const units::UnitSystem system = context_.settings.unit_system();
    const QString before = models::size_text(coupling, system);
    const units::Length length = units::metres(built_to_m * std::round(size / built_to_m));
    switch (coupling.kind) {
    case design::CouplingKind::loop:
        coupling.diameter = length;
        break;
    case design::CouplingKind::tap:
        coupling.tap_length = length;
        break;
    case design::CouplingKind::transformer:
        coupling.turns = static_cast<int>(std::lround(size));
        break;
    }
    context_.document.end_merge();
    context_.document.edit(next,
                           {models::size_name(coupling.kind), before, models::size_text(coupling, system)});
}

} // namespace loopwright::pages
