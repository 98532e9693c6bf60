#include "pages/retune_view.hpp"

#include "charts/dial_figure.hpp"
#include "charts/figure_widget.hpp"
#include "charts/resonance_figure.hpp"
#include "inputs/entry.hpp"
#include "models/calibration_rows.hpp"
#include "models/chart_content.hpp"
#include "models/match_plot.hpp"
#include "models/quantity_words.hpp"
#include "settings/measures.hpp"

#include <QHBoxLayout>
#include <QLabel>
#include <QPushButton>
#include <QVBoxLayout>

#include <algorithm>
#include <cmath>

namespace loopwright::pages {

namespace {

constexpr int entry_px = 130;

models::DialMark mark_of(const tuning::DialFigure& figure) {
    return {figure.reading, figure.range.low, figure.range.high};
}

} // namespace

RetuneView::RetuneView(const Context& context, QWidget* parent)
    : QWidget(parent), context_(context), set_words_(new QLabel(this)), now_words_(new QLabel(this)),
      present_entry_(new inputs::Entry({units::Dimension::number}, "retune.present", this)),
      is_set_(new QPushButton(tr("Dial is &there now"), this)), dial_(new charts::FigureWidget(this)),
      resonance_(new charts::FigureWidget(this)) {
    auto* column = new QVBoxLayout(this);
    column->setContentsMargins(0, 0, 0, 0);
    column->setSpacing(unit_px / 2);
    auto* row = new QHBoxLayout;
    row->setSpacing(unit_px);
    auto* label = new QLabel(tr("Dial now at"), this);
    inputs::QuantityField& field = present_entry_->field();
    field.setObjectName(QStringLiteral("retune.present"));
    field.set_optional(true, tr("not said"));
    present_entry_->describe(tr("Dial now at"),
                             tr("Where the dial stands, so that the page can say how far off the "
                                "loop is. It is kept for this file by the program on this computer, "
                                "not in the file."));
    present_entry_->setMaximumWidth(entry_px);
    label->setBuddy(&field);
    is_set_->setObjectName(QStringLiteral("retune.is_set"));
    is_set_->setToolTip(tr("Say that the dial has been set to what this page asks for"));
    row->addWidget(set_words_, 1);
    row->addWidget(label);
    row->addWidget(present_entry_);
    row->addWidget(is_set_);
    column->addLayout(row);
    for (QLabel* words : {set_words_, now_words_}) {
        words->setWordWrap(true);
        words->setTextInteractionFlags(Qt::TextSelectableByMouse);
    }
    set_words_->setObjectName(QStringLiteral("retune.set"));
    set_words_->setAccessibleName(tr("What to set the dial to"));
    now_words_->setObjectName(QStringLiteral("retune.now"));
    now_words_->setAccessibleName(tr("How far off the present setting is"));
    column->addWidget(now_words_);
    auto* figures = new QHBoxLayout;
    figures->addWidget(dial_, 3);
    figures->addWidget(resonance_, 2);
    column->addLayout(figures, 1);
    for (charts::FigureWidget* figure : {dial_, resonance_}) {
        connect(figure, &charts::FigureWidget::export_wanted, this,
                [this, figure] { Q_EMIT figure_export_wanted(figure->figure()); });
    }
    dial_->setObjectName(QStringLiteral("retune.dial"));
    resonance_->setObjectName(QStringLiteral("retune.resonance"));
    connect(&field, &inputs::QuantityField::edited, this,
            [this](double reading, const QString& /*text*/) { set_present(reading); });
    connect(&field, &inputs::QuantityField::emptied, this, [this] { set_present(std::nullopt); });
    connect(is_set_, &QPushButton::clicked, this, [this] {
        if (const auto mark = dial_plot().mark()) {
            set_present(mark->reading);
        }
    });
    connect(&context_.document, &session::Document::replaced, this, &RetuneView::recall_present);
    connect(&context_.document, &session::Document::state_changed, this, &RetuneView::keep_present);
    connect(&match_, &jobs::Job::finished, this, &RetuneView::show_all);
    connect(&match_, &jobs::Job::failed, this, [this](const QString& message) {
        match_failure_ = message;
        show_all();
    });
    recall_present();
}

void RetuneView::recall_present() {
    path_ = context_.document.path();
    set_present(path_.isEmpty() ? std::nullopt : context_.settings.dial_left_at(path_));
}

/// A design saved under another name takes the setting of its dial along.
void RetuneView::keep_present() {
    if (path_ != context_.document.path()) {
        path_ = context_.document.path();
        context_.settings.set_dial_left_at(path_, present_);
    }
}

void RetuneView::set_present(std::optional<double> reading) {
    present_ = reading;
    context_.settings.set_dial_left_at(path_, reading);
    if (reading) {
        present_entry_->field().set_value(*reading, models::plain_number(*reading, 5));
    } else {
        present_entry_->field().set_nothing();
    }
    show_all();
}

void RetuneView::set_result(const std::shared_ptr<const jobs::DialResult>& result) {
    result_ = result;
    show_all();
}

void RetuneView::set_stale(bool stale) {
    dial_->set_stale(stale);
    resonance_->set_stale(stale);
    set_words_->setEnabled(!stale);
    now_words_->setEnabled(!stale);
}

models::DialPlot RetuneView::dial_plot() const {
    models::DialPlot plot;
    plot.present = present_;
    if (!result_) {
        plot.reason = tr("Not computed yet.");
        return plot;
    }
    plot.frequency_Hz = result_->request.radio.value();
    plot.reason = QString::fromStdString(result_->trouble);
    plot.vswr_limit = result_->request.vswr_limit;
    const auto& dial = result_->request.design.capacitor.dial;
    if (!dial) {
        return plot;
    }
    plot.scale = dial->scale;
    plot.step = dial->hand_step / dial->reduction;
    const bool table = dial->law == design::DialLaw::table && dial->table.size() > 1;
    plot.first_stop = table ? dial->table.front().reading : dial->at_minimum;
    plot.last_stop = table ? dial->table.back().reading : dial->at_maximum;
    const auto& figure = result_->calibrated ? result_->calibrated : result_->predicted;
    if (result_->predicted) {
        plot.predicted = mark_of(*result_->predicted);
    }
    if (result_->calibrated) {
        plot.calibrated = mark_of(*result_->calibrated);
    }
    if (figure && result_->point.resonance) {
        const double half =
            std::abs(figure->reading_per_Hz) * result_->point.resonance->bandwidth_vswr.value() / 2.0;
        plot.span_low = figure->reading - half;
        plot.span_high = figure->reading + half;
    }
    return plot;
}

models::ResonancePlot RetuneView::resonance_plot() const {
    models::ResonancePlot plot;
    if (!result_ || !result_->dial || !result_->predicted) {
        plot.reason = result_ ? QString::fromStdString(result_->trouble) : tr("Not computed yet.");
        return plot;
    }
    plot.wanted_Hz = result_->tuned.value();
    plot.window_Hz = result_->window.value();
    plot.vswr_limit = result_->request.vswr_limit;
    if (!result_->point.resonance) {
        plot.reason = tr("Not established: the model stands behind no bandwidth here.");
        return plot;
    }
    plot.span_Hz = result_->point.resonance->bandwidth_vswr.value();
    if (!present_) {
        plot.reason = tr("Say where the dial stands now: the curve shows what the loop does there.");
        return plot;
    }
    const auto resonance = result_->dial->frequency_at(*present_, result_->around);
    if (!resonance) {
        plot.reason = tr("At this reading the loop is in resonance at none of the frequencies looked at.");
        return plot;
    }
    plot.resonance_Hz = resonance->value();
    return plot;
}

/// The coupling's own solution takes some tens of milliseconds, so it follows the rest. Calibration and dial
/// have no part in it.
void RetuneView::ask_match(const models::ResonancePlot& plot) {
    if (!plot.established() || !result_->request.design.coupling) {
        asked_.reset();
        return;
    }
    jobs::PresentMatchRequest request{result_->request.design, units::hertz(plot.resonance_Hz),
                                      units::hertz(plot.wanted_Hz)};
    request.design.calibration.reset();
    request.design.capacitor.dial.reset();
    if (asked_ != request) {
        asked_ = request;
        match_failure_.clear();
        match_.start(request);
    }
}

void RetuneView::add_match(models::ResonancePlot& plot) const {
    if (!plot.established()) {
        return;
    }
    const auto match = match_.result();
    if (!asked_) {
        plot.basis = tr("Assumes a matched loop: the design has no coupling.");
    } else if (!match_failure_.isEmpty()) {
        plot.basis = tr("Assumes a matched loop: the coupling is not computed (%1)").arg(match_failure_);
    } else if (!match || match->request != *asked_) {
        plot.basis = tr("Assumes a matched loop until the coupling is computed.");
    } else {
        for (const coupling::MatchPoint& point : match->curve) {
            plot.curve.append({point.frequency.value() - plot.resonance_Hz, point.vswr});
        }
        const QPointF wanted(plot.wanted_Hz - plot.resonance_Hz, match->vswr_wanted);
        const auto place =
            std::lower_bound(plot.curve.begin(), plot.curve.end(), wanted.x(),
                             [](const QPointF& point, double offset) { return point.x() < offset; });
        plot.curve.insert(place, wanted);
        plot.basis = tr("With the design's coupling, on %1 at its feed point.")
                         .arg(models::given_text(match->line.value(), units::Dimension::resistance,
                                                 units::UnitSystem::metric));
    }
}

void RetuneView::show_all() {
    const models::DialPlot plot = dial_plot();
    models::ResonancePlot resonance = resonance_plot();
    ask_match(resonance);
    add_match(resonance);
    dial_->set_figure(std::make_shared<const charts::DialFigure>(plot));
    resonance_->set_figure(std::make_shared<const charts::ResonanceFigure>(resonance));
    is_set_->setEnabled(plot.mark().has_value());
    QString words;
    if (plot.mark()) {
        const auto& mark = *plot.mark();
        const double off = std::max(std::abs(mark.high - mark.reading), std::abs(mark.low - mark.reading));
        const QString which = plot.calibrated ? tr("calibrated") : tr("predicted, not calibrated");
        words = tr("<b>%1: set %2 ± %3</b> (%4), for resonance at %5")
                    .arg(models::exact_frequency(plot.frequency_Hz),
                         models::reading_text(mark.reading, plot.scale, plot.step),
                         models::reading_text(off, plot.scale, std::min(plot.step, off)), which,
                         models::exact_frequency(std::round(result_->tuned.value())));
        if (!plot.calibrated) {
            words += QStringLiteral(". ") + models::wide_interval_words();
        }
        if (!result_->reachable) {
            words += QStringLiteral(". <b>▲ ") + tr("Out of the capacitor's reach") + QStringLiteral("</b>");
        }
    } else {
        words = plot.reason;
    }
    set_words_->setText(words);
    now_words_->setText(present_ ? models::resonance_words(resonance) : QString());
    now_words_->setVisible(present_.has_value());
}

} // namespace loopwright::pages
