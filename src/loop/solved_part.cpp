#include "loop/solved_part.hpp"

#include <algorithm>

namespace loopwright::loop {

design::Design solved_part(const design::Design& design) {
    design::Design part = design;
    const design::Design plain;
    part.title.clear();
    part.note.clear();
    part.capacitor.minimum = plain.capacitor.minimum;
    part.capacitor.maximum = plain.capacitor.maximum;
    part.capacitor.rating = plain.capacitor.rating;
    part.capacitor.arrangement = plain.capacitor.arrangement;
    part.capacitor.dial.reset();
    part.capacitor.made.reset();
    part.capacitor.temperature_coefficient.reset();
    part.calibration.reset();
    part.coupling.reset();
    part.feed_line.reset();
    part.site.standing_level = plain.site.standing_level;
    part.site.people_distance.reset();
    part.site.altitude = plain.site.altitude;
    part.site.air_temperature = plain.site.air_temperature;
    part.station = plain.station;
    if (std::any_of(part.capacitor.added.begin(), part.capacitor.added.end(),
                    [](const design::AddedCapacitor& each) { return !each.bands.empty(); })) {
        part.station.region = design.station.region; // what is plugged in follows its bands
    }
    return part;
}

} // namespace loopwright::loop
