// Rules of what decides before keying: ratings, added capacitors, use of the emission, limits, reach.
#include "band/emission.hpp"
#include "design/detail/refusals.hpp"
#include "design/limit_ids.hpp"
#include "design/names.hpp"

#include <algorithm>

namespace loopwright::design::detail {
namespace {

using units::amperes;
using units::millimetres;
using units::picofarads;
using units::seconds;
using units::volts;

constexpr std::size_t most_items = 20;
const auto highest_rms_A = amperes(1e4);

bool few(const char* list, std::size_t items, Refusals& refusals) {
    if (items > most_items) {
        refusals.add(list, std::to_string(items) + " items", "at most 20 items");
        return false;
    }
    return true;
}

bool uses_slots(Habit habit) {
    return habit == Habit::alternate_slots || habit == Habit::every_slot || habit == Habit::share_of_slots;
}

void check_use(const Use& use, const std::string& emission_id, Refusals& refusals) {
    const auto emission = band::find_emission(emission_id);
    if (emission && uses_slots(use.habit) && !emission->has_slots()) {
        refusals.add("station.use.habit", name_of(use.habit),
                     "continuous or listening_turns: " + emission->id + " has no time slots");
    }
    refusals.range("station.use.share", use.share, 0.001, 1.0);
    refusals.range("station.use.over", use.over, seconds(1), seconds(86400));
}

void check_limits(const std::vector<std::string>& limits, Refusals& refusals) {
    const auto& known = limit_ids();
    for (auto id = limits.begin(); id != limits.end(); ++id) {
        const auto where = item("station.limits", static_cast<std::size_t>(id - limits.begin()));
        if (std::find(known.begin(), known.end(), *id) == known.end()) {
            refusals.add(where, *id, base::listed(known));
        } else if (std::find(limits.begin(), id, *id) != id) {
            refusals.add(where, *id, "each limit once");
        }
    }
}

void check_own_limits(const std::vector<OwnLimit>& own, Refusals& refusals) {
    using units::ElectricField;
    using units::MagneticField;
    if (!few("station.own_limits", own.size(), refusals)) {
        return;
    }
    for (std::size_t i = 0; i < own.size(); ++i) {
        const std::string where = item("station.own_limits", i);
        const OwnLimit& limit = own[i];
        if (limit.name.empty()) {
            refusals.add(where + ".name", limit.name, "a name");
        }
        refusals.range(where + ".electric", limit.electric, ElectricField::from_value(1e-3),
                       ElectricField::from_value(1e6));
        refusals.range(where + ".magnetic", limit.magnetic, MagneticField::from_value(1e-6),
                       MagneticField::from_value(1e6));
        if (limit.averaging) {
            refusals.range(where + ".averaging", *limit.averaging, seconds(1), seconds(86400));
        }
    }
}

} // namespace

void check_rating(const CapacitorRating& rating, Refusals& refusals) {
    if (rating.peak_voltage) {
        refusals.range("capacitor.rating.peak_voltage", *rating.peak_voltage, volts(1), volts(1e6));
    }
    if (rating.gap) {
        refusals.range("capacitor.rating.gap", *rating.gap, millimetres(0.1), millimetres(100));
    }
    refusals.range("capacitor.rating.safety_factor", rating.safety_factor, 1.0, 10.0);
    if (rating.current) {
        refusals.range("capacitor.rating.current", *rating.current, amperes(1e-3), highest_rms_A);
    }
}

void check_added(const std::vector<AddedCapacitor>& added, Refusals& refusals) {
    if (!few("capacitor.added", added.size(), refusals)) {
        return;
    }
    for (std::size_t i = 0; i < added.size(); ++i) {
        const std::string where = item("capacitor.added", i);
        const AddedCapacitor& each = added[i];
        refusals.range(where + ".capacitance", each.capacitance, picofarads(0.01), units::farads(1e-6));
        if (each.peak_voltage) {
            refusals.range(where + ".peak_voltage", *each.peak_voltage, volts(1), volts(1e6));
        }
        if (each.current) {
            refusals.range(where + ".current", *each.current, amperes(1e-3), highest_rms_A);
        }
        if (each.q) {
            refusals.range(where + ".q", *each.q, 10.0, 1e12);
        }
        check_plugged_bands(where + ".bands", each.bands, refusals);
    }
}

void check_exposure(const Station& station, Refusals& refusals) {
    if (station.use) {
        check_use(*station.use, station.emission, refusals);
    }
    check_limits(station.limits, refusals);
    check_own_limits(station.own_limits, refusals);
    if (station.reach) {
        refusals.range("station.reach", *station.reach, units::metres(0.1), units::metres(100));
    }
}

} // namespace loopwright::design::detail
