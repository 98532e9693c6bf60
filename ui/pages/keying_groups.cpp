// The groups of the page Before keying: power and use, people, the hand that tunes.
#include "band/emission.hpp"
#include "exposure/duty.hpp"
#include "pages/build_specs.hpp"

#include <QCoreApplication>

#include <algorithm>
#include <vector>

namespace loopwright::pages {

namespace {

using design::Design;
using design::Habit;

struct KeyingGroups {
    Q_DECLARE_TR_FUNCTIONS(KeyingGroups)
};

/// The same field as on Build; its mnemonic belongs to that page.
template <class Spec>
Spec without_mnemonic(Spec spec) {
    spec.words.label.remove(QLatin1Char('&'));
    return spec;
}

std::vector<Habit> habits_for(const Design& design) {
    const auto emission = band::find_emission(design.station.emission);
    if (emission && emission->has_slots()) {
        return {Habit::alternate_slots, Habit::every_slot, Habit::share_of_slots, Habit::continuous};
    }
    return {Habit::listening_turns, Habit::continuous};
}

QString habit_name(Habit habit) {
    switch (habit) {
    case Habit::alternate_slots:
        return KeyingGroups::tr("every second slot");
    case Habit::every_slot:
        return KeyingGroups::tr("every slot");
    case Habit::share_of_slots:
        return KeyingGroups::tr("a share of the slots");
    case Habit::continuous:
        return KeyingGroups::tr("key down without a pause");
    case Habit::listening_turns:
        return KeyingGroups::tr("in turns, listening as long");
    }
    return {};
}

design::Use usual(const Design& design) {
    const exposure::Use usual = exposure::usual_use(design.station.emission);
    design::Use use;
    use.habit = static_cast<Habit>(usual.habit);
    use.share = usual.share;
    use.over = usual.over;
    return use;
}

ChoiceSpec habit_choice() {
    ChoiceSpec spec;
    spec.words = {"station.use.habit", KeyingGroups::tr("Habit"),
                  KeyingGroups::tr("How much of the time you send. It counts for limits that average over "
                                   "minutes, never for volts.")};
    spec.options = [](const Design& d) {
        QStringList names{KeyingGroups::tr("as usual: %1").arg(habit_name(usual(d).habit))};
        for (const Habit habit : habits_for(d)) {
            names << habit_name(habit);
        }
        return names;
    };
    spec.get = [](const Design& d) {
        if (!d.station.use) {
            return 0;
        }
        const auto habits = habits_for(d);
        const auto found = std::find(habits.begin(), habits.end(), d.station.use->habit);
        return found == habits.end() ? -1 : static_cast<int>(found - habits.begin()) + 1;
    };
    spec.set = [](Design& d, int index) {
        if (index == 0) {
            d.station.use.reset();
            return;
        }
        design::Use use = d.station.use.value_or(usual(d));
        use.habit = habits_for(d).at(static_cast<std::size_t>(index) - 1);
        d.station.use = use;
    };
    return spec;
}

bool has_habit(const Design& d, Habit habit) {
    return d.station.use && d.station.use->habit == habit;
}

QuantitySpec share_field() {
    QuantitySpec spec;
    spec.words = {"station.use.share", KeyingGroups::tr("Share of the slots"),
                  KeyingGroups::tr("Of the slots, how many are sent in: 0.2 or 20 %."), false,
                  [](const Design& d) { return has_habit(d, Habit::share_of_slots); }};
    spec.kind = {units::Dimension::number};
    spec.get = [](const Design& d) -> std::optional<inputs::Reading> {
        return d.station.use ? std::optional<inputs::Reading>({d.station.use->share, {}}) : std::nullopt;
    };
    spec.set = [](Design& d, double share, const std::string& /*text*/) {
        if (d.station.use) {
            d.station.use->share = share;
        }
    };
    return spec;
}

QuantitySpec over_field() {
    QuantitySpec spec;
    spec.words = {"station.use.over", KeyingGroups::tr("One turn lasts"),
                  KeyingGroups::tr("How long you send before you listen for as long."), false,
                  [](const Design& d) { return has_habit(d, Habit::listening_turns); }};
    spec.kind = {units::Dimension::time};
    spec.get = [](const Design& d) -> std::optional<inputs::Reading> {
        if (!d.station.use) {
            return std::nullopt;
        }
        const auto& over = d.station.use->over;
        return inputs::Reading{over.value.value(), QString::fromStdString(over.text)};
    };
    spec.set = [](Design& d, double si, const std::string& text) {
        if (d.station.use) {
            d.station.use->over = units::Typed<units::Time>(units::seconds(si), text);
        }
    };
    return spec;
}

} // namespace

GroupSpec keying_use_group() {
    GroupSpec group{"keying_use", KeyingGroups::tr("Power and use"), {}};
    group.fields.emplace_back(without_mnemonic(power_field()));
    group.fields.emplace_back(without_mnemonic(emission_choice()));
    group.fields.emplace_back(habit_choice());
    group.fields.emplace_back(share_field());
    group.fields.emplace_back(over_field());
    return group;
}

GroupSpec keying_people_group() {
    GroupSpec group{"keying_people", KeyingGroups::tr("People"), {}};
    group.fields.emplace_back(optional_quantity(
        {"site.people_distance", KeyingGroups::tr("People are at"),
         KeyingGroups::tr("How near people come: horizontal distance from the loop's vertical axis. With it "
                          "there is a verdict on people and a greatest power for them.")},
        KeyingGroups::tr("not given"), [](auto& d) -> auto& { return d.site.people_distance; }));
    group.fields.emplace_back(without_mnemonic(standing_field()));
    return group;
}

GroupSpec keying_tuning_group() {
    GroupSpec group{"keying_tuning", KeyingGroups::tr("Tuning by hand"), {}};
    group.fields.emplace_back(optional_quantity(
        {"station.reach", KeyingGroups::tr("Reach"),
         KeyingGroups::tr("Horizontal distance from the capacitor to the body of whoever tunes: the length "
                          "of the shaft or the drive and of the arm.")},
        KeyingGroups::tr("not given"), [](auto& d) -> auto& { return d.station.reach; }));
    return group;
}

} // namespace loopwright::pages
