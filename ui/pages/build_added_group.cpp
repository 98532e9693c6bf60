// The fields of one fixed capacitor beside the variable one.
#include "band/band.hpp"
#include "base/error.hpp"
#include "pages/build_specs.hpp"

#include <QCoreApplication>
#include <QRegularExpression>

#include <algorithm>
#include <utility>

namespace loopwright::pages {

namespace {

using design::AddedCapacitor;
using design::Design;

struct BuildAdded {
    Q_DECLARE_TR_FUNCTIONS(BuildAdded)
};

/// One of the design's fixed capacitors; null where there is none of that index (any more).
const AddedCapacitor* at(const Design& d, std::size_t index) {
    return index < d.capacitor.added.size() ? &d.capacitor.added[index] : nullptr;
}
AddedCapacitor* at(Design& d, std::size_t index) {
    return index < d.capacitor.added.size() ? &d.capacitor.added[index] : nullptr;
}

FieldWords words_of(std::size_t index, const char* key, const QString& label, const QString& tooltip,
                    bool rare = false) {
    FieldWords words{"capacitor.added[" + std::to_string(index) + "]." + key, label, tooltip, rare};
    words.spoken = BuildAdded::tr("%1 of fixed capacitor %2").arg(label).arg(index + 1);
    return words;
}

template <class Quantity>
QuantitySpec optional_part(FieldWords words, std::size_t index,
                           std::optional<units::Typed<Quantity>> AddedCapacitor::*member) {
    QuantitySpec spec;
    spec.words = std::move(words);
    spec.kind = {units::DimensionOf<Quantity>::value};
    spec.placeholder = BuildAdded::tr("not given");
    spec.get = [index, member](const Design& d) -> std::optional<inputs::Reading> {
        const AddedCapacitor* each = at(d, index);
        if (each == nullptr || !(each->*member)) {
            return std::nullopt;
        }
        const auto& typed = *(each->*member);
        return inputs::Reading{typed.value.value(), QString::fromStdString(typed.text)};
    };
    spec.set = [index, member](Design& d, double si, const std::string& text) {
        if (AddedCapacitor* each = at(d, index)) {
            each->*member = units::Typed<Quantity>(Quantity::from_value(si), text);
        }
    };
    spec.unset = [index, member](Design& d) {
        if (AddedCapacitor* each = at(d, index)) {
            (each->*member).reset();
        }
    };
    return spec;
}

QuantitySpec capacitance_field(std::size_t index) {
    QuantitySpec spec;
    spec.words = words_of(index, "capacitance", BuildAdded::tr("Capacitance"),
                          BuildAdded::tr("Of this fixed capacitor, as it is marked."));
    spec.kind = {units::Dimension::capacitance};
    spec.get = [index](const Design& d) -> std::optional<inputs::Reading> {
        const AddedCapacitor* each = at(d, index);
        return each == nullptr
                   ? std::nullopt
                   : std::optional<inputs::Reading>(
                         {each->capacitance.value.value(), QString::fromStdString(each->capacitance.text)});
    };
    spec.set = [index](Design& d, double si, const std::string& text) {
        if (AddedCapacitor* each = at(d, index)) {
            each->capacitance = {units::farads(si), text};
        }
    };
    return spec;
}

ChoiceSpec connection_choice(std::size_t index) {
    ChoiceSpec spec;
    spec.words = words_of(index, "connection", BuildAdded::tr("Connected"),
                          BuildAdded::tr("Across the loop's ends it adds its capacitance and reaches lower "
                                         "bands; in series with the variable one it narrows the range and "
                                         "takes a share of the voltage."));
    spec.options = [](const Design&) {
        return QStringList{BuildAdded::tr("across the loop's ends"),
                           BuildAdded::tr("in series with the variable one")};
    };
    spec.get = [index](const Design& d) {
        const AddedCapacitor* each = at(d, index);
        return each == nullptr ? -1 : static_cast<int>(each->connection);
    };
    spec.set = [index](Design& d, int choice) {
        if (AddedCapacitor* each = at(d, index)) {
            each->connection = static_cast<design::AddedConnection>(choice);
        }
    };
    return spec;
}

QuantitySpec added_q_field(std::size_t index) {
    QuantitySpec spec;
    spec.words = words_of(index, "q", BuildAdded::tr("Q"),
                          BuildAdded::tr("Of this fixed capacitor at the frequencies in use. Not given: a "
                                         "usual value is taken, and a notice says so."));
    spec.placeholder = BuildAdded::tr("not given");
    spec.get = [index](const Design& d) -> std::optional<inputs::Reading> {
        const AddedCapacitor* each = at(d, index);
        return each == nullptr || !each->q ? std::nullopt : std::optional<inputs::Reading>({*each->q, {}});
    };
    spec.set = [index](Design& d, double q, const std::string& /*text*/) {
        if (AddedCapacitor* each = at(d, index)) {
            each->q = q;
        }
    };
    spec.unset = [index](Design& d) {
        if (AddedCapacitor* each = at(d, index)) {
            each->q.reset();
        }
    };
    return spec;
}

/// "80m, 40m" as the names the design file has; every one has to be a band of the region.
std::vector<std::string> bands_in(const QString& text, int region, const std::string& where) {
    std::vector<std::string> bands;
    static const QRegularExpression between(QStringLiteral("[\\s,;]+"));
    for (const QString& word : text.split(between, Qt::SkipEmptyParts)) {
        const auto band = band::find_band(region, word.toStdString());
        if (!band) {
            QStringList names;
            for (const std::string& name : band::band_names(region)) {
                names << QString::fromStdString(name);
            }
            throw base::InputError(where, word.toStdString(),
                                   BuildAdded::tr("names of bands (%1), or nothing for always")
                                       .arg(names.join(QStringLiteral(", ")))
                                       .toStdString());
        }
        if (std::find(bands.begin(), bands.end(), band->name) == bands.end()) {
            bands.push_back(band->name);
        }
    }
    return bands;
}

TextSpec bands_field(std::size_t index) {
    TextSpec spec;
    spec.words = words_of(index, "bands", BuildAdded::tr("Fitted on"),
                          BuildAdded::tr("The bands that this capacitor is plugged or switched in for, as "
                                         "“80m 60m”. Empty: it is always there."));
    spec.placeholder = BuildAdded::tr("all bands");
    spec.get = [index](const Design& d) {
        QStringList names;
        if (const AddedCapacitor* each = at(d, index)) {
            for (const std::string& band : each->bands) {
                names << QString::fromStdString(band);
            }
        }
        return names.join(QLatin1Char(' '));
    };
    spec.set = [index, where = spec.words.path](Design& d, const QString& text) {
        if (AddedCapacitor* each = at(d, index)) {
            each->bands = bands_in(text, d.station.region, where);
        }
    };
    return spec;
}

TextSpec note_field(std::size_t index) {
    TextSpec spec;
    spec.words = words_of(
        index, "note", BuildAdded::tr("Note"),
        BuildAdded::tr("A line of your own about this capacitor: make, marking, where it is fitted."), true);
    spec.placeholder = BuildAdded::tr("none");
    spec.get = [index](const Design& d) {
        const AddedCapacitor* each = at(d, index);
        return each == nullptr ? QString() : QString::fromStdString(each->note);
    };
    spec.set = [index](Design& d, const QString& text) {
        if (AddedCapacitor* each = at(d, index)) {
            each->note = text.toStdString();
        }
    };
    return spec;
}

} // namespace

GroupSpec added_capacitor_group(std::size_t index) {
    GroupSpec group{"added", BuildAdded::tr("fixed capacitor %1").arg(index + 1), {}};
    group.fields.emplace_back(capacitance_field(index));
    group.fields.emplace_back(connection_choice(index));
    group.fields.emplace_back(bands_field(index));
    group.fields.emplace_back(
        optional_part(words_of(index, "peak_voltage", BuildAdded::tr("Peak voltage rating"),
                               BuildAdded::tr("The peak voltage this capacitor may carry at radio frequency. "
                                              "Without it there is no verdict on its volts.")),
                      index, &AddedCapacitor::peak_voltage));
    group.fields.emplace_back(added_q_field(index));
    group.fields.emplace_back(optional_part(
        words_of(index, "current", BuildAdded::tr("Current rating (rms)"),
                 BuildAdded::tr("The current this capacitor may carry, rms: a limit by heat."), true),
        index, &AddedCapacitor::current));
    group.fields.emplace_back(note_field(index));
    return group;
}

} // namespace loopwright::pages
