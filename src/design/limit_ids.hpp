#pragma once
// The exposure limits that a design may name. Their tables are in exposure/limits.hpp.
#include "design/design.hpp"

#include <string>
#include <vector>

namespace loopwright::design {

/// Ids of all limit tables, in the order of exposure::limits().
[[nodiscard]] const std::vector<std::string>& limit_ids();

/// Where the station names none. Region 2: FCC 1.1310 and ICNIRP 2020 (not every administration there follows
/// the FCC). Regions 1 and 3: ICNIRP 2020, ICNIRP 1998 (still law or licence condition in places) and ICNIRP
/// 2010 (nerve stimulation up to 10 MHz). Our choice, on the careful side; the law of the place decides.
[[nodiscard]] const std::vector<std::string>& default_limits(int region);

/// Those the station names, else the default of its region; own limits stand besides.
[[nodiscard]] const std::vector<std::string>& chosen_limits(const Station& station);

} // namespace loopwright::design
