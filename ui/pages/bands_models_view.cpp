#include "pages/bands_models_view.hpp"

#include "charts/chart_grid.hpp"
#include "models/model_charts.hpp"

#include <QLabel>
#include <QProgressBar>
#include <QVBoxLayout>

namespace loopwright::pages {

namespace {
constexpr int unit_px = 8, progress_px = 160;
constexpr double hundred = 100.0;
} // namespace

ModelsView::ModelsView(const Context& context, charts::ChartGroup& group, QWidget* parent)
    : QWidget(parent), context_(context), grid_(new charts::ChartGrid(group, this)), words_(new QLabel(this)),
      progress_(new QProgressBar(this)) {
    auto* column = new QVBoxLayout(this);
    column->setContentsMargins(0, 0, 0, 0);
    column->setSpacing(unit_px / 2);
    words_->setWordWrap(true);
    words_->setTextFormat(Qt::PlainText);
    words_->setTextInteractionFlags(Qt::TextSelectableByMouse);
    words_->setAccessibleName(tr("Why the models part"));
    progress_->setFixedWidth(progress_px);
    progress_->setTextVisible(false);
    progress_->setAccessibleName(tr("Progress of the other model"));
    column->addWidget(words_);
    column->addWidget(progress_);
    column->addWidget(grid_, 1);
    connect(&context_.survey, &jobs::SurveyJob::finished, this, &ModelsView::ask);
    connect(&context_.survey, &jobs::SurveyJob::started, this, &ModelsView::show_state);
    connect(&context_.focus, &session::Focus::changed, this, &ModelsView::show_words);
    connect(&other_, &jobs::SurveyJob::finished, this, &ModelsView::show_charts);
    connect(&other_, &jobs::SurveyJob::progressed, progress_,
            [this](double share) { progress_->setValue(static_cast<int>(hundred * share)); });
    connect(&other_, &jobs::SurveyJob::failed, words_,
            [this](const QString& message) { words_->setText(tr("Not established: %1").arg(message)); });
    show_state();
}

ModelsView::~ModelsView() = default;

void ModelsView::showEvent(QShowEvent* event) {
    QWidget::showEvent(event);
    ask();
}

void ModelsView::hideEvent(QHideEvent* event) {
    QWidget::hideEvent(event);
    if (other_.running()) {
        other_.clear();
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
    progress_->setValue(0);
    other_.start(request);
    show_state();
}

void ModelsView::show_charts() {
    const auto other = other_.result();
    if (!other || !asked_for_) {
        return;
    }
    charts_ =
        std::make_shared<const std::vector<models::ChartContent>>(models::model_charts(*asked_for_, *other));
    grid_->set_charts(charts_);
    show_words();
    show_state();
    Q_EMIT charts_changed();
}

void ModelsView::show_words() {
    const auto other = other_.result();
    if (!other || !asked_for_ || other_.stale()) {
        return;
    }
    const models::ModelPoints points =
        models::model_points(*asked_for_, *other, context_.focus.band(), context_.focus.frequency().value());
    words_->setText(models::model_difference_words(points, asked_for_->request.design.site.ground)
                        .join(QLatin1Char('\n')));
}

void ModelsView::show_state() {
    const bool stale = other_.stale() || context_.survey.stale();
    grid_->set_stale(stale);
    progress_->setVisible(other_.running());
    if (!charts_) {
        words_->setText(tr("Computing the other model…"));
    }
}

} // namespace loopwright::pages
