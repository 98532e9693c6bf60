#pragma once
// Everything a person asks of the match at one frequency, computed once for window and command line.
#include "base/job.hpp"
#include "coupling/coupled_loop.hpp"
#include "coupling/feed_line.hpp"

#include <optional>
#include <vector>

namespace loopwright::coupling {

/// The line between radio and feed point at this frequency.
struct LineShare {
    units::Decibel matched_loss;
    units::Decibel total_loss; ///< with the extra loss of the standing wave
};

struct CurveRow {
    MatchPoint point;
    double vswr_at_radio = 1;
};

struct MistuningRow {
    Mistuning point;
    double vswr_at_radio = 1;
};

struct MatchReport {
    loop::OperatingPoint alone;      ///< the loop without coupling, for the power accepted at the feed point
    units::Resistance line{};        ///< what the standing-wave ratios are on
    std::optional<Match> match;      ///< absent where the loop's resonance is not established
    bool in_capacitor_range = false; ///< the capacitance of the match
    double efficiency = 0;           ///< power to the sky over the power accepted at the feed point
    double vswr_at_radio = 1;        ///< equal to that of the match where no feed line is given
    std::optional<LineShare> feed_line;
    std::optional<units::Frequency> bandwidth; ///< to the limit asked, at the feed point
    std::vector<CurveRow> curve;
    std::vector<MistuningRow> mistuning;
    base::Notices notices; ///< of the loop, of the coupling and of the feed line
    bool complete = true;  ///< false after a stop: then nothing else is to be used
};

/// curve: 41 points over 4 half-power bandwidths of the matched loop (at most 30 % of the frequency).
/// mistuning: round offsets of the capacitor around those that shift the loop by up to 4 half widths.
/// Stop is read between the parts. Throws base::InputError for a design without a coupling, or one that does
/// not fit.
[[nodiscard]] MatchReport match_report(const design::Design& design, units::Frequency frequency,
                                       units::Power power, double vswr_limit,
                                       const base::StopToken& stop = {});

} // namespace loopwright::coupling
