// The group "Capacitor": range, rating, loss.
#include "pages/build_specs.hpp"
#include "pages/capacitor_catalog.hpp"

#include <QCoreApplication>

#include <utility>

namespace loopwright::pages {

namespace {

using design::CapacitorLoss;
using design::Design;

struct BuildCapacitor {
    Q_DECLARE_TR_FUNCTIONS(BuildCapacitor)
};

/// How the loss is given, in the order offered.
enum class LossAs { not_given, q, resistance };

LossAs loss_as(const Design& d) {
    const CapacitorLoss& loss = d.capacitor.loss;
    return loss.q ? LossAs::q : loss.series_resistance ? LossAs::resistance : LossAs::not_given;
}

/// What a field starts with when its way of giving the loss is chosen: common practice for an air variable.
constexpr double first_q = 1000;
constexpr double first_resistance_ohm = 0.05;

/// A capacitor of the catalog with what the person has beside it and on its shaft.
design::Capacitor with_own_parts(design::Capacitor kind, const design::Capacitor& own) {
    kind.added = own.added;
    kind.dial = own.dial;
    return kind;
}

/// All values of the capacitor at once, from the catalog; changing one of them afterwards makes it one's own.
ChoiceSpec catalog_choice() {
    ChoiceSpec spec;
    spec.words = {
        "capacitor", BuildCapacitor::tr("Capacitor &kind"),
        BuildCapacitor::tr("Fills in the values of a usual kind of capacitor: invented examples of the right "
                           "order, to be replaced by those of your own.")};
    spec.options = [](const Design&) {
        QStringList names{BuildCapacitor::tr("own values")};
        for (const auto& entry : capacitor_catalog()) {
            names << QString::fromStdString(entry.name);
        }
        return names;
    };
    spec.get = [](const Design& d) {
        const auto& all = capacitor_catalog();
        for (std::size_t i = 0; i < all.size(); ++i) {
            if (with_own_parts(all[i].capacitor, d.capacitor) == d.capacitor) {
                return static_cast<int>(i) + 1;
            }
        }
        return 0;
    };
    spec.set = [](Design& d, int index) {
        if (index > 0) {
            const auto& entry = capacitor_catalog().at(static_cast<std::size_t>(index) - 1);
            d.capacitor = with_own_parts(entry.capacitor, d.capacitor);
        }
    };
    return spec;
}

ChoiceSpec loss_choice() {
    ChoiceSpec spec;
    spec.words = {
        "capacitor.loss", BuildCapacitor::tr("Loss given as"),
        BuildCapacitor::tr("How the capacitor's own loss is known. Not given: a usual value for its class is "
                           "taken, and a notice says so.")};
    spec.options = [](const Design&) {
        return QStringList{BuildCapacitor::tr("not given"), BuildCapacitor::tr("Q"),
                           BuildCapacitor::tr("series resistance")};
    };
    spec.get = [](const Design& d) { return static_cast<int>(loss_as(d)); };
    spec.set = [](Design& d, int index) {
        CapacitorLoss& loss = d.capacitor.loss;
        const CapacitorLoss before = loss;
        loss = {};
        if (static_cast<LossAs>(index) == LossAs::q) {
            loss.q = before.q.value_or(first_q);
        } else if (static_cast<LossAs>(index) == LossAs::resistance) {
            loss.series_resistance = before.series_resistance.value_or(units::ohms(first_resistance_ohm));
        }
    };
    return spec;
}

QuantitySpec q_field() {
    QuantitySpec spec;
    spec.words = {"capacitor.loss.q", BuildCapacitor::tr("Capacitor Q"),
                  BuildCapacitor::tr("Q of the capacitor with its stray capacitance, contacts left out."),
                  false, [](const Design& d) { return loss_as(d) == LossAs::q; }};
    spec.get = [](const Design& d) {
        return d.capacitor.loss.q ? std::optional<inputs::Reading>({*d.capacitor.loss.q, {}}) : std::nullopt;
    };
    spec.set = [](Design& d, double q, const std::string& /*text*/) { d.capacitor.loss.q = q; };
    return spec;
}

std::vector<QuantitySpec> resistance_fields() {
    const auto by_resistance = [](const Design& d) { return loss_as(d) == LossAs::resistance; };
    QuantitySpec resistance = optional_quantity(
        {"capacitor.loss.series_resistance", BuildCapacitor::tr("Series resistance"),
         BuildCapacitor::tr("Loss of the capacitor as a resistance in series, at the frequency below.")},
        {}, [](auto& d) -> auto& { return d.capacitor.loss.series_resistance; });
    resistance.unset = nullptr;
    resistance.words.applies = by_resistance;
    FieldWords at{"capacitor.loss.at", BuildCapacitor::tr("at"),
                  BuildCapacitor::tr("The frequency that the series resistance was measured at.")};
    FieldWords exponent{
        "capacitor.loss.exponent", BuildCapacitor::tr("rising with frequency to the power"),
        BuildCapacitor::tr("0.5 for metal that the skin effect rules; 0 for one that does not "
                           "change.")};
    at.applies = exponent.applies = by_resistance;
    exponent.rare = true;
    return {resistance,
            typed_quantity(
                at, [](auto& d) -> auto& { return d.capacitor.loss.at; }),
            plain_number(
                exponent, [](auto& d) -> auto& { return d.capacitor.loss.exponent; })};
}

std::vector<QuantitySpec> range_fields() {
    return {typed_quantity(
                {"capacitor.minimum", BuildCapacitor::tr("M&inimum"),
                 BuildCapacitor::tr("Least capacitance, fully open. It sets the highest frequency.")},
                [](auto& d) -> auto& { return d.capacitor.minimum; }),
            typed_quantity(
                {"capacitor.maximum", BuildCapacitor::tr("Maximum"),
                 BuildCapacitor::tr("Greatest capacitance, fully closed. It sets the lowest frequency.")},
                [](auto& d) -> auto& { return d.capacitor.maximum; }),
            typed_quantity(
                {"capacitor.stray", BuildCapacitor::tr("Stray"),
                 BuildCapacitor::tr("Capacitance of mounting and wiring beside the capacitor; added to "
                                    "minimum and maximum."),
                 true},
                [](auto& d) -> auto& { return d.capacitor.stray; })};
}

} // namespace

GroupSpec capacitor_group() {
    GroupSpec group{"capacitor", BuildCapacitor::tr("Capacitor"), {}};
    group.fields.emplace_back(catalog_choice());
    for (QuantitySpec& spec : range_fields()) {
        group.fields.emplace_back(std::move(spec));
    }
    for (FieldSpec& spec : rating_fields()) {
        group.fields.push_back(std::move(spec));
    }
    group.fields.emplace_back(loss_choice());
    group.fields.emplace_back(q_field());
    for (QuantitySpec& spec : resistance_fields()) {
        group.fields.emplace_back(std::move(spec));
    }
    group.fields.emplace_back(typed_quantity(
        {"capacitor.contact_resistance", BuildCapacitor::tr("Contact resistance"),
         BuildCapacitor::tr("Wipers, bearings and screws that carry the loop's full current. A few "
                            "milliohm here can cost half the power."),
         true},
        [](auto& d) -> auto& { return d.capacitor.contact_resistance; }));
    return group;
}

} // namespace loopwright::pages
