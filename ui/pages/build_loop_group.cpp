// The group "Loop": outline, size, turns.
#include "geometry/winding.hpp"
#include "loop/design_parts.hpp"
#include "pages/build_specs.hpp"

#include <QCoreApplication>

#include <algorithm>
#include <cmath>
#include <utility>

namespace loopwright::pages {

namespace {

using design::Design;
using design::Outline;
using design::SizeMeaning;

struct BuildLoop {
    Q_DECLARE_TR_FUNCTIONS(BuildLoop)
};

bool is_rectangle(const Design& d) {
    return d.loop.outline == Outline::rectangle;
}
bool is_polygon(const Design& d) {
    return d.loop.outline == Outline::polygon;
}
bool is_even(const Design& d) {
    return d.loop.sides % 2 == 0;
}
bool has_turns(const Design& d) {
    return d.loop.turns > 1;
}

/// What the size of an outline may mean, in the order offered.
std::vector<SizeMeaning> meanings(const Design& d) {
    if (!is_polygon(d)) {
        return {SizeMeaning::diameter, SizeMeaning::conductor_length};
    }
    if (is_even(d)) {
        return {SizeMeaning::across_flats, SizeMeaning::across_corners, SizeMeaning::side,
                SizeMeaning::conductor_length};
    }
    return {SizeMeaning::across_corners, SizeMeaning::side, SizeMeaning::conductor_length};
}

QString name_of(SizeMeaning meaning) {
    switch (meaning) {
    case SizeMeaning::diameter:
        return BuildLoop::tr("Diameter");
    case SizeMeaning::across_flats:
        return BuildLoop::tr("Across flats");
    case SizeMeaning::across_corners:
        return BuildLoop::tr("Across corners");
    case SizeMeaning::side:
        return BuildLoop::tr("Side");
    case SizeMeaning::conductor_length:
        return BuildLoop::tr("Conductor length");
    }
    return {};
}

/// After a change of outline or sides the size may not keep a meaning that the new outline does not have.
void settle_meaning(Design& d) {
    const auto allowed = meanings(d);
    if (std::find(allowed.begin(), allowed.end(), d.loop.size_is) == allowed.end()) {
        d.loop.size_is = allowed.front();
    }
    d.loop.corner_down = d.loop.corner_down && is_polygon(d) && is_even(d);
}

/// The size of a circle or polygon as `meaning` would measure it, in metres; conductor_length is of all
/// turns.
double measured_m(const Design& d, SizeMeaning meaning) {
    const geometry::Winding winding = loop::winding_of(d.loop);
    const double radius_m = geometry::circumradius(winding).value();
    const double half_angle = 3.14159265358979323846 / d.loop.sides;
    switch (meaning) {
    case SizeMeaning::across_flats:
        return 2.0 * radius_m * std::cos(half_angle);
    case SizeMeaning::side:
        return 2.0 * radius_m * std::sin(half_angle);
    case SizeMeaning::conductor_length:
        return geometry::wire_path(winding).length_m();
    case SizeMeaning::diameter:
    case SizeMeaning::across_corners:
        break;
    }
    return 2.0 * radius_m;
}

/// Another meaning for the same loop: the number changes, to four digits, the loop stays.
void change_meaning(Design& d, SizeMeaning meaning) {
    const double size_m = measured_m(d, meaning);
    const double unit = std::pow(10.0, std::floor(std::log10(size_m)) - 3.0);
    d.loop.size = units::metres(std::round(size_m / unit) * unit);
    d.loop.size_is = meaning;
}

ChoiceSpec outline_choice() {
    FieldWords words{
        "loop.outline", BuildLoop::tr("&Outline"),
        BuildLoop::tr("Shape of one turn. A circle gives the most area for its length of conductor; "
                      "straight pipe makes a polygon.")};
    ChoiceSpec spec = named_choice(
        words, {BuildLoop::tr("Circle"), BuildLoop::tr("Regular polygon"), BuildLoop::tr("Rectangle")},
        [](auto& d) -> auto& { return d.loop.outline; });
    spec.set = [](Design& d, int index) {
        d.loop.outline = static_cast<Outline>(index);
        settle_meaning(d);
    };
    return spec;
}

QuantitySpec sides_field() {
    FieldWords words{
        "loop.sides", BuildLoop::tr("Sides"),
        BuildLoop::tr("Number of straight sides of the polygon, from 3. Eight is usual for pipe.")};
    words.applies = is_polygon;
    QuantitySpec spec = plain_number(
        words, [](auto& d) -> auto& { return d.loop.sides; });
    spec.set = [](Design& d, double sides, const std::string& /*text*/) {
        d.loop.sides = static_cast<int>(sides);
        settle_meaning(d);
    };
    return spec;
}

ChoiceSpec meaning_choice() {
    ChoiceSpec spec;
    spec.words = {
        "loop.size_is", BuildLoop::tr("Size is"),
        BuildLoop::tr("How the loop was measured. Always on the centre line of the conductor. Choosing "
                      "another way keeps the loop and changes the number."),
        false, [](const Design& d) { return !is_rectangle(d); }};
    spec.options = [](const Design& d) {
        QStringList names;
        for (const SizeMeaning meaning : meanings(d)) {
            names << name_of(meaning);
        }
        return names;
    };
    spec.get = [](const Design& d) {
        const auto allowed = meanings(d);
        const auto found = std::find(allowed.begin(), allowed.end(), d.loop.size_is);
        return found == allowed.end() ? -1 : static_cast<int>(found - allowed.begin());
    };
    spec.set = [](Design& d, int index) {
        change_meaning(d, meanings(d).at(static_cast<std::size_t>(index)));
    };
    return spec;
}

QuantitySpec size_field() {
    FieldWords words{
        "loop.size", BuildLoop::tr("Size"),
        BuildLoop::tr("Size of the loop, of the conductor's centre line. The radiation resistance grows "
                      "with its fourth power, so this matters most.")};
    words.applies = [](const Design& d) { return !is_rectangle(d); };
    words.label_for = [](const Design& d) { return name_of(d.loop.size_is); };
    return typed_quantity(
        words, [](auto& d) -> auto& { return d.loop.size; });
}

std::vector<QuantitySpec> rectangle_fields() {
    FieldWords width{"loop.width", BuildLoop::tr("Width"),
                     BuildLoop::tr("Width of the rectangle, of the conductor's centre line.")};
    FieldWords height{"loop.height", BuildLoop::tr("Height"),
                      BuildLoop::tr("Height of the rectangle, of the conductor's centre line.")};
    width.applies = height.applies = is_rectangle;
    return {typed_quantity(
                width, [](auto& d) -> auto& { return d.loop.width; }),
            typed_quantity(
                height, [](auto& d) -> auto& { return d.loop.height; })};
}

CheckSpec corner_field() {
    return {{"loop.corner_down", BuildLoop::tr("Stands on a corner"),
             BuildLoop::tr("Corners above and below instead of flats; the capacitor sits at the top corner."),
             true, [](const Design& d) { return is_polygon(d) && is_even(d); }},
            [](const Design& d) { return d.loop.corner_down; },
            [](Design& d, bool on) { d.loop.corner_down = on; }};
}

std::vector<QuantitySpec> turn_fields() {
    FieldWords spacing{
        "loop.turn_spacing", BuildLoop::tr("Turn spacing"),
        BuildLoop::tr("Distance between neighbouring turns, centre to centre. Close turns lose more "
                      "(proximity) and have more capacitance of their own.")};
    spacing.applies = has_turns;
    FieldWords lead{
        "loop.lead", BuildLoop::tr("Leads"),
        BuildLoop::tr("Length of the two ends that lead from the turns to the capacitor, of each.")};
    lead.applies = has_turns;
    lead.rare = true;
    FieldWords gap{
        "loop.gap", BuildLoop::tr("Gap"),
        BuildLoop::tr("Opening of the loop at the capacitor. It sets the tuning capacitance only to "
                      "some tenths of a picofarad.")};
    gap.rare = true;
    return {typed_quantity(
                spacing, [](auto& d) -> auto& { return d.loop.turn_spacing; }),
            typed_quantity(
                lead, [](auto& d) -> auto& { return d.loop.lead; }),
            typed_quantity(
                gap, [](auto& d) -> auto& { return d.loop.gap; })};
}

} // namespace

GroupSpec loop_group() {
    GroupSpec group{"loop", BuildLoop::tr("Loop"), {}};
    auto& fields = group.fields;
    fields.emplace_back(outline_choice());
    fields.emplace_back(sides_field());
    fields.emplace_back(meaning_choice());
    fields.emplace_back(size_field());
    for (QuantitySpec& spec : rectangle_fields()) {
        fields.emplace_back(std::move(spec));
    }
    fields.emplace_back(plain_number(
        {"loop.turns", BuildLoop::tr("Turns"),
         BuildLoop::tr("Number of turns, 1 to 12. More turns tune lower with the same capacitor, and lose "
                       "more.")},
        [](auto& d) -> auto& { return d.loop.turns; }));
    FieldWords arrangement{
        "loop.arrangement", BuildLoop::tr("Arranged as"),
        BuildLoop::tr("A stack lies along the loop's axis, a spiral is flat, each turn inside the "
                      "one before.")};
    arrangement.applies = has_turns;
    fields.emplace_back(named_choice(
        arrangement, {BuildLoop::tr("Stack"), BuildLoop::tr("Flat spiral")},
        [](auto& d) -> auto& { return d.loop.arrangement; }));
    for (QuantitySpec& spec : turn_fields()) {
        fields.emplace_back(std::move(spec));
    }
    fields.emplace_back(corner_field());
    return group;
}

} // namespace loopwright::pages
