#pragma once
// May I press the key? What counts for it, a verdict a band with its reasons and the one thing that would
// mend each, distances by limit, what the capacitor carries, pictures to scale, tuning on the air.
#include "charts/figure.hpp"
#include "pages/context.hpp"

#include <QTimer>
#include <QWidget>

#include <memory>

class QLabel;
class QProgressBar;
class QPushButton;
class QSplitter;
class QVBoxLayout;

namespace loopwright::models {
class KeyingBoardModel;
} // namespace loopwright::models

namespace loopwright::pages {

class KeyingBoard;
class KeyingDetails;
class KeyingPictures;

class KeyingPage : public QWidget {
    Q_OBJECT
public:
    explicit KeyingPage(const Context& context, QWidget* parent = nullptr);
    ~KeyingPage() override;

    /// Of KeyingDetails::Group.
    void show_group(int group);
    [[nodiscard]] KeyingBoard& board() { return *board_; }
    [[nodiscard]] KeyingPictures& pictures();
    [[nodiscard]] const KeyingPictures& pictures() const;

Q_SIGNALS:
    void print_wanted();
    void pdf_wanted();
    void table_export_wanted();
    void figure_export_wanted(std::shared_ptr<const loopwright::charts::Figure> figure);

protected:
    void resizeEvent(QResizeEvent* event) override;

private:
    [[nodiscard]] QWidget* build_right();
    void build_head(QVBoxLayout& column);
    [[nodiscard]] QWidget* build_lower();
    void connect_context();
    void refresh();
    void show_band();
    void show_state();
    void share_height();
    void give_room();
    Context context_;
    models::KeyingBoardModel* model_;
    QLabel* conditions_;
    QLabel* state_;
    QProgressBar* progress_;
    QPushButton* stop_;
    QSplitter* across_;
    QSplitter* splitter_;
    KeyingBoard* board_;
    QLabel* reasons_;
    KeyingDetails* details_;
    QTimer stale_timer_;
    QString failure_;
};

} // namespace loopwright::pages
