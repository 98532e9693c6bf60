#pragma once
// The one measure of a coupling that sets its match, for each kind.
#include "base/job.hpp"
#include "coupling/coupled_loop.hpp"

#include <optional>
#include <vector>

namespace loopwright::coupling {

/// A size [as FeedSize::size] and the match with it.
struct SizeChoice {
    double size = 0;
    Match match;
};

struct FeedSizeRow {
    units::Frequency frequency{};
    bool in_capacitor_range = false; ///< at the loop's own resonance
    std::optional<Match> match;      ///< with the size found; absent where no capacitor tunes the loop
    std::optional<SizeChoice> best;  ///< for this frequency alone; from feed_sizes only, absent as above
};

struct FeedSize {
    design::CouplingKind kind{};
    /// Diameter of the coupling loop [m], length of the tap [m], turns of the transformer's winding: the one
    /// with the least of the worst VSWR over the frequencies that the capacitor reaches (none: over those
    /// that any capacitor tunes). Absent where there is none.
    std::optional<double> size;
    std::vector<FeedSizeRow> rows; ///< in the order asked
    bool complete = false;         ///< false after a stop: then nothing else is to be used
    double worst_vswr = 1;         ///< with that size, over the same frequencies
    base::Notices notices; ///< of the loop at the frequencies and of the coupling; from feed_sizes only
};

/// For the kind of coupling that the design has; everything else of it is kept. A coupling loop is searched
/// as coupling_sizes does, a tap from 2 % to 40 % of the conductor with its ports interpolated between 9
/// lengths, a transformer over 1 to 60 turns; the answer is solved anew. Throws base::InputError for a design
/// without a coupling, and where no size fits. Stop is read before every solution; progress may be empty.
[[nodiscard]] FeedSize feed_size(const design::Design& design,
                                 const std::vector<units::Frequency>& frequencies,
                                 units::Resistance line = units::ohms(50), const base::StopToken& stop = {},
                                 const base::Progress& progress = {});

/// The same, and for each frequency the size that matches it best.
[[nodiscard]] FeedSize feed_sizes(const design::Design& design,
                                  const std::vector<units::Frequency>& frequencies,
                                  units::Resistance line = units::ohms(50), const base::StopToken& stop = {},
                                  const base::Progress& progress = {});

} // namespace loopwright::coupling
