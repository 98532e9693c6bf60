#pragma once
// Where do I set the dial? The live view of one frequency, the calibration, the radio, and the whole card.
#include "charts/figure.hpp"
#include "jobs/dial_job.hpp"
#include "pages/context.hpp"

#include <QTimer>
#include <QWidget>

#include <memory>

class QLabel;
class QSplitter;
class QVBoxLayout;

namespace loopwright::pages {

class RetuneCard;
class RetuneForm;
class RetuneView;

class RetunePage : public QWidget {
    Q_OBJECT
public:
    explicit RetunePage(const Context& context, QWidget* parent = nullptr);
    ~RetunePage() override;

    [[nodiscard]] RetuneForm& form() { return *form_; }
    [[nodiscard]] RetuneView& view() { return *view_; }
    [[nodiscard]] RetuneCard& card() { return *card_; }
    [[nodiscard]] jobs::DialJob& dial() { return dial_; }

Q_SIGNALS:
    void figure_export_wanted(std::shared_ptr<const loopwright::charts::Figure> figure);

protected:
    void showEvent(QShowEvent* event) override;

private:
    [[nodiscard]] QWidget* build_right();
    void start();
    void start_dial();
    void show_state();
    Context context_;
    jobs::DialJob dial_;
    QSplitter* across_;
    QLabel* state_;
    RetuneForm* form_;
    RetuneView* view_ = nullptr;
    RetuneCard* card_ = nullptr;
    QTimer stale_timer_;
    QString failure_;
    bool due_ = true; ///< something changed while the page was not seen
};

} // namespace loopwright::pages
