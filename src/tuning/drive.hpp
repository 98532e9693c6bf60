#pragma once
// Whether a hand on this drive can set the loop to a frequency at all. docs/theory/retune-card.md, (RC1) to
// (RC4).
#include "design/design.hpp"
#include "units/quantities.hpp"

#include <optional>

namespace loopwright::tuning {

/// With the wanted setting halfway between two steps the loop may be off by this share of the way to the
/// edge of its usable span; more, and the drive does not resolve the frequency. Our choice: VSWR 1.4 for a
/// span at VSWR 2.
inline constexpr double widest_step_share = 0.5;

struct Drive {
    double step = 0;                     ///< finest change of reading: hand_step / reduction
    units::Frequency step_frequency{};   ///< what that is in frequency
    double share = 0;                    ///< step_frequency / usable span
    double worst_vswr = 1;               ///< half a step off, of a loop matched at resonance
    bool resolves = true;                ///< share <= widest_step_share
    std::optional<int> needed_reduction; ///< N of N:1, whole; nothing where the drive resolves
};

/// reading_per_Hz: change of the reading with frequency, of either sign. usable_span: between the edges at
/// `vswr`. Throws base::ProgramError for a span, a vswr (> 1), a step or a reduction that is not above 0.
[[nodiscard]] Drive judge_drive(const design::Dial& dial, double reading_per_Hz, units::Frequency usable_span,
                                double vswr);

/// VSWR of a loop matched at resonance, `share` of the way from there to the edge where it reaches
/// `edge_vswr`: reflection x/sqrt(4 + x^2) with x = share (s - 1)/sqrt(s), of Z = R (1 + j x). share >= 0.
[[nodiscard]] double vswr_within_span(double share, double edge_vswr);

} // namespace loopwright::tuning
