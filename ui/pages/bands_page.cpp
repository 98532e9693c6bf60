#include "pages/bands_page.hpp"

#include "base/version.hpp"
#include "charts/chart_grid.hpp"
#include "inputs/elided_label.hpp"
#include "models/band_board_model.hpp"
#include "models/model_words.hpp"
#include "models/survey_charts.hpp"
#include "models/verdict_words.hpp"
#include "pages/arrangement.hpp"
#include "pages/bands_board.hpp"
#include "pages/readout_view.hpp"
#include "settings/measures.hpp"

#include <QDate>
#include <QHBoxLayout>
#include <QHeaderView>
#include <QLabel>
#include <QLocale>
#include <QProgressBar>
#include <QSplitter>
#include <QVBoxLayout>

#include <algorithm>

namespace loopwright::pages {

namespace {
/// What takes less is not worth a sign that it is under way.
const QString bands_splitter_name = QStringLiteral("bands_splitter");

} // namespace

BandsPage::BandsPage(const Context& context, QWidget* parent)
    : QWidget(parent), context_(context), model_(new models::BandBoardModel(this)),
      readout_(new models::ReadoutModel(this)), conditions_(new inputs::ElidedLabel(this)),
      state_(new QLabel(this)), progress_(new QProgressBar(this)),
      splitter_(new QSplitter(Qt::Vertical, this)), board_(new BandsBoard(context, *model_, this)),
      words_(new QLabel(this)), at_(new QLabel(this)), readout_view_(new ReadoutView(*readout_, this)),
      grid_(new charts::ChartGrid(group_, this)) {
    QVBoxLayout* column = page_column(*this);
    build_head(*column);
    stack(*splitter_, board_, build_lower());
    divided_by_hand_ = splitter_->restoreState(context_.settings.window_state(bands_splitter_name));
    connect(splitter_, &QSplitter::splitterMoved, this, [this] { divided_by_hand_ = true; });
    column->addWidget(splitter_, 1);
    stale_timer_.setSingleShot(true);
    stale_timer_.setInterval(patience_ms);
    connect(board_->verticalHeader(), &QHeaderView::sectionResized, this, &BandsPage::share_height,
            Qt::QueuedConnection);
    connect_context();
    connect_zoom();
    follow_focus();
}

QString BandsPage::title_of(const design::Design& design) {
    return design.title.empty() ? tr("Loop without a title") : QString::fromStdString(design.title);
}

BandsPage::~BandsPage() {
    if (divided_by_hand_) {
        context_.settings.set_window_state(bands_splitter_name, splitter_->saveState());
    }
}

QWidget* BandsPage::build_lower() {
    auto* lower = new QWidget(splitter_);
    auto* column = new QVBoxLayout(lower);
    column->setContentsMargins(0, unit_px / 2, 0, 0);
    column->setSpacing(unit_px / 2);
    words_->setWordWrap(true);
    words_->setTextInteractionFlags(Qt::TextSelectableByMouse);
    words_->setAccessibleName(tr("The band in focus, in words"));
    QFont bold = at_->font();
    bold.setBold(true);
    at_->setFont(bold);
    auto* row = new QHBoxLayout;
    row->setSpacing(2 * unit_px);
    row->addWidget(at_, 0, Qt::AlignTop);
    row->addWidget(words_, 1);
    column->addLayout(row);
    build_groups(*column);
    return lower;
}

void BandsPage::connect_context() {
    connect(&context_.survey, &jobs::Job::finished, this, &BandsPage::refresh_when_seen);
    connect(&context_.compared_survey, &jobs::Job::finished, this, &BandsPage::refresh_when_seen);
    connect(&context_.compared_survey, &jobs::Job::cancelled, this, &BandsPage::refresh_when_seen);
    connect(&context_.survey, &jobs::Job::started, &stale_timer_, qOverload<>(&QTimer::start));
    if (context_.survey.busy()) { // begun before this page was there
        stale_timer_.start();
    }
    connect(&context_.survey, &jobs::Job::progressed, progress_,
            [this](double share) { progress_->setValue(static_cast<int>(100.0 * share)); });
    connect(&stale_timer_, &QTimer::timeout, this, &BandsPage::show_state);
    connect(&context_.survey, &jobs::Job::failed, this, [this](const QString& message) {
        stale_timer_.stop();
        show_state();
        state_->setText(tr("Not computed: %1 The figures below are those of the last design that could be.")
                            .arg(message));
        state_->show();
    });
    connect(&context_.focus, &session::Focus::changed, this, &BandsPage::follow_focus);
    const auto show_distances = [this] {
        const jobs::KeyingJob& keying = context_.keying;
        model_->set_keying(keying.settled() ? keying.result() : nullptr, keying.running());
        show_words(); // the site's volts change a verdict
    };
    connect(&context_.keying, &jobs::KeyingJob::started, this, show_distances);
    connect(&context_.keying, &jobs::KeyingJob::updated, this, show_distances);
    connect(&context_.keying, &jobs::KeyingJob::cancelled, this, show_distances);
    connect(&context_.keying, &jobs::KeyingJob::failed, this, show_distances);
    connect(&context_.settings, &settings::Settings::unit_system_changed, this,
            [this] { model_->set_unit_system(context_.settings.unit_system()); });
    model_->set_unit_system(context_.settings.unit_system());
    show_distances();
    connect(&group_, &charts::ChartGroup::picked, this,
            [this](double hertz) { context_.focus.set_frequency(units::hertz(hertz)); });
    connect(&group_, &charts::ChartGroup::crosshair_moved, this, &BandsPage::show_readout);
}

/// Deep in a zoom more points are computed; until they are there the lines between the few are greyed.
void BandsPage::connect_zoom() {
    for (jobs::ZoomedSurvey* zoomed : {&zoomed_, &zoomed_compared_}) {
        connect(zoomed, &jobs::ZoomedSurvey::refined, this, &BandsPage::refresh_charts);
        connect(zoomed, &jobs::ZoomedSurvey::state_changed, this, &BandsPage::show_state);
        connect(&group_, &charts::ChartGroup::range_changed, zoomed, [this, zoomed] {
            zoomed->look_at(units::hertz(group_.range().low), units::hertz(group_.range().high));
        });
    }
}

void BandsPage::refresh_when_seen() {
    dirty_ = true;
    if (isVisible()) {
        refresh();
    }
}

void BandsPage::showEvent(QShowEvent* event) {
    QWidget::showEvent(event);
    zoomed_.set_seen(true);
    zoomed_compared_.set_seen(true);
    if (dirty_) {
        refresh();
    }
}

void BandsPage::hideEvent(QHideEvent* event) {
    QWidget::hideEvent(event);
    zoomed_.set_seen(false);
    zoomed_compared_.set_seen(false);
}

void BandsPage::resizeEvent(QResizeEvent* event) {
    QWidget::resizeEvent(event);
    share_height();
}

/// Until the person moves the splitter: the whole board where it leaves the charts more than half.
void BandsPage::share_height() {
    constexpr double most = 0.42;
    if (!divided_by_hand_) {
        pages::share_height(*splitter_, *board_, most);
    }
}

void BandsPage::refresh() {
    const auto survey = context_.survey.result();
    if (!survey) {
        return;
    }
    dirty_ = false;
    const bool comparing = context_.comparison.design().has_value();
    const bool current = comparing && !context_.compared_survey.stale();
    const auto compared = current ? context_.compared_survey.result() : nullptr;
    const QString name = context_.comparison.name();
    model_->set_surveys(survey, compared, name);
    zoomed_.set_base(survey);
    zoomed_compared_.set_base(compared);
    refresh_charts();
    conditions_->setText(tr("Figures: %1").arg(models::conditions(*survey)));
    conditions_->setToolTip(conditions_->text() + QLatin1Char('\n') +
                            models::site_words(survey->request.model, survey->request.design.site.ground));
    if (!context_.survey.stale()) {
        stale_timer_.stop();
    }
    show_state();
    show_words();
    share_height();
}

void BandsPage::refresh_charts() {
    charts_ = std::make_shared<const std::vector<models::ChartContent>>(models::survey_charts(
        *zoomed_.survey(), zoomed_compared_.survey().get(), context_.comparison.name()));
    show_readout_of_group();
    grid_->set_charts(charts_);
}

/// Greys what belongs to an older state, once that has lasted a moment.
void BandsPage::show_state() {
    const bool stale = context_.survey.stale() && !stale_timer_.isActive();
    board_->set_stale(stale);
    grid_->set_stale(stale || zoomed_.stale() || zoomed_compared_.stale());
    progress_->setVisible(stale && context_.survey.running());
    if (!stale) {
        state_->hide();
    }
}

void BandsPage::follow_focus() {
    group_.set_focus(context_.focus.frequency().value(), context_.focus.band());
    show_readout();
    show_words();
}

void BandsPage::show_readout() {
    const double hertz = group_.crosshair_Hz();
    readout_->set_frequency(hertz);
    const QString frequency = QString::number(hertz * 1e-6, 'f', 4) + QStringLiteral("\u2009MHz");
    const QString band = group_.focus_band();
    const QString text = group_.pointing() ? tr("At the crosshair: %1").arg(frequency)
                         : band.isEmpty()  ? tr("In focus: %1").arg(frequency)
                                           : tr("In focus: %1, %2").arg(frequency, band);
    at_->setText(text);
    // Never narrower again: words beside it stay where they are while the pointer moves.
    at_->setMinimumWidth(std::max(at_->minimumWidth(), at_->sizeHint().width()));
}

void BandsPage::show_words() {
    const survey::BandRow* row = model_->row_at(model_->row_of(context_.focus.band()));
    if (row == nullptr) {
        words_->setText(context_.focus.band().isEmpty()
                            ? tr("The frequency in focus lies in no amateur band of the region.")
                            : tr("%1 is not among the planned bands.").arg(context_.focus.band()));
        return;
    }
    words_->setText(tr("<b>%1: %2 %3.</b> %4")
                        .arg(context_.focus.band(), models::verdict_symbol(row->verdict),
                             models::verdict_word(row->verdict),
                             models::verdict_sentences(*row).toHtmlEscaped()));
}

charts::Origin BandsPage::origin() const {
    charts::Origin origin;
    const auto survey = context_.survey.result();
    if (survey) {
        origin.design = title_of(survey->request.design);
        origin.conditions = models::conditions(*survey);
    }
    if (context_.comparison.design()) {
        origin.compared = tr("compared with %1").arg(context_.comparison.name());
    }
    origin.date = QLocale().toString(QDate::currentDate(), QLocale::LongFormat);
    origin.program = QStringLiteral("Loopwright %1").arg(QString::fromLatin1(base::version));
    return origin;
}

} // namespace loopwright::pages
