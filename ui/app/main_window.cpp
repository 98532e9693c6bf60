#include "app/main_window.hpp"

#include "app/bands_actions.hpp"
#include "app/hazard_strip.hpp"
#include "app/keying_actions.hpp"
#include "app/retune_actions.hpp"
#include "dialogs/caution_dialog.hpp"
#include "dialogs/explanation_dialog.hpp"
#include "loop/solved_part.hpp"
#include "pages/bands_page.hpp"
#include "pages/build_page.hpp"
#include "pages/coupling_panel.hpp"
#include "pages/headline_panel.hpp"
#include "pages/keying_page.hpp"
#include "pages/retune_page.hpp"
#include "settings/measures.hpp"

#include <QCloseEvent>
#include <QCoreApplication>
#include <QScreen>
#include <QTabWidget>
#include <QVBoxLayout>

#include <algorithm>

namespace loopwright::app {

namespace {

constexpr QSize usual_size{1280, 800};
const QString window_name = QStringLiteral("main");

/// 231 points from 1.8 to 54 MHz: a step of 1.5 %, finer than a pixel of a chart over half a page.
constexpr int curve_points = 231;

survey::Request request_of(const design::Design& design, loop::Model model) {
    survey::Request request;
    request.design = design;
    request.model = model;
    request.points = curve_points;
    return request;
}

} // namespace

MainWindow::MainWindow(settings::Settings& settings, const QString& recovery_folder, QWidget* parent)
    : QMainWindow(parent), settings_(settings),
      document_(recovery_folder), context_{settings_, document_, focus_,           comparison_,
                                           survey_,   point_,    compared_survey_, keying_job_},
      recovery_folder_(recovery_folder), files_(new FileActions(context_, this)),
      pages_(new QTabWidget(this)) {
    start_survey(); // computed while the window is built; its result waits for the event loop
    build_pages();
    build_menus();
    connect_session();
    const QSize screen = this->screen()->availableSize();
    resize(usual_size.boundedTo(screen));
    restoreGeometry(settings_.window_state(window_name));
    show_title();
    start_point();
    start_keying();
}

MainWindow::~MainWindow() = default;

void MainWindow::build_pages() {
    auto* middle = new QWidget(this);
    auto* column = new QVBoxLayout(middle);
    column->setContentsMargins(unit_px / 2, unit_px / 2, unit_px / 2, unit_px / 2);
    column->setSpacing(unit_px / 2);
    column->addWidget(new HazardStrip(context_, middle));
    column->addWidget(pages_, 1);
    pages_->setDocumentMode(true);
    pages_->setAccessibleName(tr("Pages"));
    setCentralWidget(middle);
    build_ = new pages::BuildPage(context_, pages_);
    add_page(build_, tr("Build"));
    connect(build_, &pages::BuildPage::explanation_wanted, this, &MainWindow::show_explanation);
    bands_ = new pages::BandsPage(context_, pages_);
    bands_actions_ = new BandsActions(context_, *bands_, this);
    add_page(bands_, tr("Bands"));
    connect(&build_->match(), &pages::CouplingPanel::figure_export_wanted, bands_actions_,
            &BandsActions::export_figure);
    connect(&build_->match(), &pages::CouplingPanel::curve_export_wanted, this, [this] {
        if (const auto match = build_->match().match().result()) {
            bands_actions_->export_match(*match);
        }
    });
    keying_ = new pages::KeyingPage(context_, pages_);
    keying_actions_ = new KeyingActions(context_, *keying_, this);
    add_page(keying_, tr("Before keying"));
    retune_ = new pages::RetunePage(context_, pages_);
    add_page(retune_, tr("Retune"));
    retune_actions_ = new RetuneActions(context_, *retune_, this);
}

void MainWindow::add_page(QWidget* page, const QString& name) {
    pages_->addTab(page, name);
}

void MainWindow::connect_session() {
    connect(&document_, &session::Document::design_changed, this, [this] {
        focus_.set_region(document_.design().station.region);
        start_computing();
    });
    connect(&focus_, &session::Focus::changed, this, &MainWindow::start_point);
    connect(&settings_, &settings::Settings::current_drawn_changed, this, &MainWindow::start_point);
    connect(&settings_, &settings::Settings::model_changed, this, [this] {
        start_computing();
        start_comparison();
    });
    connect(&document_, &session::Document::replaced, this, [this] { focus_to_choose_ = true; });
    connect(&document_, &session::Document::state_changed, this, &MainWindow::show_title);
    connect(&comparison_, &session::Comparison::changed, this, &MainWindow::start_comparison);
    connect(&survey_, &jobs::Job::finished, this, &MainWindow::choose_focus);
    constexpr int paint_first_ms = 40;
    keying_pause_.setSingleShot(true);
    keying_pause_.setInterval(paint_first_ms);
    connect(&keying_pause_, &QTimer::timeout, this, &MainWindow::keying_in_turn);
    connect(&survey_, &jobs::Job::finished, &keying_pause_, qOverload<>(&QTimer::start));
    connect(&survey_, &jobs::Job::failed, &keying_pause_, qOverload<>(&QTimer::start));
}

/// The point first: it is small, and what the eye is on.
void MainWindow::start_computing() {
    start_point();
    start_survey();
    start_keying();
}

/// At once where the fields are known already (power, emission, limits, people); else after the survey, which
/// wants the cores first.
void MainWindow::start_keying() {
    const auto& known = keying_job_.result();
    const design::Design& design = document_.design();
    const bool same_fields = known && loop::solved_part(known->request.design) == loop::solved_part(design) &&
                             known->request.design.site.standing_level == design.site.standing_level;
    keying_due_ = !same_fields;
    if (same_fields) {
        keying_job_.start(design);
    } else {
        keying_job_.announce();
    }
}

/// And after the paint that the survey's end asks for, which wants them too.
void MainWindow::keying_in_turn() {
    if (keying_due_ && !survey_.busy()) {
        keying_due_ = false;
        keying_job_.start(document_.design());
    }
}

void MainWindow::start_survey() {
    survey_.start(request_of(document_.design(), settings_.model()));
}

void MainWindow::start_point() {
    jobs::PointRequest request;
    request.design = document_.design();
    request.frequency = focus_.frequency();
    request.model = settings_.model();
    request.other_beside = settings_.other_model_beside();
    request.with_current = settings_.current_drawn();
    point_.start(request);
}

void MainWindow::start_comparison() {
    if (comparison_.design()) {
        compared_survey_.start(request_of(*comparison_.design(), settings_.model()));
    } else {
        compared_survey_.clear();
    }
}

/// A newly opened design is first looked at on a planned band that it reaches.
void MainWindow::choose_focus() {
    if (!focus_to_choose_ || survey_.stale()) {
        return;
    }
    focus_to_choose_ = false;
    const auto& bands = survey_.result()->bands;
    const auto reached = [](const survey::BandRow& row) {
        return row.point.resonance && row.point.resonance->in_capacitor_range;
    };
    const auto now = std::find_if(bands.begin(), bands.end(), [&](const survey::BandRow& row) {
        return focus_.band() == QString::fromStdString(row.band.name);
    });
    if (now != bands.end() && reached(*now)) {
        return;
    }
    const auto best = std::max_element(bands.begin(), bands.end(), [&](const auto& a, const auto& b) {
        const auto worth = [&](const survey::BandRow& row) {
            return reached(row) ? row.point.resonance->efficiency : -1.0;
        };
        return worth(a) < worth(b);
    });
    if (best != bands.end()) {
        focus_.set_band(QString::fromStdString(best->band.name));
    }
}

void MainWindow::show_title() {
    setWindowTitle(tr("%1[*] — Loopwright").arg(document_.display_name()));
    setWindowModified(document_.is_dirty());
    setWindowFilePath(document_.path());
}

void MainWindow::show_caution() {
    dialogs::CautionDialog dialog(this);
    if (dialog.exec() == QDialog::Accepted) {
        settings_.set_caution_read(true);
    }
}

void MainWindow::show_explanation(const QString& key) {
    if (explanation_ == nullptr) {
        explanation_ = new dialogs::ExplanationDialog(this);
        connect(&build_->headlines(), &pages::HeadlinePanel::refreshed, this,
                &MainWindow::refresh_explanation);
    }
    explanation_->show(); // beside the window, which it does not block
    refresh_explanation();
    explanation_->select(key);
    explanation_->raise();
    explanation_->activateWindow();
}

void MainWindow::refresh_explanation() {
    if (explanation_->isVisible()) {
        explanation_->set_point(build_->headlines().design(), build_->headlines().point(),
                                settings_.unit_system());
    }
}

void MainWindow::begin(const QString& file) {
    const bool first_start = !settings_.caution_read();
    if (first_start) {
        show_caution();
    }
    if (!recovery_folder_.isEmpty() && files_->offer_recovery(recovery_folder_)) {
        return;
    }
    if (!file.isEmpty()) {
        files_->open(file);
    } else if (first_start) {
        files_->start_dialog();
    }
}

/// A change deep inside asks one widget after the other for a new layout, each by an event of its own, and
/// the request to paint stands between the first and the second of them. Without this a frame would show
/// fields squeezed into the room they had before.
bool MainWindow::event(QEvent* event) {
    if (event->type() == QEvent::UpdateRequest) {
        // One call serves what is posted by then, one widget's layout each; what that asks of its parent is
        // for the next.
        constexpr int nested_most = 16;
        for (int i = 0; i < nested_most; ++i) {
            QCoreApplication::sendPostedEvents(nullptr, QEvent::LayoutRequest);
        }
    }
    return QMainWindow::event(event);
}

void MainWindow::closeEvent(QCloseEvent* event) {
    if (!files_->may_leave()) {
        event->ignore();
        return;
    }
    document_.discard_recovery_copy();
    settings_.set_window_state(window_name, saveGeometry());
    event->accept();
}

} // namespace loopwright::app
