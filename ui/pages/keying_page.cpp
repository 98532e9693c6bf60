#include "pages/keying_page.hpp"

#include "models/keying_board_model.hpp"
#include "models/keying_words.hpp"
#include "pages/arrangement.hpp"
#include "pages/keying_board.hpp"
#include "pages/keying_details.hpp"
#include "pages/keying_form.hpp"
#include "settings/measures.hpp"

#include <QHBoxLayout>
#include <QLabel>
#include <QProgressBar>
#include <QPushButton>
#include <QScrollArea>
#include <QSplitter>
#include <QVBoxLayout>

namespace loopwright::pages {

namespace {

constexpr int keying_form_px = 340;
const QString keying_across_name = QStringLiteral("keying_across");

} // namespace

KeyingPage::KeyingPage(const Context& context, QWidget* parent)
    : QWidget(parent), context_(context), model_(new models::KeyingBoardModel(this)),
      conditions_(new QLabel(this)), state_(new QLabel(this)), progress_(new QProgressBar(this)),
      stop_(new QPushButton(tr("&Stop"), this)), across_(new QSplitter(Qt::Horizontal, this)),
      splitter_(new QSplitter(Qt::Vertical, this)), board_(new KeyingBoard(context, *model_, this)),
      reasons_(new QLabel(this)), details_(new KeyingDetails(context, this)) {
    auto* row = new QHBoxLayout(this);
    row->setContentsMargins(0, 0, 0, 0);
    row->addWidget(across_);
    QScrollArea* form = scrolled(new KeyingForm(context_, this), this);
    form->setObjectName(QStringLiteral("keying.form"));
    across_->setChildrenCollapsible(false);
    across_->addWidget(form);
    across_->addWidget(build_right());
    across_->setStretchFactor(0, 0);
    across_->setStretchFactor(1, 1);
    across_->setSizes({keying_form_px, 3 * keying_form_px});
    across_->restoreState(context_.settings.window_state(keying_across_name));
    stale_timer_.setSingleShot(true);
    stale_timer_.setInterval(patience_ms);
    connect_context();
    refresh();
}

void KeyingPage::show_group(int group) {
    details_->show_group(group);
}

const KeyingPictures& KeyingPage::pictures() const {
    return details_->pictures();
}

KeyingPictures& KeyingPage::pictures() {
    return details_->pictures();
}

KeyingPage::~KeyingPage() {
    context_.settings.set_window_state(keying_across_name, across_->saveState());
}

QWidget* KeyingPage::build_right() {
    auto* right = new QWidget(across_);
    QVBoxLayout* column = page_column(*right);
    build_head(*column);
    stack(*splitter_, board_, build_lower());
    column->addWidget(splitter_, 1);
    return right;
}

void KeyingPage::build_head(QVBoxLayout& column) {
    auto* row = new QHBoxLayout;
    conditions_->setTextInteractionFlags(Qt::TextSelectableByMouse);
    conditions_->setObjectName(QStringLiteral("keying.conditions"));
    conditions_->setAccessibleName(tr("What the figures are for"));
    conditions_->setWordWrap(true);
    row->addWidget(conditions_, 1);
    const auto add = [&](const QString& text, const QString& tip, const char* name, auto signal) {
        auto* button = new QPushButton(text, this);
        button->setToolTip(tip);
        button->setObjectName(QLatin1String(name));
        connect(button, &QPushButton::clicked, this, signal);
        row->addWidget(button);
    };
    add(tr("&Print…"), tr("Print this sheet: one page"), "keying.print", &KeyingPage::print_wanted);
    add(tr("P&DF…"), tr("This sheet as a PDF of one page"), "keying.pdf", &KeyingPage::pdf_wanted);
    add(tr("&CSV…"), tr("Every band and limit as a table for a spreadsheet"), "keying.csv",
        &KeyingPage::table_export_wanted);
    column.addLayout(row);
    auto* work = new QHBoxLayout;
    state_->setWordWrap(true);
    state_->setObjectName(QStringLiteral("keying.state"));
    progress_->setFixedWidth(20 * unit_px);
    progress_->setTextVisible(false);
    progress_->setAccessibleName(tr("Progress of the computation"));
    stop_->setToolTip(tr("Stop computing; the last figures stay"));
    connect(stop_, &QPushButton::clicked, &context_.keying, &jobs::KeyingJob::cancel);
    work->addWidget(state_, 1);
    work->addWidget(progress_);
    work->addWidget(stop_);
    column.addLayout(work);
}

QWidget* KeyingPage::build_lower() {
    auto* lower = new QWidget(splitter_);
    auto* column = new QVBoxLayout(lower);
    column->setContentsMargins(0, unit_px / 2, 0, 0);
    column->setSpacing(unit_px / 2);
    reasons_->setWordWrap(true);
    reasons_->setTextInteractionFlags(Qt::TextSelectableByMouse);
    reasons_->setAccessibleName(tr("The band in focus: reasons, and what would help"));
    reasons_->setObjectName(QStringLiteral("keying.reasons"));
    column->addWidget(reasons_);
    column->addWidget(details_, 1);
    connect(details_, &KeyingDetails::figure_export_wanted, this, &KeyingPage::figure_export_wanted);
    connect(details_, &KeyingDetails::room_changed, this, &KeyingPage::give_room);
    connect(board_, &KeyingBoard::rows_changed, this, &KeyingPage::share_height);
    return lower;
}

/// An enlarged picture has the board's room too.
void KeyingPage::give_room() {
    const bool enlarged = details_->picture_enlarged();
    board_->setVisible(!enlarged);
    reasons_->setVisible(!enlarged);
}

void KeyingPage::connect_context() {
    jobs::KeyingJob& keying = context_.keying;
    connect(&keying, &jobs::KeyingJob::updated, this, [this] {
        failure_.clear();
        refresh();
    });
    connect(&keying, &jobs::KeyingJob::started, this, [this] {
        failure_.clear();
        progress_->setValue(0);
        stale_timer_.start();
        show_state();
    });
    connect(&keying, &jobs::KeyingJob::progressed, progress_,
            [this](double share) { progress_->setValue(static_cast<int>(100.0 * share)); });
    connect(&keying, &jobs::KeyingJob::cancelled, this, &KeyingPage::show_state);
    connect(&keying, &jobs::KeyingJob::failed, this, [this](const QString& message) {
        failure_ = message;
        show_state();
    });
    connect(&stale_timer_, &QTimer::timeout, this, &KeyingPage::show_state);
    connect(&context_.focus, &session::Focus::changed, this, &KeyingPage::show_band);
    connect(&context_.settings, &settings::Settings::unit_system_changed, this, [this] {
        model_->set_unit_system(context_.settings.unit_system());
        show_band();
    });
    model_->set_unit_system(context_.settings.unit_system());
}

void KeyingPage::resizeEvent(QResizeEvent* event) {
    QWidget::resizeEvent(event);
    share_height();
}

/// The whole table where it leaves the pictures more than half.
void KeyingPage::share_height() {
    constexpr double most = 0.45;
    pages::share_height(*splitter_, *board_, most);
}

void KeyingPage::refresh() {
    const auto& keying = context_.keying.result();
    if (keying) {
        const int before = model_->rowCount();
        model_->set_keying(keying);
        conditions_->setText(models::keying_conditions(keying->request.design));
        conditions_->setToolTip(conditions_->text());
        if (before != model_->rowCount()) {
            share_height();
        }
    }
    show_band();
    show_state();
}

void KeyingPage::show_band() {
    const auto& keying = context_.keying.result();
    const survey::KeyingBand* band = model_->row_at(model_->row_of(context_.focus.band()));
    const design::Design& design = keying ? keying->request.design : context_.document.design();
    details_->show_band(band, design);
    if (band == nullptr) {
        reasons_->setText(keying ? tr("Pick a band of the table: its reasons and pictures stand here.")
                                 : tr("Not computed yet: treat the loop as hazardous."));
        return;
    }
    const bool settled = keying->request.intervals;
    reasons_->setText(QStringLiteral("<b>%1: %2</b><br>%3")
                          .arg(models::band_name(*band), models::verdict_of(*band, settled),
                               models::reason_lines(*band)
                                   .join(QLatin1Char('\n'))
                                   .toHtmlEscaped()
                                   .replace(QLatin1Char('\n'), QStringLiteral("<br>"))));
}

/// Greys what belongs to an older state, once that has lasted a moment, and says what is still missing.
void KeyingPage::show_state() {
    const jobs::KeyingJob& job = context_.keying;
    const bool waiting = job.running() && stale_timer_.isActive();
    const bool stale = job.stale() && !waiting;
    board_->set_stale(stale);
    reasons_->setEnabled(!stale);
    QString words;
    if (!failure_.isEmpty()) {
        words = tr("Not computed: %1 Treat the loop as hazardous.").arg(failure_);
    } else if (stale) {
        words = job.running() ? tr("Computing: what is greyed belongs to an older state.")
                              : tr("Stopped: what is greyed belongs to an older state.");
    } else if (!job.settled() && !waiting) {
        words = job.running()
                    ? tr("Figures as entered; what soil, height and losses may do is being computed.")
                    : tr("Stopped: without the unfavourable ends nothing is called within limits.");
    }
    state_->setText(words);
    state_->setVisible(!words.isEmpty());
    const bool running = job.running() && !waiting && failure_.isEmpty();
    progress_->setVisible(running);
    stop_->setVisible(running);
}

} // namespace loopwright::pages
