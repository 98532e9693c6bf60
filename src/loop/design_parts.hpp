#pragma once
// From the design value to the parts that the physics folders understand.
#include "capacitor/capacitor.hpp"
#include "capacitor/network.hpp"
#include "conductor/conductor.hpp"
#include "design/design.hpp"
#include "design/winding.hpp"
#include "geometry/winding.hpp"

#include <string_view>

namespace loopwright::loop {

[[nodiscard]] inline geometry::Winding winding_of(const design::LoopShape& shape) {
    return design::as_winding(shape);
}
/// Horizontal is a tilt of 90 degrees.
[[nodiscard]] geometry::Placement placement_of(const design::Site& site);
/// The conductor's path of a design in space: what drawings and every model use.
[[nodiscard]] geometry::WirePath wire_path_of(const design::Design& design);
/// Throws base::InputError for an unknown metal or sizes no conductor has.
[[nodiscard]] conductor::Conductor conductor_of(const design::Conductor& conductor);
/// All fixed capacitors in; fitted_capacitor.hpp has the capacitor as it stands at a frequency. Throws
/// base::InputError for values no capacitor has.
[[nodiscard]] capacitor::Capacitor capacitor_of(const design::Capacitor& capacitor);
/// With the ratings of its members and the air of the site. Throws as capacitor_of().
[[nodiscard]] capacitor::Network network_of(const design::Capacitor& capacitor, const design::Site& site);
/// With only the fixed capacitors that are there on a band, counted as the design lists them.
[[nodiscard]] capacitor::Network network_of(const design::Capacitor& capacitor, const design::Site& site,
                                            std::string_view band);
/// Of the whole, stray and added capacitors included.
[[nodiscard]] inline units::Interval<units::Capacitance> capacitor_range(const design::Capacitor& capacitor) {
    return capacitor_of(capacitor).range();
}
/// Sum of the joints.
[[nodiscard]] units::Resistance joints_of(const std::vector<design::Joint>& joints);

} // namespace loopwright::loop
