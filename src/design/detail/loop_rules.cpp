// Rules of the loop itself, of its conductor's thickness in it, and of the coupling loop inside it.
#include "design/detail/refusals.hpp"
#include "design/names.hpp"
#include "design/winding.hpp"
#include "units/constants.hpp"

#include <algorithm>
#include <cmath>
#include <optional>

namespace loopwright::design::detail {
namespace {

using units::metres;
using units::millimetres;
using units::constants::pi;

bool is_round(const Conductor& conductor) {
    return conductor.form != ConductorForm::strip;
}

// Space that the conductor takes along the loop's axis (in a stack) and across it (in a spiral, and inward).
// A strip stands with its width along the axis.
double along_axis_m(const Conductor& c) {
    return is_round(c) ? c.diameter.value.value() : c.width.value.value();
}
double across_m(const Conductor& c) {
    return is_round(c) ? c.diameter.value.value() : c.thickness.value.value();
}
const Typed<units::Length>& thickest(const Conductor& c) {
    if (is_round(c)) {
        return c.diameter;
    }
    return c.width.value > c.thickness.value ? c.width : c.thickness;
}
std::string where_thickest(const Conductor& c) {
    return is_round(c)                ? "conductor.diameter"
           : &thickest(c) == &c.width ? "conductor.width"
                                      : "conductor.thickness";
}

// What of the outline the other rules need, all in metres; of a spiral: of its outermost turn.
struct Extent {
    double inside_m = 0; ///< diameter of the largest circle inside the centre line
    double height_m = 0;
    double gap_room_m = 0; ///< longest gap
};

Extent extent_of(const LoopShape& loop) {
    if (loop.outline == Outline::rectangle) {
        const double width_m = loop.width.value.value();
        const double height_m = loop.height.value.value();
        return {std::min(width_m, height_m), height_m, width_m};
    }
    const double radius_m = geometry::circumradius(as_winding(loop)).value();
    if (loop.outline == Outline::circle) {
        return {2 * radius_m, 2 * radius_m, pi * radius_m / 2};
    }
    const double flat_m = radius_m * std::cos(pi / loop.sides);
    return {2 * flat_m, radius_m + flat_m, 2 * radius_m * std::sin(pi / loop.sides)};
}

bool check_size_meaning(const LoopShape& loop, Refusals& refusals) {
    const auto meanings = size_meanings(loop.outline, loop.sides);
    if (std::find(meanings.begin(), meanings.end(), loop.size_is) != meanings.end()) {
        return true;
    }
    std::vector<std::string> words;
    words.reserve(meanings.size());
    for (const SizeMeaning meaning : meanings) {
        words.push_back(name_of(meaning));
    }
    const bool odd = loop.outline == Outline::polygon && loop.sides % 2 != 0;
    refusals.add("loop.size_is", name_of(loop.size_is),
                 base::listed(words) + " for a " +
                     (odd ? "polygon with an odd number of sides" : name_of(loop.outline)));
    return false;
}

bool check_outline(const LoopShape& loop, Refusals& refusals) {
    const auto low = millimetres(10);
    const auto high = metres(100);
    if (loop.outline == Outline::rectangle) {
        const bool width = refusals.range("loop.width", loop.width, low, high);
        return refusals.range("loop.height", loop.height, low, high) && width;
    }
    if (loop.outline == Outline::polygon && !refusals.range("loop.sides", loop.sides, 3, 1000)) {
        return false;
    }
    const bool length = loop.size_is == SizeMeaning::conductor_length;
    const bool size = refusals.range("loop.size", loop.size, low, length ? metres(4000) : high);
    return check_size_meaning(loop, refusals) && size;
}

// Nothing where the outline or the turns are refused.
std::optional<Extent> whole_extent(const LoopShape& loop, Refusals& refusals) {
    const bool outline = check_outline(loop, refusals);
    const bool turns = refusals.range("loop.turns", loop.turns, 1, 12);
    const bool spaced = loop.turns < 2 || loop.turn_spacing.value.value() > 0;
    if (!outline || !turns || !spaced) {
        return std::nullopt;
    }
    try {
        return extent_of(loop);
    } catch (const base::InputError& error) {
        const bool spacing = error.where() == "loop.turn_spacing";
        refusals.add(error.where(), spacing ? as_typed(loop.turn_spacing) : error.value(), error.accepted());
        return std::nullopt;
    }
}

void check_turns(const Design& design, Refusals& refusals) {
    const LoopShape& loop = design.loop;
    refusals.range("loop.lead", loop.lead, metres(0), metres(10));
    if (loop.turns < 2 ||
        !refusals.range("loop.turn_spacing", loop.turn_spacing, millimetres(0.1), metres(10))) {
        return;
    }
    const bool stack = loop.arrangement == Arrangement::stack;
    const double needed_m = stack ? along_axis_m(design.conductor) : across_m(design.conductor);
    if (std::isfinite(needed_m) && !(loop.turn_spacing.value.value() > needed_m)) {
        refusals.add("loop.turn_spacing", as_typed(loop.turn_spacing),
                     "more than " + units::canonical(metres(needed_m)) +
                         ", which one turn takes: closer turns overlap (it is measured centre to centre)");
    }
}

void check_gap(const LoopShape& loop, const Extent& extent, Refusals& refusals) {
    if (!refusals.range("loop.gap", loop.gap, millimetres(0.1), metres(10))) {
        return;
    }
    const double link_m = loop.turns * loop.turn_spacing.value.value() + 2 * loop.lead.value.value();
    const double room_m = loop.turns > 1 ? std::max(link_m, extent.gap_room_m) : extent.gap_room_m;
    if (loop.gap.value.value() > room_m) {
        const char* place = loop.outline == Outline::circle ? "a quarter of the circle" : "the side it is in";
        refusals.add("loop.gap", as_typed(loop.gap),
                     "at most " + units::shown(metres(room_m)) + ", " + place);
    }
}

void check_thickness(const Design& design, const Extent& extent, Refusals& refusals) {
    const Conductor& conductor = design.conductor;
    if (!(thickest(conductor).value.value() < extent.inside_m)) {
        refusals.add(where_thickest(conductor), as_typed(thickest(conductor)),
                     "a conductor thinner than the loop is wide (" + units::shown(metres(extent.inside_m)) +
                         " inside its centre line)");
        return;
    }
    const LoopShape& loop = design.loop;
    if (loop.turns < 2 || loop.arrangement == Arrangement::stack) {
        return;
    }
    // The end of the innermost turn lies half a spacing further in than its middle.
    const double room_m = extent.inside_m / 2 - (loop.turns - 0.5) * loop.turn_spacing.value.value();
    if (!(room_m > across_m(conductor) / 2)) {
        refusals.add("loop.turn_spacing", as_typed(loop.turn_spacing),
                     "a spacing that leaves room inside the innermost turn: the spiral runs out of room");
    }
}

} // namespace

void check_loop(const Design& design, Refusals& refusals) {
    const auto extent = whole_extent(design.loop, refusals);
    check_turns(design, refusals);
    if (extent) {
        check_gap(design.loop, *extent, refusals);
        check_thickness(design, *extent, refusals);
    }
}

void check_coupling_loop(const Design& design, Refusals& refusals) {
    const Coupling& coupling = *design.coupling;
    const bool sizes = refusals.range("coupling.diameter", coupling.diameter, millimetres(5), metres(100)) &
                       refusals.range("coupling.conductor_diameter", coupling.conductor_diameter,
                                      millimetres(0.01), metres(1)) &
                       refusals.range("coupling.axis_offset", coupling.axis_offset, metres(0), metres(100));
    if (!sizes) {
        return;
    }
    if (!(coupling.conductor_diameter.value < coupling.diameter.value)) {
        refusals.add("coupling.conductor_diameter", as_typed(coupling.conductor_diameter),
                     "a conductor thinner than the coupling loop");
    }
    const double apart_m = (across_m(design.conductor) + coupling.conductor_diameter.value.value()) / 2;
    if (std::isfinite(apart_m) && !(coupling.axis_offset.value.value() > apart_m)) {
        refusals.add("coupling.axis_offset", as_typed(coupling.axis_offset),
                     "more than " + units::shown(metres(apart_m)) + ": the two conductors would touch");
    }
    Refusals said_already;
    const auto extent = whole_extent(design.loop, said_already);
    if (extent && !(coupling.diameter.value + coupling.axis_offset.value < metres(extent->height_m))) {
        refusals.add("coupling.diameter", as_typed(coupling.diameter),
                     "a coupling loop that fits, with its offset, inside the loop (" +
                         units::shown(metres(extent->height_m)) + " high)");
    }
}

} // namespace loopwright::design::detail
