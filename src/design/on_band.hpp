#pragma once
// A design as it stands on one band: fixed capacitors that are plugged or switched in elsewhere left out.
#include "design/design.hpp"

#include <string_view>

namespace loopwright::design {

/// Whether a fixed capacitor is there on a band: always where it names none. Case of the name ignored.
[[nodiscard]] bool is_there(const AddedCapacitor& added, std::string_view band);

/// The capacitor with only those fixed ones that are there. An empty name (no band): those that name none.
[[nodiscard]] Capacitor on_band(const Capacitor& capacitor, std::string_view band);

/// The design with that capacitor; what every model of that band has to be made of.
[[nodiscard]] Design on_band(const Design& design, std::string_view band);

} // namespace loopwright::design
