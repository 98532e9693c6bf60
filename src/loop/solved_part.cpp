#include "loop/solved_part.hpp"

namespace loopwright::loop {

design::Design solved_part(const design::Design& design) {
    design::Design part = design;
    const design::Design plain;
    part.title.clear();
    part.note.clear();
    part.capacitor.minimum = plain.capacitor.minimum;
    part.capacitor.maximum = plain.capacitor.maximum;
    part.capacitor.rating = plain.capacitor.rating;
    part.coupling.reset();
    part.feed_line.reset();
    part.site.standing_level = plain.site.standing_level;
    part.station = plain.station;
    return part;
}

} // namespace loopwright::loop
