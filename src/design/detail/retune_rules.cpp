// Rules of what setting the loop stands on: dial, hand-made capacitor, bands of a fixed capacitor, working
// frequencies, calibration.
#include "band/band.hpp"
#include "design/detail/refusals.hpp"
#include "design/made.hpp"

#include <algorithm>
#include <cmath>

namespace loopwright::design::detail {
namespace {

using units::Capacitance;
using units::kilohertz;
using units::megahertz;
using units::metres;
using units::millimetres;

constexpr double largest_reading = 1e6;
constexpr std::size_t most_working_frequencies = 200;
constexpr std::size_t most_points = 1000;
constexpr std::size_t most_entries = 1000;

bool at_most(const char* list, std::size_t items, std::size_t most, Refusals& refusals) {
    if (items > most) {
        refusals.add(list, std::to_string(items) + " items", "at most " + std::to_string(most) + " items");
        return false;
    }
    return true;
}

std::string number_text(double value) {
    return units::canonical(value, units::Dimension::number);
}

// Readings and capacitances each go one way, and no capacitance lies outside the capacitor's.
void check_table(const Capacitor& capacitor, Refusals& refusals) {
    const auto& table = capacitor.dial->table;
    if (table.size() < 2) {
        refusals.add("capacitor.dial.table", std::to_string(table.size()) + " entries", "2 entries or more");
        return;
    }
    if (!at_most("capacitor.dial.table", table.size(), most_entries, refusals)) {
        return;
    }
    const bool readings_rise = table[1].reading > table[0].reading;
    const bool values_rise = table[1].capacitance.value > table[0].capacitance.value;
    for (std::size_t i = 0; i < table.size(); ++i) {
        const std::string where = item("capacitor.dial.table", i);
        if (!refusals.range(where + ".reading", table[i].reading, -largest_reading, largest_reading) ||
            !refusals.range(where + ".capacitance", table[i].capacitance, capacitor.minimum.value,
                            capacitor.maximum.value)) {
            return;
        }
        if (i == 0) {
            continue;
        }
        const DialEntry &last = table[i - 1], &entry = table[i];
        if (readings_rise ? !(entry.reading > last.reading) : !(entry.reading < last.reading)) {
            refusals.add(where + ".reading", number_text(entry.reading),
                         "readings that go one way, each once, from entry to entry");
            return;
        }
        if (values_rise ? !(entry.capacitance.value > last.capacitance.value)
                        : !(entry.capacitance.value < last.capacitance.value)) {
            refusals.add(where + ".capacitance", as_typed(entry.capacitance),
                         "capacitances that go one way, each once, from entry to entry");
            return;
        }
    }
}

void check_dial(const Capacitor& capacitor, Refusals& refusals) {
    const Dial& dial = *capacitor.dial;
    const std::string where = "capacitor.dial.";
    if (capacitor.minimum.value == capacitor.maximum.value) {
        refusals.add("capacitor.dial", "a dial", "no dial: the capacitor's minimum and maximum are the same");
    }
    if (dial.law == DialLaw::table) {
        check_table(capacitor, refusals);
    } else if (refusals.range(where + "at_minimum", dial.at_minimum, -largest_reading, largest_reading) &&
               refusals.range(where + "at_maximum", dial.at_maximum, -largest_reading, largest_reading) &&
               !(std::abs(dial.at_maximum - dial.at_minimum) >= 1e-6)) {
        refusals.add(where + "at_maximum", number_text(dial.at_maximum),
                     "another reading than at_minimum (" + number_text(dial.at_minimum) + ")");
    }
    refusals.range(where + "hand_step", dial.hand_step, 1e-6, largest_reading);
    refusals.range(where + "reduction", dial.reduction, 0.01, 1e5);
    refusals.range(where + "backlash", dial.backlash, 0.0, largest_reading);
}

bool check_dimensions(const MadeCapacitor& made, Refusals& refusals) {
    const std::string where = "capacitor.made.";
    const auto least = millimetres(0.1);
    const auto most = metres(10);
    bool sound = refusals.range(where + "least_overlap", made.least_overlap, millimetres(0), most);
    sound = refusals.range(where + "most_overlap", made.most_overlap, least, most) && sound;
    if (sound && !(made.most_overlap.value > made.least_overlap.value)) {
        refusals.add(where + "most_overlap", as_typed(made.most_overlap),
                     "more than the least overlap (" + as_typed(made.least_overlap) + ")");
        sound = false;
    }
    sound = refusals.range(where + "relative_permittivity", made.relative_permittivity, 1.0, 100.0) && sound;
    if (made.kind == MadeKind::plates) {
        sound = refusals.range(where + "width", made.width, least, most) && sound;
        sound = refusals.range(where + "spacing", made.spacing, millimetres(0.01), metres(1)) && sound;
        sound = refusals.range(where + "thickness", made.thickness, millimetres(0), metres(1)) && sound;
        return refusals.range(where + "plates", made.plates, 2, 200) && sound;
    }
    const bool inner = refusals.range(where + "inner_diameter", made.inner_diameter, least, metres(1));
    const bool outer = refusals.range(where + "outer_diameter", made.outer_diameter, least, metres(1));
    if (inner && outer && !(made.outer_diameter.value > made.inner_diameter.value)) {
        refusals.add(where + "outer_diameter", as_typed(made.outer_diameter),
                     "more than the inner diameter (" + as_typed(made.inner_diameter) + ")");
        return false;
    }
    return refusals.range(where + "pairs", made.pairs, 1, 20) && sound && inner && outer;
}

void check_agreement(const char* where, const Typed<Capacitance>& given,
                     const units::Interval<Capacitance>& made, Refusals& refusals) {
    const auto low = made.low * 0.8, high = made.high * 1.2;
    if (!(given.value >= low && given.value <= high)) {
        refusals.add(where, as_typed(given),
                     "from " + units::shown(low) + " to " + units::shown(high) +
                         ", within 20 % of what the dimensions in capacitor.made give; or leave it out");
    }
}

void check_made(const Capacitor& capacitor, Refusals& refusals) {
    const MadeCapacitor& made = *capacitor.made;
    if (!check_dimensions(made, refusals)) {
        return;
    }
    check_agreement("capacitor.minimum", capacitor.minimum,
                    made_capacitance(made, made.least_overlap.value).range, refusals);
    check_agreement("capacitor.maximum", capacitor.maximum,
                    made_capacitance(made, made.most_overlap.value).range, refusals);
}

} // namespace

void check_setting(const Capacitor& capacitor, Refusals& refusals) {
    if (capacitor.dial) {
        check_dial(capacitor, refusals);
    }
    if (capacitor.made) {
        check_made(capacitor, refusals);
    }
    if (capacitor.temperature_coefficient) {
        refusals.range("capacitor.temperature_coefficient", *capacitor.temperature_coefficient,
                       units::per_kelvin(-0.01), units::per_kelvin(0.01));
    }
}

void check_plugged_bands(const std::string& where, const std::vector<std::string>& bands,
                         Refusals& refusals) {
    for (auto name = bands.begin(); name != bands.end(); ++name) {
        const std::string place = item(where, static_cast<std::size_t>(name - bands.begin()));
        const bool known =
            band::find_band(1, *name) || band::find_band(2, *name) || band::find_band(3, *name);
        if (!known) {
            refusals.add(place, *name, "a band: " + base::listed(band::band_names(2)));
        } else if (std::find(bands.begin(), name, *name) != name) {
            refusals.add(place, *name, "each band once");
        }
    }
}

void check_working_frequencies(const std::vector<WorkingFrequency>& all, Refusals& refusals) {
    if (!at_most("station.working_frequencies", all.size(), most_working_frequencies, refusals)) {
        return;
    }
    for (std::size_t i = 0; i < all.size(); ++i) {
        refusals.range(item("station.working_frequencies", i) + ".frequency", all[i].frequency, kilohertz(10),
                       megahertz(1000));
    }
}

void check_calibration(const Calibration& calibration, Refusals& refusals) {
    if (!at_most("calibration.points", calibration.points.size(), most_points, refusals)) {
        return;
    }
    for (std::size_t i = 0; i < calibration.points.size(); ++i) {
        const std::string where = item("calibration.points", i);
        refusals.range(where + ".reading", calibration.points[i].reading, -largest_reading, largest_reading);
        refusals.range(where + ".frequency", calibration.points[i].frequency, kilohertz(10), megahertz(1000));
    }
}

} // namespace loopwright::design::detail
