#pragma once
// One band of a keying report: distances under every limit, their intervals, the capacitor's load.
#include "survey/keying.hpp"

namespace loopwright::survey::detail {

/// A limit of one tier at one frequency, and how much of the peak power it is held against.
struct HeldLimit {
    std::string id, standard;
    exposure::Tier tier = exposure::Tier::general_public;
    exposure::FieldLimit fields;
    double duty = 1;
};

/// The chosen limits and the own ones, public before occupational for each; those with no row at the
/// frequency left out. Throws base::InputError for an unknown id.
[[nodiscard]] std::vector<HeldLimit> held_limits(const KeyingRequest& request, units::Frequency frequency);

/// Everything but the verdict; false after a stop, the band then half filled.
[[nodiscard]] bool fill_band(KeyingBand& band, const KeyingRequest& request, const base::StopToken& stop);

/// The verdict and its reasons, worst first. intervals: whether the ends of the intervals were computed.
void judge_band(KeyingBand& band, const design::Design& design, bool intervals);

} // namespace loopwright::survey::detail
