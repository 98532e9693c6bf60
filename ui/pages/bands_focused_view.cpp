#include "pages/bands_focused_view.hpp"

#include "charts/figure_widget.hpp"
#include "settings/measures.hpp"

#include <QHBoxLayout>
#include <QKeyEvent>
#include <QLabel>
#include <QProgressBar>
#include <QPushButton>
#include <QVBoxLayout>

#include <cmath>

namespace loopwright::pages {

namespace {
constexpr int pause_ms = 200, focused_progress_px = 160;
constexpr double hundred = 100.0;
} // namespace

FocusedView::FocusedView(const Context& context, jobs::Job* job, QWidget* parent)
    : QWidget(parent), context_(context), job_(job), column_(new QVBoxLayout(this)), state_(new QLabel(this)),
      progress_(new QProgressBar(this)), stop_(new QPushButton(tr("S&top"), this)) {
    job_->setParent(this);
    column_->setContentsMargins(0, 0, 0, 0);
    column_->setSpacing(unit_px / 2);
    build_work_row();
    pause_.setSingleShot(true);
    pause_.setInterval(pause_ms);
    patience_.setSingleShot(true);
    patience_.setInterval(patience_ms);
    connect(&pause_, &QTimer::timeout, this, [this] {
        dirty_ = false;
        settled_ = false;
        start();
    });
    connect(&patience_, &QTimer::timeout, this, &FocusedView::show_state);
    connect(job_, &jobs::Job::started, this, [this] {
        computing_ = true;
        progress_->setValue(0);
        patience_.start();
    });
    connect(job_, &jobs::Job::progressed, this,
            [this](double share) { progress_->setValue(static_cast<int>(hundred * share)); });
    connect(job_, &jobs::Job::finished, this, [this] {
        computing_ = false;
        show_result();
        show_state();
    });
    connect(job_, &jobs::Job::failed, this, [this](const QString& sentence) {
        computing_ = false;
        show_reason(sentence);
        settle();
    });
    connect(job_, &jobs::Job::cancelled, this, [this] {
        computing_ = false;
        show_state();
    });
    connect(&context_.document, &session::Document::design_changed, this, &FocusedView::want);
    connect(&context_.focus, &session::Focus::changed, this, &FocusedView::want);
}

FocusedView::~FocusedView() = default;

void FocusedView::build_work_row() {
    auto* row = new QHBoxLayout;
    row->addWidget(state_);
    progress_->setFixedWidth(focused_progress_px);
    progress_->setTextVisible(false);
    progress_->setAccessibleName(tr("Progress of the computation"));
    row->addWidget(progress_);
    row->addWidget(stop_);
    row->addStretch(1);
    stop_->setToolTip(tr("Stop computing; the last figures stay, greyed"));
    connect(stop_, &QPushButton::clicked, job_, &jobs::Job::cancel);
    column_->addLayout(row);
    for (QWidget* widget : std::initializer_list<QWidget*>{state_, progress_, stop_}) {
        widget->hide();
    }
}

charts::FigureWidget* FocusedView::add_figure() {
    auto* figure = new charts::FigureWidget(this);
    connect(figure, &charts::FigureWidget::export_wanted, this,
            [this, figure] { Q_EMIT export_wanted(figure->figure()); });
    connect(figure, &charts::FigureWidget::table_wanted, this,
            [this] { Q_EMIT table_export_wanted(QString::fromStdString(table()), table_name()); });
    const int index = static_cast<int>(figures_.size());
    figure->set_enlargeable();
    connect(figure, &charts::FigureWidget::enlarge_toggled, this,
            [this, index] { enlarge(enlarged_ == index ? -1 : index); });
    figures_.push_back(figure);
    return figure;
}

QString FocusedView::table_name(const QString& what, units::Frequency frequency) {
    constexpr double kilo = 1e3;
    return QStringLiteral("%1-%2-khz").arg(what).arg(std::lround(frequency.value() / kilo));
}

void FocusedView::offer_table(bool offered) {
    for (charts::FigureWidget* figure : figures_) {
        figure->set_table(offered);
    }
}

void FocusedView::enlarge(int figure) {
    if (figure == enlarged_) {
        return;
    }
    enlarged_ = figure;
    for (int i = 0; i < static_cast<int>(figures_.size()); ++i) {
        figures_[static_cast<std::size_t>(i)]->setVisible(figure < 0 || figure == i);
        figures_[static_cast<std::size_t>(i)]->set_enlarged(figure == i);
    }
    Q_EMIT enlarged_changed();
}

void FocusedView::keyPressEvent(QKeyEvent* event) {
    if (event->key() == Qt::Key_Escape && enlarged_ >= 0) {
        enlarge(-1);
        event->accept();
        return;
    }
    QWidget::keyPressEvent(event);
}

void FocusedView::want() {
    dirty_ = true;
    if (isVisible()) {
        pause_.start();
    }
}

bool FocusedView::current() const {
    return !dirty_ && !computing_ && !pause_.isActive() && (settled_ || !job_->stale());
}

void FocusedView::settle() {
    settled_ = true;
    job_->cancel();
    show_state();
}

void FocusedView::showEvent(QShowEvent* event) {
    QWidget::showEvent(event);
    if (dirty_) {
        pause_.start(0);
        pause_.setInterval(pause_ms);
    }
}

/// What nobody sees is not computed on.
void FocusedView::hideEvent(QHideEvent* event) {
    QWidget::hideEvent(event);
    pause_.stop();
    if (computing_) {
        job_->cancel();
        dirty_ = true;
    }
}

void FocusedView::show_state() {
    const bool stale = !settled_ && job_->stale() && !patience_.isActive();
    const bool running = stale && computing_;
    for (charts::FigureWidget* figure : figures_) {
        figure->set_stale(stale);
    }
    progress_->setVisible(running);
    stop_->setVisible(running);
    state_->setVisible(stale);
    state_->setText(running ? tr("Computing…") : tr("Stopped: what is greyed belongs to an older state."));
}

} // namespace loopwright::pages
