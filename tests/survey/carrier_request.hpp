#pragma once
// The loop of the keying tests: a carrier of 10 W over average ground on one band, held against one limit,
// nominal.
#include "survey/keying.hpp"

#include <string>

namespace loopwright::survey {

inline KeyingRequest carrier_request(const std::string& band, const std::string& limit) {
    KeyingRequest request;
    design::Design& d = request.design;
    d.capacitor.minimum = units::picofarads(5);
    d.capacitor.maximum = units::picofarads(500);
    d.capacitor.loss.q = 1000.0;
    d.capacitor.rating.peak_voltage = units::volts(9000);
    d.site.ground.kind = design::GroundKind::soil;
    d.site.ground.class_name = "average ground";
    d.station.emission = "carrier";
    d.station.power = units::watts(10);
    d.station.bands = {band};
    request.limits = {limit};
    request.intervals = false;
    return request;
}

} // namespace loopwright::survey
