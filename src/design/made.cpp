#include "design/made.hpp"

#include "base/error.hpp"

#include <optional>

namespace loopwright::design {
namespace {

std::optional<units::Interval<units::Capacitance>> possible_range(const Capacitor& capacitor) {
    if (!capacitor.made) {
        return std::nullopt;
    }
    try {
        return made_range(*capacitor.made);
    } catch (const base::InputError&) { // refused by the validation, in its own words
        return std::nullopt;
    }
}

} // namespace

capacitor::MadeCapacitance made_capacitance(const MadeCapacitor& made, units::Length overlap) {
    if (made.kind == MadeKind::plates) {
        return capacitor::plates_capacitance({made.width.value, made.most_overlap.value, made.spacing.value,
                                              made.thickness.value, made.plates, made.relative_permittivity},
                                             overlap);
    }
    return capacitor::tubes_capacitance({made.inner_diameter.value, made.outer_diameter.value,
                                         made.most_overlap.value, made.pairs, made.relative_permittivity},
                                        overlap);
}

units::Interval<units::Capacitance> made_range(const MadeCapacitor& made) {
    return {made_capacitance(made, made.least_overlap.value).value,
            made_capacitance(made, made.most_overlap.value).value};
}

void follow_made(Capacitor& capacitor, bool minimum, bool maximum) {
    if (const auto range = possible_range(capacitor)) {
        if (minimum) {
            capacitor.minimum = range->low;
        }
        if (maximum) {
            capacitor.maximum = range->high;
        }
    }
}

bool minimum_follows(const Capacitor& capacitor) {
    const auto range = possible_range(capacitor);
    return range && capacitor.minimum.text.empty() && capacitor.minimum.value == range->low;
}

bool maximum_follows(const Capacitor& capacitor) {
    const auto range = possible_range(capacitor);
    return range && capacitor.maximum.text.empty() && capacitor.maximum.value == range->high;
}

} // namespace loopwright::design
