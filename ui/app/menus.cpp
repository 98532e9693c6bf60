// The menus of the main window.
#include "app/bands_actions.hpp"
#include "app/keying_actions.hpp"
#include "app/main_window.hpp"
#include "app/retune_actions.hpp"
#include "app/samples.hpp"
#include "dialogs/text_dialog.hpp"
#include "pages/keying_page.hpp"
#include "pages/retune_page.hpp"

#include <QActionGroup>
#include <QFileInfo>
#include <QMenu>
#include <QMenuBar>
#include <QTabWidget>

#include <functional>

namespace loopwright::app {

QAction* MainWindow::add_action(QMenu* menu, const QString& text, const QKeySequence& keys,
                                const std::function<void()>& work) {
    QAction* action = menu->addAction(text);
    action->setShortcut(keys);
    if (work) {
        connect(action, &QAction::triggered, this, work);
    }
    return action;
}

void MainWindow::build_menus() {
    build_file_menu();
    build_edit_menu();
    build_view_menu();
    build_help_menu();
}

void MainWindow::build_file_menu() {
    QMenu* file = menuBar()->addMenu(tr("&File"));
    add_action(file, tr("&New"), QKeySequence::New, [this] { files_->start_new(); });
    add_action(file, tr("&Describe my loop…"), {}, [this] { files_->describe_own(); });
    add_action(file, tr("&Open…"), QKeySequence::Open, [this] { files_->open_with_dialog(); });
    QMenu* from_samples = file->addMenu(tr("Sa&mples"));
    connect(from_samples, &QMenu::aboutToShow, this, [this, from_samples] { fill_samples(from_samples); });
    QMenu* recent = file->addMenu(tr("Open &recent"));
    connect(recent, &QMenu::aboutToShow, this, [this, recent] { fill_recent(recent); });
    const auto enable_recent = [this, recent] { recent->setEnabled(!settings_.recent_files().isEmpty()); };
    connect(&settings_, &settings::Settings::recent_files_changed, recent, enable_recent);
    enable_recent();
    file->addSeparator();
    add_action(file, tr("&Save"), QKeySequence::Save, [this] { files_->save(); });
    add_action(file, tr("Save &as…"), QKeySequence(Qt::CTRL | Qt::SHIFT | Qt::Key_S),
               [this] { files_->save_as(); });
    file->addSeparator();
    add_action(file, tr("&Print…"), QKeySequence::Print,
               [this] { on_shown_page(&BandsActions::print, &KeyingActions::print, &RetuneActions::print); });
    add_action(file, tr("Pre&view of the page…"), {}, [this] {
        on_shown_page(&BandsActions::preview, &KeyingActions::preview, &RetuneActions::preview);
    });
    add_action(file, tr("Page as P&DF…"), {}, [this] {
        on_shown_page(&BandsActions::save_pdf, &KeyingActions::save_pdf, &RetuneActions::save_pdf);
    });
    QMenu* exports = file->addMenu(tr("&Export"));
    add_action(exports, tr("&Charts…"), {}, [this] { bands_actions_->export_charts(); });
    add_action(exports, tr("&Bands as CSV…"), {}, [this] { bands_actions_->export_bands(); });
    add_action(exports, tr("C&urves as CSV…"), {}, [this] { bands_actions_->export_curve(); });
    add_action(exports, tr("Before &keying as CSV…"), {}, [this] { keying_actions_->export_table(); });
    add_action(exports, tr("&Retune card as CSV…"), {}, [this] { retune_actions_->export_table(); });
    file->addSeparator();
    add_action(file, tr("&Quit"), QKeySequence(Qt::CTRL | Qt::Key_Q), [this] { close(); });
}

/// Before keying and Retune have a sheet of their own; every other page that of the design.
void MainWindow::on_shown_page(void (BandsActions::*design)(), void (KeyingActions::*before_keying)(),
                               void (RetuneActions::*card)()) {
    if (pages_->currentWidget() == keying_) {
        (keying_actions_->*before_keying)();
    } else if (pages_->currentWidget() == retune_) {
        (retune_actions_->*card)();
    } else {
        (bands_actions_->*design)();
    }
}

void MainWindow::fill_samples(QMenu* menu) {
    menu->clear();
    menu->setToolTipsVisible(true);
    for (const Sample& sample : samples()) {
        QAction* action =
            add_action(menu, sample.title(), {}, [this, sample] { files_->open_sample(sample.design); });
        action->setToolTip(QString::fromStdString(sample.design.note));
    }
}

void MainWindow::fill_recent(QMenu* menu) {
    menu->clear();
    menu->setToolTipsVisible(true);
    for (const QString& path : settings_.recent_files()) {
        QAction* action =
            add_action(menu, QFileInfo(path).fileName(), {}, [this, path] { files_->open(path); });
        action->setToolTip(path);
    }
    menu->addSeparator();
    add_action(menu, tr("&Clear this list"), {}, [this] { settings_.clear_recent_files(); });
}

void MainWindow::build_edit_menu() {
    QMenu* edit = menuBar()->addMenu(tr("&Edit"));
    QUndoStack& stack = document_.undo_stack();
    QAction* undo = stack.createUndoAction(this, tr("&Undo"));
    QAction* redo = stack.createRedoAction(this, tr("&Redo"));
    undo->setShortcut(QKeySequence::Undo);
    redo->setShortcuts({QKeySequence(Qt::CTRL | Qt::SHIFT | Qt::Key_Z), QKeySequence(Qt::CTRL | Qt::Key_Y)});
    edit->addAction(undo);
    edit->addAction(redo);
}

void MainWindow::build_view_menu() {
    QMenu* view = menuBar()->addMenu(tr("&View"));
    for (int i = 0; i < pages_->count(); ++i) {
        add_action(view, pages_->tabText(i), QKeySequence(Qt::CTRL | static_cast<Qt::Key>(Qt::Key_1 + i)),
                   [this, i] { pages_->setCurrentIndex(i); });
    }
    view->addSeparator();
    add_models(view);
    view->addSeparator();
    add_unit_systems(view);
}

/// Which model computes, and whether the other one stands beside it.
void MainWindow::add_models(QMenu* view) {
    auto* models = new QActionGroup(this);
    const auto add_model = [&](const QString& text, const QKeySequence& keys, loop::Model model) {
        QAction* action = add_action(view, text, keys, [this, model] { settings_.set_model(model); });
        action->setCheckable(true);
        models->addAction(action);
        const auto show = [this, action, model] { action->setChecked(settings_.model() == model); };
        connect(&settings_, &settings::Settings::model_changed, action, show);
        show();
    };
    add_model(tr("Engine: &full wave"), QKeySequence(Qt::CTRL | Qt::Key_F), loop::Model::full_wave);
    add_model(tr("Engine: c&losed form"), QKeySequence(Qt::CTRL | Qt::Key_L), loop::Model::closed_form);
    QAction* beside = add_action(view, tr("&Other model beside it"), QKeySequence(Qt::CTRL | Qt::Key_B), {});
    beside->setCheckable(true);
    connect(beside, &QAction::triggered, &settings_, &settings::Settings::set_other_model_beside);
    const auto show = [this, beside] { beside->setChecked(settings_.other_model_beside()); };
    connect(&settings_, &settings::Settings::model_changed, beside, show);
    show();
}

void MainWindow::add_unit_systems(QMenu* view) {
    auto* systems = new QActionGroup(this);
    const auto add_system = [&](const QString& text, units::UnitSystem system) {
        QAction* action = add_action(view, text, {}, [this, system] { settings_.set_unit_system(system); });
        action->setCheckable(true);
        action->setChecked(settings_.unit_system() == system);
        systems->addAction(action);
    };
    add_system(tr("&Metric units"), units::UnitSystem::metric);
    add_system(tr("&Imperial units"), units::UnitSystem::imperial);
}

void MainWindow::build_help_menu() {
    QMenu* help = menuBar()->addMenu(tr("&Help"));
    add_action(help, tr("&Cautions"), {}, [this] { show_caution(); });
    add_action(help, tr("&Where the numbers come from"), QKeySequence::HelpContents, [this] {
        dialogs::TextDialog(tr("Where the numbers come from"), dialogs::numbers_text(), this).exec();
    });
    add_action(help, tr("&About Loopwright"), {},
               [this] { dialogs::TextDialog(tr("About Loopwright"), dialogs::about_text(), this).exec(); });
}

} // namespace loopwright::app
