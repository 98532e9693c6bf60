#include "pages/bands_models_view.hpp"

#include "charts/chart_grid.hpp"
#include "models/model_charts.hpp"
#include "report/tables.hpp"
#include "settings/measures.hpp"

#include <QHBoxLayout>
#include <QLabel>
#include <QProgressBar>
#include <QPushButton>
#include <QVBoxLayout>

namespace loopwright::pages {

namespace {
constexpr int models_progress_px = 160;
constexpr double all_percent = 100.0;
} // namespace

ModelsView::ModelsView(const Context& context, charts::ChartGroup& group, QWidget* parent)
    : QWidget(parent), context_(context), group_(group), grid_(new charts::ChartGrid(group, this)),
      words_(new QLabel(this)), state_(new QLabel(this)), progress_(new QProgressBar(this)),
      stop_(new QPushButton(tr("Stop"), this)) {
    auto* column = new QVBoxLayout(this);
    column->setContentsMargins(0, 0, 0, 0);
    column->setSpacing(unit_px / 2);
    build(column);
    connect_jobs();
    connect_zoom();
    show_state();
}

ModelsView::~ModelsView() = default;

void ModelsView::build(QVBoxLayout* column) {
    words_->setWordWrap(true);
    words_->setTextFormat(Qt::PlainText);
    words_->setTextInteractionFlags(Qt::TextSelectableByMouse);
    words_->setAccessibleName(tr("Why the models part"));
    state_->setWordWrap(true);
    state_->setTextFormat(Qt::PlainText);
    state_->setTextInteractionFlags(Qt::TextSelectableByMouse);
    progress_->setFixedWidth(models_progress_px);
    progress_->setTextVisible(false);
    progress_->setAccessibleName(tr("Progress of the other model"));
    stop_->setAccessibleName(tr("Stop computing the other model"));
    stop_->setToolTip(tr("Stop computing; the last curves stay, greyed"));
    stop_->setAccessibleDescription(stop_->toolTip());
    auto* row = new QHBoxLayout;
    row->addWidget(state_, 1);
    row->addWidget(progress_);
    row->addWidget(stop_);
    column->addWidget(words_);
    column->addLayout(row);
    column->addWidget(grid_, 1);
}

void ModelsView::connect_jobs() {
    patience_.setSingleShot(true);
    patience_.setInterval(patience_ms);
    connect(&patience_, &QTimer::timeout, this, &ModelsView::show_state);
    connect(&context_.survey, &jobs::Job::finished, this, &ModelsView::ask);
    connect(&context_.survey, &jobs::Job::failed, this, [this](const QString& message) {
        failure_ = message;
        show_state();
    });
    connect(&context_.survey, &jobs::Job::started, this, [this] {
        failure_.clear();
        patience_.start();
    });
    connect(&context_.focus, &session::Focus::changed, this, &ModelsView::show_words);
    connect(stop_, &QPushButton::clicked, &other_, &jobs::Job::cancel);
    connect(&other_, &jobs::Job::finished, this, &ModelsView::take_result);
    connect(&other_, &jobs::Job::cancelled, this, [this] {
        patience_.stop();
        show_state();
    });
    connect(&other_, &jobs::Job::progressed, progress_,
            [this](double share) { progress_->setValue(static_cast<int>(all_percent * share)); });
    connect(&other_, &jobs::Job::failed, this, [this](const QString& message) {
        failure_ = message;
        show_state();
    });
}

void ModelsView::connect_zoom() {
    for (jobs::ZoomedSurvey* zoomed : {&zoomed_, &zoomed_other_}) {
        connect(zoomed, &jobs::ZoomedSurvey::refined, this, &ModelsView::show_charts);
        connect(zoomed, &jobs::ZoomedSurvey::state_changed, this, &ModelsView::show_state);
        connect(&group_, &charts::ChartGroup::range_changed, zoomed, [this, zoomed] {
            zoomed->look_at(units::hertz(group_.range().low), units::hertz(group_.range().high));
        });
    }
}

void ModelsView::showEvent(QShowEvent* event) {
    QWidget::showEvent(event);
    zoomed_.set_seen(true);
    zoomed_other_.set_seen(true);
    ask();
}

/// What nobody sees is not computed on.
void ModelsView::hideEvent(QHideEvent* event) {
    QWidget::hideEvent(event);
    zoomed_.set_seen(false);
    zoomed_other_.set_seen(false);
    if (other_.busy()) {
        other_.cancel();
        asked_for_.reset();
    }
}

/// The same request by the other model, once for each survey of the window's.
void ModelsView::ask() {
    const auto survey = context_.survey.result();
    if (!isVisible() || !survey || survey == asked_for_) {
        return;
    }
    asked_for_ = survey;
    survey::Request request = survey->request;
    request.model =
        request.model == loop::Model::full_wave ? loop::Model::closed_form : loop::Model::full_wave;
    failure_.clear();
    progress_->setValue(0);
    other_.start(request);
    patience_.start();
}

void ModelsView::take_result() {
    shown_ = asked_for_;
    shown_other_ = other_.result();
    patience_.stop();
    zoomed_.set_base(shown_);
    zoomed_other_.set_base(shown_other_);
    show_charts();
    show_words();
    show_state();
}

void ModelsView::show_charts() {
    charts_ = std::make_shared<const std::vector<models::ChartContent>>(
        models::model_charts(*zoomed_.survey(), *zoomed_other_.survey()));
    grid_->set_charts(charts_);
    Q_EMIT charts_changed();
}

std::string ModelsView::table() const {
    return shown_ && shown_other_ ? report::to_csv(report::models_data(*shown_, *shown_other_))
                                  : std::string();
}

void ModelsView::show_words() {
    if (!shown_) {
        return;
    }
    const models::ModelPoints points = models::model_points(*shown_, *shown_other_, context_.focus.band(),
                                                            context_.focus.frequency().value());
    words_->setText(
        models::model_difference_words(points, shown_->request.design.site.ground).join(QLatin1Char('\n')));
}

void ModelsView::show_state() {
    const bool waiting = !charts_ || other_.stale() || context_.survey.stale();
    const bool stale = waiting && (!patience_.isActive() || !failure_.isEmpty());
    const bool working = stale && failure_.isEmpty() && (other_.busy() || context_.survey.busy());
    grid_->set_stale(stale || zoomed_.stale() || zoomed_other_.stale());
    words_->setEnabled(!stale);
    progress_->setVisible(working && other_.busy());
    stop_->setVisible(working && other_.busy());
    state_->setVisible(stale);
    state_->setText(state_words(working));
}

QString ModelsView::state_words(bool working) const {
    const QString old = charts_ ? tr(" What is greyed belongs to an older state.") : QString();
    return working               ? tr("Computing the other model…")
           : !failure_.isEmpty() ? tr("Not computed: %1").arg(failure_) + old
                                 : tr("Stopped.") + old;
}

} // namespace loopwright::pages
