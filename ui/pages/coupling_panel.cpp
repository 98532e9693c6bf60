#include "pages/coupling_panel.hpp"

#include "charts/figure_widget.hpp"
#include "charts/smith_figure.hpp"
#include "charts/vswr_figure.hpp"
#include "models/match_words.hpp"
#include "models/model_words.hpp"
#include "models/quantity_words.hpp"
#include "pages/standing.hpp"
#include "settings/measures.hpp"

#include <QGridLayout>
#include <QHBoxLayout>
#include <QLabel>
#include <QPushButton>
#include <QVBoxLayout>

#include <algorithm>

namespace loopwright::pages {

namespace {
constexpr int smith_px = 330, curve_px = 230;
constexpr double vswr_limit = 2.0;
} // namespace

void CouplingPanel::build_numbers(QVBoxLayout* column) {
    kind_->setWordWrap(true);
    kind_->setObjectName(QStringLiteral("coupling.model_limits"));
    kind_->setTextInteractionFlags(Qt::TextSelectableByMouse);
    column->addWidget(kind_);
    conditions_->setWordWrap(true);
    conditions_->setForegroundRole(QPalette::PlaceholderText);
    conditions_->setObjectName(QStringLiteral("match.conditions"));
    column->addWidget(conditions_);
    auto* row = new QHBoxLayout;
    working_->setWordWrap(true);
    working_->setObjectName(QStringLiteral("match.state"));
    stop_->setObjectName(QStringLiteral("match.stop"));
    stop_->setAccessibleName(tr("Stop computing the match"));
    stop_->setToolTip(tr("Stop computing; the last figures stay, greyed"));
    stop_->setAccessibleDescription(stop_->toolTip());
    connect(stop_, &QPushButton::clicked, &match_, &jobs::Job::cancel);
    row->addWidget(working_, 1);
    row->addWidget(stop_);
    column->addLayout(row);
    auto* inner = new QVBoxLayout(numbers_);
    inner->setContentsMargins(0, 0, 0, 0);
    grid_->setHorizontalSpacing(unit_px);
    grid_->setVerticalSpacing(0);
    grid_->setColumnStretch(0, 1);
    inner->addLayout(grid_);
    notices_->setWordWrap(true);
    notices_->setTextFormat(Qt::PlainText);
    notices_->setTextInteractionFlags(Qt::TextSelectableByMouse);
    notices_->setObjectName(QStringLiteral("match.notices"));
    inner->addWidget(notices_);
    column->addWidget(numbers_);
}

void CouplingPanel::build_figures(QVBoxLayout* column) {
    smith_->setFixedHeight(smith_px);
    curve_->setFixedHeight(curve_px);
    // In a box of their own: where words above them grow, the column may for a moment be shorter than all
    // that stands in it, and then nothing but its end is cut.
    auto* box = new QWidget(this);
    auto* figures = new QVBoxLayout(box);
    figures->setContentsMargins(0, 0, 0, 0);
    box->setFixedHeight(smith_px + figures->spacing() + curve_px);
    column->addWidget(box);
    for (charts::FigureWidget* figure : {smith_, curve_}) {
        figure->setAccessibleName(tr("Chart of the match"));
        figure->setToolTip(tr("Arrow keys walk along the curve and show its numbers."));
        figures->addWidget(figure);
        connect(figure, &charts::FigureWidget::export_wanted, this,
                [this, figure] { Q_EMIT figure_export_wanted(figure->figure()); });
    }
    curve_->set_table(true);
    connect(curve_, &charts::FigureWidget::table_wanted, this, &CouplingPanel::curve_export_wanted);
}

void CouplingPanel::connect_context() {
    connect(&context_.document, &session::Document::design_changed, this, [this] {
        sizing_.cancel(); // it was for another loop
        show_kind();
        want_match();
    });
    connect(&context_.focus, &session::Focus::changed, this, &CouplingPanel::want_match);
}

void CouplingPanel::connect_match() {
    patience_.setSingleShot(true);
    patience_.setInterval(patience_ms);
    connect(&patience_, &QTimer::timeout, this, &CouplingPanel::show_stale);
    connect(&match_, &jobs::Job::finished, this, &CouplingPanel::refresh);
    connect(&match_, &jobs::Job::cancelled, this, [this] {
        patience_.stop();
        show_stale();
    });
    connect(&match_, &jobs::Job::failed, this, [this](const QString& message) {
        patience_.stop();
        failure_ = message;
        show_stale();
    });
}

void CouplingPanel::showEvent(QShowEvent* event) {
    QWidget::showEvent(event);
    if (wanted_) {
        start_match();
    }
}

void CouplingPanel::want_match() {
    wanted_ = true;
    if (isVisible()) {
        start_match();
    }
}

void CouplingPanel::start_match() {
    wanted_ = false;
    failure_.clear();
    if (!context_.document.design().coupling) {
        match_.clear();
        return;
    }
    match_.start({context_.document.design(), context_.focus.frequency(), vswr_limit});
    if (!patience_.isActive()) {
        patience_.start();
    }
}

void CouplingPanel::refresh() {
    const auto result = match_.result();
    if (!result) {
        return;
    }
    patience_.stop();
    const design::Design& design = result->request.design;
    conditions_->setText(tr("Match at %1, %2")
                             .arg(models::exact_frequency(result->request.frequency.value()),
                                  models::model_and_ground(loop::Model::full_wave, design.site.ground)));
    const auto headlines = models::match_headlines(result->report, vswr_limit);
    for (std::size_t i = 0; i < std::max(headlines.size(), lines_.size()); ++i) {
        show_line(i, i < headlines.size() ? &headlines[i] : nullptr);
    }
    show_notices();
    const models::MatchPlot plot = models::plot_of(result->report, vswr_limit);
    smith_->set_figure(std::make_shared<charts::SmithFigure>(plot));
    curve_->set_figure(std::make_shared<charts::VswrFigure>(plot));
    show_stale();
}

void CouplingPanel::show_line(std::size_t index, const models::Headline* headline) {
    if (index >= lines_.size()) {
        Line line{new QLabel(numbers_), new QLabel(numbers_), new QLabel(numbers_)};
        QFont bold = font();
        bold.setBold(true);
        line.value->setFont(bold);
        line.value->setAlignment(Qt::AlignRight | Qt::AlignVCenter);
        line.value->setTextInteractionFlags(Qt::TextSelectableByMouse);
        line.remark->setWordWrap(true);
        const int row = 2 * static_cast<int>(index);
        grid_->addWidget(line.label, row, 0);
        grid_->addWidget(line.value, row, 1);
        grid_->addWidget(line.remark, row + 1, 0, 1, 2);
        lines_.push_back(line);
    }
    const Line& line = lines_[index];
    for (QLabel* part : {line.label, line.value, line.remark}) {
        part->setVisible(headline != nullptr);
    }
    if (headline == nullptr) {
        return;
    }
    line.label->setText(headline->label);
    line.value->setText(headline->value);
    line.value->setObjectName(headline->id);
    line.value->setAccessibleName(tr("%1, %2").arg(headline->label, headline->model));
    line.value->setToolTip(headline->established ? tr("Model: %1").arg(headline->model) : headline->reason);
    line.remark->setText(headline->established ? standing_mark(headline->standing) + headline->remark
                                               : headline->reason);
}

/// Those of the coupling; the loop's own stand beside its numbers.
void CouplingPanel::show_notices() {
    const coupling::MatchReport& report = match_.result()->report;
    QStringList texts;
    for (const base::Notice& notice : report.notices.worst_first()) {
        if (!report.alone.notices.has(notice.code) || notice.code.find("feed_line") != std::string::npos) {
            texts << severity_mark(notice.severity) + QString::fromStdString(notice.text);
        }
    }
    notices_->setText(texts.join(QLatin1Char('\n')));
    notices_->setVisible(!texts.isEmpty());
}

void CouplingPanel::show_stale() {
    const bool stale = match_.stale() && !patience_.isActive();
    const bool working = stale && match_.busy();
    numbers_->setEnabled(!stale);
    smith_->set_stale(stale);
    curve_->set_stale(stale);
    stop_->setVisible(working);
    working_->setVisible(stale);
    const QString old = match_.result() ? tr(" What is greyed belongs to an older state.") : QString();
    working_->setText(working               ? tr("Computing the match…")
                      : !failure_.isEmpty() ? tr("Not computed: %1").arg(failure_) + old
                                            : tr("Stopped.") + old);
}

} // namespace loopwright::pages
