#pragma once
// Amateur bands by ITU region.
#include "band/status.hpp"
#include "units/quantities.hpp"

#include <cstddef>
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
    Status status = Status::confirmed; ///< of the edges
    std::string source;                ///< of the edges
    std::string remark;                ///< what the edges alone do not say; may be empty
    bool operator==(const Band&) const = default;
};

/// The HF bands and 6 m of a region (1 to 3), from 160 m upward. Source: ITU Radio Regulations, article 5,
/// as listed in docs/reference/bands.md with the state of confirmation of every edge. National rules may give
/// less, or more: they decide. Throws base::InputError for another region.
[[nodiscard]] const std::vector<Band>& bands_of(int region);

/// A band by its name ("40m"; case and blanks ignored), or nothing. Throws base::InputError for another
/// region.
[[nodiscard]] std::optional<Band> find_band(int region, std::string_view name);

/// Place in bands_of() of the band that holds a frequency; between bands, of the one that is nearest by
/// ratio. Throws base::InputError for another region. frequency > 0.
[[nodiscard]] std::size_t nearest_band(int region, units::Frequency frequency);

/// The names of a region's bands, from 160 m upward.
[[nodiscard]] std::vector<std::string> band_names(int region);

/// Customary dial frequency (upper sideband) of an emission on a band: the band's usual one where nothing is
/// agreed for that emission. Regions differ in 80 m FT4 only. Source: docs/reference/bands.md.
[[nodiscard]] units::Frequency usual_dial(int region, const Band& band, std::string_view emission_id);

} // namespace loopwright::band
