#pragma once
// Where operators work on a band: the customary digital, telegraphy and voice frequencies by ITU region.
#include "band/band.hpp"
#include "band/emission.hpp"
#include "band/status.hpp"
#include "units/quantities.hpp"

#include <string>
#include <vector>

namespace loopwright::band {

/// What a frequency is used for; decides the rows of a digital sub-band.
enum class UseKind { digital, telegraphy, voice };

/// On which side of the radio's dial frequency the signal lies; none: on it (telegraphy, carrier).
enum class Sideband { none, upper, lower };

struct WorkingFrequency {
    std::string band;
    std::string emission; ///< id of a band::Emission
    UseKind kind = UseKind::digital;
    units::Frequency dial{}; ///< what the radio shows
    Sideband sideband = Sideband::upper;
    units::Frequency tuned{}; ///< middle of the window the emission works in: what the loop is set to
    Status status = Status::common_practice; ///< of dial
    std::string source;                      ///< of dial
};

/// digital: all slot modes, PSK31 and RTTY; voice: SSB; telegraphy: CW, and a carrier.
[[nodiscard]] UseKind kind_of(const Emission& emission) noexcept;

/// Of an emission whose window does not lie on the dial frequency: upper, but lower for voice below 10 MHz
/// outside 60 m (common practice, no source).
[[nodiscard]] Sideband sideband_of(const Emission& emission, units::Frequency dial) noexcept;

/// The middle of the emission's window (reference: docs/reference/bands.md, "Customary dial frequencies"):
/// above the dial in upper, below it in lower sideband.
[[nodiscard]] units::Frequency tuned_for(const Emission& emission, Sideband sideband, units::Frequency dial);

/// The customary frequencies of a band in a region, ascending in `tuned`; every window lies inside the
/// band. Sources and states in docs/reference/bands.md. Throws base::InputError for another region; empty for
/// another band.
[[nodiscard]] std::vector<WorkingFrequency> working_frequencies(int region, std::string_view band_name);

} // namespace loopwright::band
