#include "pages/keying_details.hpp"

#include "models/keying_tables.hpp"
#include "models/keying_words.hpp"
#include "models/text_table_model.hpp"
#include "models/touch_words.hpp"
#include "pages/keying_pictures.hpp"
#include "pages/plain_table.hpp"
#include "settings/measures.hpp"

#include <QLabel>
#include <QStackedWidget>
#include <QTabBar>
#include <QVBoxLayout>

namespace loopwright::pages {

KeyingDetails::KeyingDetails(const Context& context, QWidget* parent)
    : QWidget(parent), context_(context), distance_model_(new models::TextTableModel(this)),
      member_model_(new models::TextTableModel(this)), touch_model_(new models::TextTableModel(this)),
      touch_words_(new_words("keying.touch", tr("Touch, heat and exemption"))),
      tuning_words_(new_words("keying.tuning", tr("Tuning on the air"))), tabs_(new QTabBar(this)),
      stack_(new QStackedWidget(this)), pictures_(new KeyingPictures(context, this)) {
    auto* column = new QVBoxLayout(this);
    column->setContentsMargins(0, 0, 0, 0);
    column->setSpacing(unit_px / 2);
    tabs_->setAccessibleName(tr("Details of the band in focus"));
    tabs_->setDrawBase(false);
    tabs_->setExpanding(false);
    add_tab(pictures_, tr("Around the &loop"), tr("Outlines to scale, and the distance over power"));
    add_tab(table_of(*distance_model_, "keying.distances", tr("Distances by limit and tier"),
                     tr("One row a limit and tier of the band in focus")),
            tr("Distances &by limit"), tr("Every limit and tier with its interval"));
    add_tab(table_of(*member_model_, "keying.members", tr("Members of the capacitor"),
                     tr("One row a member, at the band in focus")),
            tr("&Members of the capacitor"), tr("Volts and amperes that each of them carries"));
    add_tab(table_of(*touch_model_, "keying.along", tr("Volts along the conductor"),
                     tr("From the capacitor to the middle of the conductor, at the band in focus"),
                     touch_words_),
            tr("To&uch and heat"),
            tr("Volts along the conductor, how warm parts become, and the exemption by radiated power"));
    auto* order = new QWidget(this);
    auto* order_column = new QVBoxLayout(order);
    order_column->addWidget(tuning_words_);
    order_column->addStretch(1);
    add_tab(order, tr("Tuning on the &air"), tr("The usual order, and the greatest tune-up power"));
    column->addWidget(tabs_);
    column->addWidget(stack_, 1);
    connect(tabs_, &QTabBar::currentChanged, this, &KeyingDetails::show_group);
    connect(pictures_, &FocusedView::export_wanted, this, &KeyingDetails::figure_export_wanted);
    connect(pictures_, &FocusedView::enlarged_changed, this, &KeyingDetails::room_changed);
}

QLabel* KeyingDetails::new_words(const char* object, const QString& name) {
    auto* words = new QLabel(this);
    words->setWordWrap(true);
    words->setTextInteractionFlags(Qt::TextSelectableByMouse);
    words->setObjectName(QLatin1String(object));
    words->setAccessibleName(name);
    return words;
}

QWidget* KeyingDetails::table_of(models::TextTableModel& model, const char* object, const QString& name,
                                 const QString& description, QLabel* words) {
    auto* table = new PlainTable(model, name, description, this);
    table->setObjectName(QLatin1String(object));
    if (words == nullptr) {
        return table;
    }
    auto* group = new QWidget(this);
    auto* column = new QVBoxLayout(group);
    column->setContentsMargins(0, 0, 0, 0);
    column->setSpacing(unit_px / 2);
    column->addWidget(words);
    column->addWidget(table, 1);
    return group;
}

void KeyingDetails::add_tab(QWidget* content, const QString& text, const QString& tip) {
    tabs_->setTabToolTip(tabs_->addTab(text), tip);
    stack_->addWidget(content);
}

void KeyingDetails::show_group(int group) {
    tabs_->setCurrentIndex(group);
    stack_->setCurrentIndex(group);
    Q_EMIT room_changed();
}

bool KeyingDetails::picture_enlarged() const {
    return stack_->currentIndex() == around && pictures_->enlarged() >= 0;
}

void KeyingDetails::show_band(const survey::KeyingBand* band, const design::Design& design) {
    const units::UnitSystem system = context_.settings.unit_system();
    tuning_words_->setText(models::tuning_lines(band, design).join(QLatin1Char('\n')));
    if (band == nullptr) {
        for (models::TextTableModel* table : {distance_model_, member_model_, touch_model_}) {
            table->set_table({});
        }
        touch_words_->clear();
        return;
    }
    distance_model_->set_table(models::distance_table(*band, design, system));
    member_model_->set_table(models::member_table(*band));
    touch_model_->set_table(models::touch_table(*band, design, system));
    touch_words_->setText(models::touch_lines(*band, design).join(QLatin1Char('\n')));
}

} // namespace loopwright::pages
