// The group "Capacitor made by hand": plates or tubes by their dimensions, and the range that comes of them.
#include "base/error.hpp"
#include "design/made.hpp"
#include "models/chart_content.hpp"
#include "models/quantity_words.hpp"
#include "pages/build_specs.hpp"

#include <QCoreApplication>

#include <utility>

namespace loopwright::pages {

namespace {

using design::Design;
using design::MadeCapacitor;
using design::MadeKind;

struct BuildMade {
    Q_DECLARE_TR_FUNCTIONS(BuildMade)
};

bool is_made(const Design& d) {
    return d.capacitor.made.has_value();
}
bool is_plates(const Design& d) {
    return is_made(d) && d.capacitor.made->kind == MadeKind::plates;
}
bool is_trombone(const Design& d) {
    return is_made(d) && d.capacitor.made->kind == MadeKind::trombone;
}

using Applies = bool (*)(const Design&);

FieldWords made_words(const char* key, const QString& label, const QString& tooltip, Applies applies) {
    FieldWords words{std::string("capacitor.made.") + key, label, tooltip};
    words.applies = applies;
    words.spoken = BuildMade::tr("%1 of the capacitor made by hand").arg(label);
    return words;
}

/// A dimension changes the ends of the range that followed from the dimensions before.
template <class Change>
void change_made(Design& d, const Change& change) {
    if (d.capacitor.made) {
        const bool minimum = design::minimum_follows(d.capacitor);
        const bool maximum = design::maximum_follows(d.capacitor);
        change(*d.capacitor.made);
        design::follow_made(d.capacitor, minimum, maximum);
    }
}

QuantitySpec made_length(FieldWords words, units::Typed<units::Length> MadeCapacitor::*member) {
    QuantitySpec spec;
    spec.words = std::move(words);
    spec.kind = {units::Dimension::length};
    spec.get = [member](const Design& d) -> std::optional<inputs::Reading> {
        if (!d.capacitor.made) {
            return std::nullopt;
        }
        const auto& typed = (*d.capacitor.made).*member;
        return inputs::Reading{typed.value.value(), QString::fromStdString(typed.text)};
    };
    spec.set = [member](Design& d, double si, const std::string& text) {
        change_made(d, [&](MadeCapacitor& made) { made.*member = {units::metres(si), text}; });
    };
    return spec;
}

template <class Number>
QuantitySpec made_number(FieldWords words, Number MadeCapacitor::*member) {
    QuantitySpec spec;
    spec.words = std::move(words);
    spec.kind = {units::Dimension::number, std::is_integral_v<Number>};
    spec.get = [member](const Design& d) -> std::optional<inputs::Reading> {
        return d.capacitor.made ? std::optional<inputs::Reading>(
                                      {static_cast<double>((*d.capacitor.made).*member), QString()})
                                : std::nullopt;
    };
    spec.set = [member](Design& d, double value, const std::string& /*text*/) {
        change_made(d, [&](MadeCapacitor& made) { made.*member = static_cast<Number>(value); });
    };
    return spec;
}

ChoiceSpec made_choice() {
    ChoiceSpec spec;
    spec.words = {"capacitor.made", BuildMade::tr("Made by hand"),
                  BuildMade::tr("A capacitor of plates or tubes of your own making: minimum and maximum are "
                                "then computed from its dimensions, with the field at the edges.")};
    spec.options = [](const Design&) {
        return QStringList{BuildMade::tr("no"), BuildMade::tr("flat plates that slide"),
                           BuildMade::tr("tubes in tubes (trombone)")};
    };
    spec.get = [](const Design& d) {
        return d.capacitor.made ? 1 + static_cast<int>(d.capacitor.made->kind) : 0;
    };
    spec.set = [](Design& d, int index) {
        if (index == 0) {
            d.capacitor.made.reset();
            return;
        }
        MadeCapacitor made = d.capacitor.made.value_or(MadeCapacitor{});
        made.kind = static_cast<MadeKind>(index - 1);
        d.capacitor.made = made;
        design::follow_made(d.capacitor);
    };
    return spec;
}

CheckSpec follows_check() {
    CheckSpec spec;
    spec.words = {
        "capacitor.made.follows", BuildMade::tr("Range follows the dimensions"),
        BuildMade::tr("Off: minimum and maximum of the group Capacitor are your own, measured ones. "
                      "They must lie within 20 % of what the dimensions give.")};
    spec.words.applies = is_made;
    spec.get = [](const Design& d) {
        return design::minimum_follows(d.capacitor) && design::maximum_follows(d.capacitor);
    };
    spec.set = [](Design& d, bool on) {
        if (on) {
            design::follow_made(d.capacitor);
            return;
        }
        for (auto* end : {&d.capacitor.minimum, &d.capacitor.maximum}) {
            const double rounded_pF = models::plain_number(end->value.value() * 1e12, 4).toDouble();
            *end = {units::picofarads(rounded_pF), models::plain_number(rounded_pF, 4).toStdString() + " pF"};
        }
    };
    return spec;
}

QString end_words(const MadeCapacitor& made, units::Length overlap, const QString& pattern) {
    const capacitor::MadeCapacitance at = design::made_capacitance(made, overlap);
    const auto text = [](units::Capacitance one) {
        return models::measured_text(models::Measure::capacitance, one.value());
    };
    const QString words = pattern.arg(text(at.value), text(at.range.low), text(at.range.high));
    return at.established ? words : words + BuildMade::tr(", outside what the formulas hold for");
}

} // namespace

GroupSpec made_group() {
    GroupSpec group{"capacitor_made", BuildMade::tr("Capacitor made by hand"), {}};
    group.fields.emplace_back(made_choice());
    const auto length = [&](const char* key, const QString& label, const QString& tip, Applies applies,
                            units::Typed<units::Length> MadeCapacitor::*member) {
        group.fields.emplace_back(made_length(made_words(key, label, tip, applies), member));
    };
    const auto number = [&](const char* key, const QString& label, const QString& tip, Applies applies,
                            auto member, bool rare = false) {
        FieldWords words = made_words(key, label, tip, applies);
        words.rare = rare;
        group.fields.emplace_back(made_number(std::move(words), member));
    };
    length("width", BuildMade::tr("Width of the plates"), BuildMade::tr("Across the travel."), is_plates,
           &MadeCapacitor::width);
    length("spacing", BuildMade::tr("Air between plates"),
           BuildMade::tr("Between neighbouring faces. What the gap stands is entered in the group Capacitor: "
                         "it is not taken from here."),
           is_plates, &MadeCapacitor::spacing);
    length("thickness", BuildMade::tr("Thickness of a plate"), BuildMade::tr("Its edges add capacitance."),
           is_plates, &MadeCapacitor::thickness);
    number("plates", BuildMade::tr("Plates"), BuildMade::tr("In all, neighbours of opposite polarity."),
           is_plates, &MadeCapacitor::plates);
    length("inner_diameter", BuildMade::tr("Outside of the inner tube"), BuildMade::tr("Its diameter."),
           is_trombone, &MadeCapacitor::inner_diameter);
    length("outer_diameter", BuildMade::tr("Inside of the outer tube"), BuildMade::tr("Its diameter."),
           is_trombone, &MadeCapacitor::outer_diameter);
    number("pairs", BuildMade::tr("Pairs of tubes"),
           BuildMade::tr("In series; a trombone of one bow has two."), is_trombone, &MadeCapacitor::pairs);
    length("least_overlap", BuildMade::tr("Least overlap"),
           BuildMade::tr("Along the travel, pulled out: it gives the minimum."), is_made,
           &MadeCapacitor::least_overlap);
    length("most_overlap", BuildMade::tr("Most overlap"),
           BuildMade::tr("Along the travel, pushed in: it gives the maximum."), is_made,
           &MadeCapacitor::most_overlap);
    group.fields.emplace_back(follows_check());
    number("relative_permittivity", BuildMade::tr("Relative permittivity"),
           BuildMade::tr("Of what lies between; 1 is air."), is_made, &MadeCapacitor::relative_permittivity,
           true);
    return group;
}

QString made_range_words(const Design& d) {
    if (!d.capacitor.made) {
        return {};
    }
    const MadeCapacitor& made = *d.capacitor.made;
    try {
        QString words =
            BuildMade::tr("Computed: ") +
            end_words(made, made.least_overlap.value, BuildMade::tr("%1 pulled out (between %2 and %3)")) +
            QStringLiteral("; ") +
            end_words(made, made.most_overlap.value, BuildMade::tr("%1 pushed in (between %2 and %3)")) +
            QLatin1Char('.');
        if (!design::minimum_follows(d.capacitor) || !design::maximum_follows(d.capacitor)) {
            words +=
                BuildMade::tr(" Minimum and maximum are as entered: %1 to %2.")
                    .arg(models::short_text(d.capacitor.minimum), models::short_text(d.capacitor.maximum));
        }
        return words + BuildMade::tr(" Frame, leads and the loop's ends are not in it: enter them as stray.");
    } catch (const base::InputError& error) {
        return QString::fromUtf8(error.what());
    }
}

} // namespace loopwright::pages
