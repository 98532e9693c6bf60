#include "pages/headline_panel.hpp"

#include "band/band.hpp"
#include "base/error.hpp"
#include "inputs/choice_field.hpp"
#include "inputs/entry.hpp"
#include "models/quantity_words.hpp"
#include "pages/refusal.hpp"
#include "pages/standing.hpp"

#include <QGridLayout>
#include <QHBoxLayout>
#include <QLabel>
#include <QToolButton>
#include <QVBoxLayout>

namespace loopwright::pages {

namespace {

constexpr int unit_px = 8;
constexpr double vswr_limit = 2.0;
constexpr double value_size = 1.25; ///< against the usual font
/// Rows of the grid that one number takes: the number, its conditions.
constexpr int rows_a_line = 2;

QFont value_font(const QWidget& widget) {
    QFont font = widget.font();
    font.setPointSizeF(font.pointSizeF() * value_size);
    font.setBold(true);
    return font;
}

} // namespace

HeadlinePanel::HeadlinePanel(const Context& context, QWidget* parent)
    : QWidget(parent), context_(context),
      frequency_(new inputs::Entry({units::Dimension::frequency}, "frequency", this)),
      band_(new inputs::ChoiceField(this)), grid_(new QGridLayout), model_name_(new QLabel(this)),
      notices_(new QLabel(this)) {
    auto* column = new QVBoxLayout(this);
    column->setContentsMargins(unit_px, unit_px, unit_px, unit_px);
    column->setSpacing(unit_px);
    build_focus_row(column);
    model_name_->setWordWrap(true);
    model_name_->setForegroundRole(QPalette::PlaceholderText);
    column->addWidget(model_name_);
    grid_->setHorizontalSpacing(unit_px);
    grid_->setVerticalSpacing(0);
    grid_->setColumnStretch(0, 1);
    column->addLayout(grid_);
    notices_->setWordWrap(true);
    notices_->setTextFormat(Qt::PlainText);
    notices_->setTextInteractionFlags(Qt::TextSelectableByMouse);
    notices_->setAccessibleName(tr("Notices"));
    column->addWidget(notices_);
    column->addStretch();
    connect(&context_.document, &session::Document::design_changed, this, &HeadlinePanel::prepare_model);
    connect(&context_.settings, &settings::Settings::unit_system_changed, this, &HeadlinePanel::refreshed);
    connect(&context_.focus, &session::Focus::changed, this, [this] {
        refresh_focus();
        refresh();
    });
    refresh_focus();
    prepare_model();
}

void HeadlinePanel::build_focus_row(QVBoxLayout* column) {
    auto* row = new QHBoxLayout;
    row->setSpacing(unit_px);
    auto* label = new QLabel(tr("Fre&quency"), this);
    inputs::QuantityField& field = frequency_->field();
    label->setBuddy(&field);
    field.setObjectName(QStringLiteral("focus.frequency"));
    frequency_->describe(tr("Frequency in focus"),
                         tr("The one frequency that the whole window looks at. Type any, or pick a band."));
    band_->setAccessibleName(tr("Band in focus"));
    band_->setToolTip(tr("Look at the usual working frequency of a band."));
    band_->setObjectName(QStringLiteral("focus.band"));
    row->addWidget(label);
    row->addWidget(frequency_, 1);
    row->addWidget(band_);
    column->addLayout(row);
    connect(&field, &inputs::QuantityField::edited, this, &HeadlinePanel::take_frequency);
    connect(band_, &inputs::ChoiceField::chosen, this,
            [this](int index) { context_.focus.set_band(band_->itemData(index).toString()); });
}

void HeadlinePanel::take_frequency(double hertz) {
    try {
        if (model_) { // it knows which frequencies it takes
            (void)model_->at(units::hertz(hertz), context_.document.design().station.power.value, vswr_limit);
        }
        context_.focus.set_frequency(units::hertz(hertz));
    } catch (const base::InputError& error) {
        frequency_->field().refuse(refusal_sentence(error));
    }
}

void HeadlinePanel::refresh_focus() {
    const int region = context_.focus.region();
    band_->clear();
    for (const band::Band& band : band::bands_of(region)) {
        const QString name = QString::fromStdString(band.name);
        band_->addItem(name, name);
    }
    band_->addItem(tr("between bands"), QString());
    band_->show_choice(band_->findData(context_.focus.band()));
    const units::Frequency frequency = context_.focus.frequency();
    frequency_->field().set_value(frequency.value(), {});
}

void HeadlinePanel::prepare_model() {
    context_.focus.set_region(context_.document.design().station.region);
    try {
        model_ = loop::make_model(context_.document.design(), loop::Model::closed_form);
    } catch (const base::InputError&) {
        model_.reset(); // the document holds only designs that can be; a model may be stricter
    }
    refresh_focus();
    refresh();
}

void HeadlinePanel::refresh() {
    point_.reset();
    if (model_) {
        try {
            point_ = model_->at(context_.focus.frequency(), context_.document.design().station.power.value,
                                vswr_limit);
        } catch (const base::InputError&) {
            point_.reset();
        }
    }
    model_name_->setText(tr("Closed form, in free space, at %1")
                             .arg(models::short_text(context_.document.design().station.power)));
    const auto headlines =
        models::headlines(point_.value_or(loop::OperatingPoint{}), context_.document.design());
    while (lines_.size() < headlines.size()) {
        add_line();
    }
    for (std::size_t i = 0; i < headlines.size(); ++i) {
        show_line(i, headlines[i]);
    }
    show_notices();
    Q_EMIT refreshed();
}

void HeadlinePanel::add_line() {
    Line line{new QLabel(this), new QLabel(this), new QLabel(this), new QToolButton(this)};
    line.value->setFont(value_font(*this));
    line.value->setAlignment(Qt::AlignRight | Qt::AlignVCenter);
    line.value->setTextInteractionFlags(Qt::TextSelectableByMouse);
    line.remark->setWordWrap(true);
    line.remark->setContentsMargins(0, 0, 0, unit_px);
    line.why->setText(tr("?"));
    line.why->setAutoRaise(true);
    line.why->setFocusPolicy(Qt::StrongFocus);
    const int row = static_cast<int>(lines_.size()) * rows_a_line;
    grid_->addWidget(line.label, row, 0);
    grid_->addWidget(line.value, row, 1);
    grid_->addWidget(line.why, row, 2);
    grid_->addWidget(line.remark, row + 1, 0, 1, 3);
    connect(line.why, &QToolButton::clicked, this,
            [this, why = line.why] { Q_EMIT explanation_wanted(why->objectName()); });
    lines_.push_back(line);
}

void HeadlinePanel::show_line(std::size_t index, const models::Headline& headline) {
    const Line& line = lines_.at(index);
    line.label->setText(headline.label);
    line.value->setText(headline.value);
    line.value->setAccessibleName(headline.label);
    line.value->setToolTip(headline.reason);
    line.value->setObjectName(QStringLiteral("value.") + headline.id);
    QFont font = value_font(*this);
    font.setBold(headline.established);
    line.value->setFont(font);
    line.remark->setText(standing_mark(headline.standing) + headline.remark);
    line.remark->setToolTip(headline.reason);
    line.remark->setVisible(!headline.remark.isEmpty());
    line.why->setObjectName(headline.id);
    line.why->setAccessibleName(tr("Where does %1 come from").arg(headline.label));
    line.why->setToolTip(tr("Where does this number come from: formula, parts, source, range"));
}

void HeadlinePanel::show_notices() {
    QStringList texts;
    if (point_) {
        for (const base::Notice& notice : point_->notices.worst_first()) {
            texts << severity_mark(notice.severity) + QString::fromStdString(notice.text);
        }
    }
    notices_->setText(texts.join(QLatin1Char('\n')));
}

} // namespace loopwright::pages
