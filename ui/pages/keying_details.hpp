#pragma once
// Details of the band in focus on the page Before keying, in tabs: pictures, distances by limit, what the
// capacitor's members carry, touch and heat, tuning on the air.
#include "charts/figure.hpp"
#include "pages/context.hpp"

#include <QWidget>

#include <memory>

class QLabel;
class QStackedWidget;
class QTabBar;

namespace loopwright::models {
class TextTableModel;
}

namespace loopwright::pages {

class KeyingPictures;

class KeyingDetails : public QWidget {
    Q_OBJECT
public:
    explicit KeyingDetails(const Context& context, QWidget* parent = nullptr);

    enum Group { around, distances, members, touch, tuning };
    void show_group(int group);
    [[nodiscard]] KeyingPictures& pictures() { return *pictures_; }
    [[nodiscard]] bool picture_enlarged() const;
    /// Null: there is no row of the band in focus.
    void show_band(const survey::KeyingBand* band, const design::Design& design);

Q_SIGNALS:
    void figure_export_wanted(std::shared_ptr<const loopwright::charts::Figure> figure);
    /// picture_enlarged() may have changed.
    void room_changed();

private:
    [[nodiscard]] QWidget* table_of(models::TextTableModel& model, const char* object, const QString& name,
                                    const QString& description, QLabel* words = nullptr);
    [[nodiscard]] QLabel* new_words(const char* object, const QString& name);
    void add_tab(QWidget* content, const QString& text, const QString& tip);
    Context context_;
    models::TextTableModel* distance_model_;
    models::TextTableModel* member_model_;
    models::TextTableModel* touch_model_;
    QLabel* touch_words_;
    QLabel* tuning_words_;
    QTabBar* tabs_;
    QStackedWidget* stack_;
    KeyingPictures* pictures_;
};

} // namespace loopwright::pages
