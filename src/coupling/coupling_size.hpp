#pragma once
// The size of coupling loop that matches: at one frequency, and one for several.
#include "base/job.hpp"
#include "coupling/coupled_loop.hpp"

#include <optional>
#include <vector>

namespace loopwright::coupling {

/// The diameter of coupling loop with the least VSWR at a frequency, wire and offset of the design kept (a
/// design without a coupling loop: see default_coupling). Searched from 5 % (4 times the wire) to 50 % of the
/// loop's width.
struct CouplingChoice {
    units::Length diameter{};
    Match match;
};

struct CouplingRow {
    units::Frequency frequency{};
    bool in_capacitor_range = false;    ///< at the loop's own resonance
    std::optional<CouplingChoice> best; ///< absent where no capacitor tunes the loop
    std::optional<Match> common;        ///< with the common diameter; absent as above
};

struct CouplingSizes {
    std::vector<CouplingRow> rows; ///< in the order asked
    /// The least of the worst VSWR over the frequencies that the capacitor reaches (none: over those that any
    /// capacitor tunes). Absent where there is none.
    std::optional<units::Length> common_diameter;
    double worst_vswr = 1; ///< over the same frequencies
    bool complete = false; ///< false after a stop: then nothing else is to be used
};

/// Both answers at once. The ports are solved at 9 diameters and interpolated between them; each answer is
/// then solved anew at its diameter. Stop is read before every solution; progress may be empty.
[[nodiscard]] CouplingSizes coupling_sizes(const design::Design& design,
                                           const std::vector<units::Frequency>& frequencies,
                                           units::Resistance line = units::ohms(50),
                                           const base::StopToken& stop = {},
                                           const base::Progress& progress = {});

/// What a coupling loop is made of where the design has none, or another kind of coupling: 4 mm wire, its
/// axis 30 mm from that of the conductor, more where that leaves less than 10 mm between them; one fifth of
/// the loop's width (common practice, no source).
[[nodiscard]] design::Coupling default_coupling(const design::Design& design);

/// The design's coupling as another kind. What it has is kept where it fits; else, and where there is none:
/// default_coupling, a tap of an eighth of the conductor 50 mm off it (more or less where the loop asks for
/// it), a transformer of five turns (common practice, no source). A tap of several turns fits no loop: the
/// design then refuses it.
[[nodiscard]] design::Coupling coupling_of_kind(const design::Design& design, design::CouplingKind kind);

/// The first answer for one frequency. Throws base::InputError where the loop cannot be tuned to it.
[[nodiscard]] CouplingChoice best_coupling(const design::Design& design, units::Frequency frequency,
                                           units::Resistance line = units::ohms(50));

/// One diameter for all of the frequencies: the least of the worst VSWR, with the match at each.
struct CommonCoupling {
    units::Length diameter{};
    std::vector<Match> matches; ///< in the order asked
    bool complete = false;      ///< false after a stop: then nothing else is to be used
};
/// Throws base::InputError where the loop cannot be tuned to one of them, base::ProgramError for none.
[[nodiscard]] CommonCoupling common_coupling(const design::Design& design,
                                             const std::vector<units::Frequency>& frequencies,
                                             units::Resistance line = units::ohms(50),
                                             const base::StopToken& stop = {},
                                             const base::Progress& progress = {});

} // namespace loopwright::coupling
