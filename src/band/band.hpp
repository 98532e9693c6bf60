#pragma once
// Amateur bands by ITU region.
#include "units/quantities.hpp"

#include <optional>
#include <string>
#include <string_view>
#include <vector>

namespace loopwright::band {

struct Band {
    std::string name; ///< "40m", as ADIF and the design file write it
    units::Frequency low{};
    units::Frequency high{};
    /// Customary digital working frequency (dial), where the board and the first look at a band are taken.
    units::Frequency usual{};
};

/// The HF bands and 6 m of a region (1 to 3), from 160 m upward. Source: ITU Radio Regulations, article 5,
/// as listed in docs/reference/bands.md with the state of confirmation of every edge.
/// Throws base::InputError for another region.
[[nodiscard]] const std::vector<Band>& bands_of(int region);

/// A band by its name ("40m"), or nothing.
[[nodiscard]] std::optional<Band> find_band(int region, std::string_view name);

} // namespace loopwright::band
