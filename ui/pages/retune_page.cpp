#include "pages/retune_page.hpp"

#include "pages/arrangement.hpp"
#include "pages/calibration_editor.hpp"
#include "pages/retune_card.hpp"
#include "pages/retune_form.hpp"
#include "pages/retune_view.hpp"
#include "settings/measures.hpp"

#include <QHBoxLayout>
#include <QLabel>
#include <QScrollArea>
#include <QSplitter>
#include <QVBoxLayout>

namespace loopwright::pages {

namespace {

constexpr int retune_form_px = 360;
const QString retune_across_name = QStringLiteral("retune_across");

} // namespace

RetunePage::RetunePage(const Context& context, QWidget* parent)
    : QWidget(parent), context_(context), across_(new QSplitter(Qt::Horizontal, this)),
      state_(new QLabel(this)), form_(new RetuneForm(context, this)) {
    auto* row = new QHBoxLayout(this);
    row->setContentsMargins(0, 0, 0, 0);
    row->addWidget(across_);
    QScrollArea* form = scrolled(form_, this);
    form->setObjectName(QStringLiteral("retune.form"));
    across_->setChildrenCollapsible(false);
    across_->addWidget(form);
    across_->addWidget(build_right());
    across_->setStretchFactor(0, 0);
    across_->setStretchFactor(1, 1);
    across_->setSizes({retune_form_px, 3 * retune_form_px});
    across_->restoreState(context_.settings.window_state(retune_across_name));
    stale_timer_.setSingleShot(true);
    stale_timer_.setInterval(patience_ms);
    connect(&context_.document, &session::Document::design_changed, this, &RetunePage::start);
    connect(&context_.focus, &session::Focus::changed, this, &RetunePage::start_dial);
    connect(&dial_, &jobs::Job::started, this, [this] {
        failure_.clear();
        stale_timer_.start();
        show_state();
    });
    connect(&dial_, &jobs::Job::finished, this, [this] {
        view_->set_result(dial_.result());
        form_->calibration().set_result(dial_.result());
        show_state();
    });
    connect(&dial_, &jobs::Job::failed, this, [this](const QString& message) {
        failure_ = message;
        show_state();
    });
    connect(&stale_timer_, &QTimer::timeout, this, &RetunePage::show_state);
    show_state();
}

RetunePage::~RetunePage() {
    context_.settings.set_window_state(retune_across_name, across_->saveState());
}

QWidget* RetunePage::build_right() {
    auto* right = new QWidget(across_);
    auto* column = new QVBoxLayout(right);
    column->setContentsMargins(unit_px, unit_px / 2, unit_px, unit_px / 2);
    column->setSpacing(unit_px / 2);
    state_->setWordWrap(true);
    state_->setObjectName(QStringLiteral("retune.state"));
    view_ = new RetuneView(context_, right);
    connect(view_, &RetuneView::figure_export_wanted, this, &RetunePage::figure_export_wanted);
    card_ = new RetuneCard(context_, right);
    connect(card_, &RetuneCard::vswr_limit_changed, this, &RetunePage::start);
    auto* down = new QSplitter(Qt::Vertical, right);
    down->setChildrenCollapsible(false);
    down->addWidget(view_);
    down->addWidget(card_);
    down->setStretchFactor(0, 2);
    down->setStretchFactor(1, 3);
    down->setSizes({2 * retune_form_px / 2, 3 * retune_form_px / 2});
    column->addWidget(state_);
    column->addWidget(down, 1);
    return right;
}

void RetunePage::showEvent(QShowEvent* event) {
    QWidget::showEvent(event);
    if (due_) {
        start();
    }
}

/// A page that is not seen costs nothing.
void RetunePage::start() {
    due_ = !isVisible();
    if (!due_) {
        start_dial();
        card_->start();
    }
}

void RetunePage::start_dial() {
    if (!isVisible()) {
        due_ = true;
        return;
    }
    jobs::DialRequest request;
    request.design = context_.document.design();
    request.radio = context_.focus.frequency();
    request.emission = request.design.station.emission;
    request.vswr_limit = card_->vswr_limit();
    dial_.start(request);
}

void RetunePage::show_state() {
    const bool stale = dial_.stale() && !(dial_.running() && stale_timer_.isActive());
    view_->set_stale(stale);
    QString words;
    if (!failure_.isEmpty()) {
        words = tr("Not computed: %1").arg(failure_);
    } else if (stale && dial_.running()) {
        words = tr("Computing: what is greyed belongs to an older state.");
    }
    state_->setText(words);
    state_->setVisible(!words.isEmpty());
}

} // namespace loopwright::pages
