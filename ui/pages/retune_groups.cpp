// The group "Dial" of the page Retune: how the scale goes, what a hand can set, how temperature moves it.
#include "pages/build_specs.hpp"

#include <QCoreApplication>

#include <utility>

namespace loopwright::pages {

namespace {

using design::Design;
using design::Dial;
using design::DialLaw;

struct RetuneGroups {
    Q_DECLARE_TR_FUNCTIONS(RetuneGroups)
};

bool has_dial(const Design& d) {
    return d.capacitor.dial.has_value();
}

bool has_stops(const Design& d) {
    return has_dial(d) && d.capacitor.dial->law != DialLaw::table;
}

/// A table starts with what the stops say, or it could not be one.
void begin_table(design::Capacitor& capacitor) {
    Dial& dial = *capacitor.dial;
    if (dial.table.size() < 2) {
        dial.table = {{dial.at_minimum, capacitor.minimum}, {dial.at_maximum, capacitor.maximum}};
    }
}

ChoiceSpec law_choice() {
    ChoiceSpec spec;
    spec.words = {
        "capacitor.dial.law", RetuneGroups::tr("The scale is"),
        RetuneGroups::tr("How the capacitance follows the dial from stop to stop. Most half-round plates "
                         "are straight-line capacitance; a vacuum capacitor or a trombone is too, in "
                         "turns or along its travel.")};
    spec.options = [](const Design&) {
        return QStringList{RetuneGroups::tr("not given"), RetuneGroups::tr("straight-line capacitance"),
                           RetuneGroups::tr("straight-line frequency"),
                           RetuneGroups::tr("straight-line wavelength"), RetuneGroups::tr("measured table")};
    };
    spec.get = [](const Design& d) { return has_dial(d) ? static_cast<int>(d.capacitor.dial->law) + 1 : 0; };
    spec.set = [](Design& d, int index) {
        if (index == 0) {
            d.capacitor.dial.reset();
            return;
        }
        Dial dial = d.capacitor.dial.value_or(Dial{});
        dial.law = static_cast<DialLaw>(index - 1);
        d.capacitor.dial = dial;
        if (dial.law == DialLaw::table) {
            begin_table(d.capacitor);
        }
    };
    return spec;
}

ChoiceSpec scale_choice() {
    ChoiceSpec spec;
    spec.words = {"capacitor.dial.scale", RetuneGroups::tr("Marked in"),
                  RetuneGroups::tr("What the scale counts."), false, has_dial};
    spec.options = [](const Design&) {
        return QStringList{RetuneGroups::tr("degrees"), RetuneGroups::tr("turns"),
                           RetuneGroups::tr("divisions")};
    };
    spec.get = [](const Design& d) { return has_dial(d) ? static_cast<int>(d.capacitor.dial->scale) : -1; };
    spec.set = [](Design& d, int index) {
        if (d.capacitor.dial) {
            d.capacitor.dial->scale = static_cast<design::DialScale>(index);
        }
    };
    return spec;
}

QuantitySpec dial_number(FieldWords words, double Dial::*member, bool (*applies)(const Design&)) {
    QuantitySpec spec;
    spec.words = std::move(words);
    spec.words.applies = applies;
    spec.kind = {units::Dimension::number};
    spec.get = [member](const Design& d) -> std::optional<inputs::Reading> {
        if (!d.capacitor.dial) {
            return std::nullopt;
        }
        return inputs::Reading{(*d.capacitor.dial).*member, {}};
    };
    spec.set = [member](Design& d, double value, const std::string& /*text*/) {
        if (d.capacitor.dial) {
            (*d.capacitor.dial).*member = value;
        }
    };
    return spec;
}

} // namespace

GroupSpec retune_dial_group() {
    GroupSpec group{"retune_dial", RetuneGroups::tr("Dial"), {}};
    group.fields.emplace_back(law_choice());
    group.fields.emplace_back(scale_choice());
    group.fields.emplace_back(
        dial_number({"capacitor.dial.at_minimum", RetuneGroups::tr("Reads, open"),
                     RetuneGroups::tr("What the scale shows at the stop of least capacitance.")},
                    &Dial::at_minimum, has_stops));
    group.fields.emplace_back(dial_number(
        {"capacitor.dial.at_maximum", RetuneGroups::tr("Reads, closed"),
         RetuneGroups::tr(
             "What the scale shows at the stop of most capacitance. It may be the smaller number.")},
        &Dial::at_maximum, has_stops));
    group.fields.emplace_back(dial_number(
        {"capacitor.dial.hand_step", RetuneGroups::tr("Hand sets to"),
         RetuneGroups::tr(
             "The smallest change of the reading that a hand can set, with no reduction drive; in "
             "marks of the scale.")},
        &Dial::hand_step, has_dial));
    group.fields.emplace_back(dial_number(
        {"capacitor.dial.reduction", RetuneGroups::tr("Reduction"),
         RetuneGroups::tr("Turns of the knob for one of the shaft: 6 for a 6:1 drive, 1 for none.")},
        &Dial::reduction, has_dial));
    group.fields.emplace_back(dial_number(
        {"capacitor.dial.backlash", RetuneGroups::tr("Backlash"),
         RetuneGroups::tr(
             "Change of the reading that is lost when the direction is turned round. Coming to every "
             "setting from the same side avoids it.")},
        &Dial::backlash, has_dial));
    QuantitySpec drift = optional_quantity(
        {"capacitor.temperature_coefficient", RetuneGroups::tr("Drift with heat"),
         RetuneGroups::tr(
             "Relative change of the variable capacitor's capacitance for a kelvin, as 50 ppm/K. "
             "Not given: taken as none, and said where it counts."),
         true},
        RetuneGroups::tr("not given"), [](auto& d) -> auto& { return d.capacitor.temperature_coefficient; });
    group.fields.emplace_back(std::move(drift));
    return group;
}

} // namespace loopwright::pages
