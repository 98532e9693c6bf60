#pragma once
// The window: the hazard strip above the pages, menus, and what ties document, surveys and pages together.
#include "app/file_actions.hpp"
#include "pages/context.hpp"

#include <QMainWindow>
#include <QTimer>

class QAction;
class QMenu;
class QTabWidget;

namespace loopwright::dialogs {
class ExplanationDialog;
}
namespace loopwright::pages {
class BandsPage;
class BuildPage;
class KeyingPage;
class RetunePage;
} // namespace loopwright::pages

namespace loopwright::app {

class BandsActions;
class KeyingActions;
class RetuneActions;

class MainWindow : public QMainWindow {
    Q_OBJECT
public:
    /// recovery_folder: where copies of unsaved work go; empty: none are written.
    MainWindow(settings::Settings& settings, const QString& recovery_folder, QWidget* parent = nullptr);
    ~MainWindow() override;

    [[nodiscard]] session::Document& document() { return document_; }
    [[nodiscard]] session::Focus& focus() { return focus_; }
    [[nodiscard]] FileActions& files() { return *files_; }
    [[nodiscard]] jobs::SurveyJob& survey() { return survey_; }
    [[nodiscard]] jobs::PointJob& point() { return point_; }
    [[nodiscard]] pages::BandsPage& bands() { return *bands_; }
    [[nodiscard]] jobs::KeyingJob& keying() { return keying_job_; }
    [[nodiscard]] pages::KeyingPage& keying_page() { return *keying_; }
    [[nodiscard]] pages::RetunePage& retune() { return *retune_; }
    [[nodiscard]] QTabWidget& pages() { return *pages_; }

    /// Caution, recovery, and what to start with; file: the one named on the command line, or empty.
    void begin(const QString& file);

protected:
    bool event(QEvent* event) override;
    void closeEvent(QCloseEvent* event) override;

private:
    void build_pages();
    void build_menus();
    void build_file_menu();
    void build_edit_menu();
    void build_view_menu();
    void add_unit_systems(QMenu* view);
    void add_models(QMenu* view);
    void build_help_menu();
    void on_shown_page(void (BandsActions::*design)(), void (KeyingActions::*before_keying)(),
                       void (RetuneActions::*card)());
    void fill_samples(QMenu* menu);
    void fill_recent(QMenu* menu);
    void connect_session();
    void start_computing();
    void start_survey();
    void start_point();
    void start_keying();
    void keying_in_turn();
    void start_comparison();
    void choose_focus();
    void show_title();
    void show_caution();
    void show_explanation(const QString& key);
    void refresh_explanation();
    void add_page(QWidget* page, const QString& name);
    QAction* add_action(QMenu* menu, const QString& text, const QKeySequence& keys,
                        const std::function<void()>& work);

    settings::Settings& settings_;
    session::Document document_;
    session::Focus focus_;
    session::Comparison comparison_;
    jobs::SurveyJob survey_;
    jobs::PointJob point_;
    jobs::SurveyJob compared_survey_;
    jobs::KeyingJob keying_job_;
    pages::Context context_;
    QString recovery_folder_;
    FileActions* files_;
    QTabWidget* pages_;
    pages::BuildPage* build_ = nullptr;
    dialogs::ExplanationDialog* explanation_ = nullptr; ///< made when first asked for
    pages::BandsPage* bands_ = nullptr;
    BandsActions* bands_actions_ = nullptr;
    pages::KeyingPage* keying_ = nullptr;
    KeyingActions* keying_actions_ = nullptr;
    pages::RetunePage* retune_ = nullptr;
    RetuneActions* retune_actions_ = nullptr;
    bool keying_due_ = false; ///< when the survey is done
    QTimer keying_pause_;
    bool focus_to_choose_ = true;
};

} // namespace loopwright::app
