#include "design/winding.hpp"

namespace loopwright::design {
namespace {

geometry::Outline outline_of(Outline outline) {
    switch (outline) {
    case Outline::circle:
        return geometry::Outline::circle;
    case Outline::polygon:
        return geometry::Outline::polygon;
    case Outline::rectangle:
        break;
    }
    return geometry::Outline::rectangle;
}

geometry::Measure measure_of(SizeMeaning meaning) {
    switch (meaning) {
    case SizeMeaning::diameter:
        return geometry::Measure::diameter;
    case SizeMeaning::across_flats:
        return geometry::Measure::across_flats;
    case SizeMeaning::across_corners:
        return geometry::Measure::across_corners;
    case SizeMeaning::side:
        return geometry::Measure::side;
    case SizeMeaning::conductor_length:
        break;
    }
    return geometry::Measure::conductor_length;
}

} // namespace

geometry::Winding as_winding(const LoopShape& shape) {
    geometry::Winding w;
    w.outline = outline_of(shape.outline);
    w.sides = shape.sides;
    w.size = shape.size.value;
    w.measure = measure_of(shape.size_is);
    w.width = shape.width.value;
    w.height = shape.height.value;
    w.corner_down = shape.corner_down;
    w.turns = shape.turns;
    w.arrangement = shape.arrangement == Arrangement::stack ? geometry::Arrangement::stack
                                                            : geometry::Arrangement::spiral;
    w.spacing = shape.turn_spacing.value;
    w.lead = shape.lead.value;
    w.gap = shape.gap.value;
    return w;
}

} // namespace loopwright::design
