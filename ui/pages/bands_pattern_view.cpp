#include "pages/bands_pattern_view.hpp"

#include "charts/figure_widget.hpp"
#include "charts/polar_figure.hpp"
#include "inputs/choice_field.hpp"
#include "inputs/entry.hpp"
#include "jobs/pattern_job.hpp"
#include "models/headline.hpp"
#include "report/pattern.hpp"
#include "settings/measures.hpp"

#include <QHBoxLayout>
#include <QLabel>
#include <QVBoxLayout>

namespace loopwright::pages {

namespace {

constexpr int height_field_px = 88;
constexpr double full_turn = settings::most_dipole_turn_rad;
enum Wire { none, horizontal, vertical };

jobs::PatternJob& pattern_job(jobs::Job& job) {
    return static_cast<jobs::PatternJob&>(job);
}

} // namespace

PatternView::PatternView(const Context& context, QWidget* parent)
    : FocusedView(context, new jobs::PatternJob, parent), wire_(new inputs::ChoiceField(this)) {
    const settings::DipoleChoice kept = this->context().settings.dipole();
    request_.dipole = kept.dipole;
    height_m_ = kept.dipole.height.value();
    dipole_deg_rad_ = kept.dipole.azimuth.value();
    build_fields();
    auto* row = new QHBoxLayout;
    row->setSpacing(unit_px / 2);
    row->addWidget(add_figure(), 3);
    row->addWidget(add_figure(), 2);
    column().addLayout(row, 1);
    show_reason(tr("not computed yet"));
    connect(&this->context().settings, &settings::Settings::unit_system_changed, this,
            &PatternView::show_fields);
}

PatternView::~PatternView() = default;

void PatternView::build_fields() {
    auto* row = new QHBoxLayout;
    row->setSpacing(unit_px);
    auto* label = new QLabel(tr("Compare with a dipole:"), this);
    label->setBuddy(wire_);
    wire_->addItems({tr("none"), tr("horizontal"), tr("vertical")});
    const settings::DipoleChoice kept = context().settings.dipole();
    wire_->show_choice(!kept.compared         ? Wire::none
                       : kept.dipole.vertical ? Wire::vertical
                                              : Wire::horizontal);
    wire_->setAccessibleName(tr("Dipole to compare with"));
    wire_->setToolTip(tr("A half-wave dipole without losses over the same ground"));
    wire_->setObjectName(QStringLiteral("pattern.wire"));
    row->addWidget(label);
    row->addWidget(wire_);
    height_ =
        add_field(*row,
                  {"pattern.height", tr("up at"), tr("Height of the dipole"),
                   tr("Of the wire; of the lower end of a vertical dipole. No effect in free space."),
                   settings::lowest_dipole_m, settings::highest_dipole_m, tr("a height from 0.1 m to 100 m")},
                  units::Dimension::length, &height_m_);
    direction_ =
        add_field(*row,
                  {"pattern.direction", tr("runs toward"), tr("Direction of the dipole's wire"),
                   tr("Azimuth that a horizontal wire runs toward; it radiates best at right angles. "
                      "Azimuth 0 lies in the plane of a vertical loop."),
                   -full_turn, full_turn, tr("an angle from -360\u00b0 to 360\u00b0")},
                  units::Dimension::angle, &dipole_deg_rad_);
    row->addSpacing(2 * unit_px);
    static_cast<void>(add_field(*row,
                                {"pattern.azimuth", tr("Cut at a&zimuth"), tr("Azimuth of the elevation cut"),
                                 tr("The elevation chart shows this azimuth on its right. Azimuth 0 lies in "
                                    "the plane of a vertical loop, 90\u00b0 along its axis."),
                                 -full_turn, full_turn, tr("an angle from -360\u00b0 to 360\u00b0")},
                                units::Dimension::angle, &cut_rad_));
    row->addStretch(1);
    connect(wire_, &inputs::ChoiceField::chosen, this, [this] {
        show_fields();
        keep();
        want();
    });
    column().insertLayout(0, row);
    show_fields();
}

inputs::Entry* PatternView::add_field(QHBoxLayout& row, const Field& field, units::Dimension dimension,
                                      double* value) {
    auto* entry = new inputs::Entry({dimension}, field.where, this);
    entry->describe(field.name, field.tooltip);
    entry->field().setObjectName(QString::fromLatin1(field.where));
    entry->field().setMaximumWidth(height_field_px);
    entry->field().set_value(*value, {});
    auto* label = new QLabel(field.label, this);
    label->setBuddy(&entry->field());
    row.addWidget(label);
    row.addWidget(entry);
    connect(&entry->field(), &inputs::QuantityField::edited, this,
            [this, entry, value, field](double si, const QString& text) {
                if (!(si >= field.low && si <= field.high)) {
                    entry->field().refuse(tr("%1 is not accepted: %2").arg(text, field.accepted));
                    return;
                }
                *value = si;
                entry->field().set_value(si, text);
                keep();
                want();
            });
    return entry;
}

void PatternView::show_fields() {
    const int wire = wire_->currentIndex();
    height_->setEnabled(wire != Wire::none);
    direction_->setEnabled(wire == Wire::horizontal);
    height_->field().set_unit_system(context().settings.unit_system());
}

/// As the fields say it, for this run and the next.
void PatternView::keep() {
    settings::DipoleChoice choice = context().settings.dipole();
    choice.compared = wire_->currentIndex() != Wire::none;
    if (choice.compared) { // one that is switched off stays what it was
        choice.dipole.vertical = wire_->currentIndex() == Wire::vertical;
    }
    choice.dipole.height = units::metres(height_m_);
    choice.dipole.azimuth = units::radians(dipole_deg_rad_);
    context().settings.set_dipole(choice);
}

void PatternView::start() {
    const settings::DipoleChoice choice = context().settings.dipole();
    request_.azimuth = units::radians(cut_rad_);
    request_.dipole = choice.compared ? std::optional(choice.dipole) : std::nullopt;
    pattern_job(job()).start({context().document.design(), context().focus.frequency(), request_});
}

void PatternView::show_result() {
    const auto result = pattern_job(job()).result();
    if (!result->pattern) {
        QString why = tr("the model does not stand behind a number here");
        for (const base::Notice& notice : result->notices.worst_first()) {
            if (notice.severity == base::Severity::not_established) {
                why = QString::fromStdString(notice.text);
                break;
            }
        }
        show_reason(why);
        return;
    }
    const models::PatternPlot plot = models::pattern_plot(*result->pattern, result->request.design);
    figures()[0]->set_figure(std::make_shared<charts::PolarFigure>(plot, charts::PolarCut::elevation));
    figures()[1]->set_figure(std::make_shared<charts::PolarFigure>(plot, charts::PolarCut::azimuth));
    offer_table(true);
}

/// Both cuts, one below the other.
std::string PatternView::table() {
    const auto result = pattern_job(job()).result();
    return report::to_csv(report::pattern_data(
        {result->request.design, result->request.frequency, result->pattern, result->notices}));
}

QString PatternView::table_name() {
    return FocusedView::table_name(QStringLiteral("directions"),
                                   pattern_job(job()).result()->request.frequency);
}

void PatternView::show_reason(const QString& sentence) {
    const models::PatternPlot plot = models::no_pattern_plot(sentence);
    figures()[0]->set_figure(std::make_shared<charts::PolarFigure>(plot, charts::PolarCut::elevation));
    figures()[1]->set_figure(std::make_shared<charts::PolarFigure>(plot, charts::PolarCut::azimuth));
    offer_table(false);
}

} // namespace loopwright::pages
