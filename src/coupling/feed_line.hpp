#pragma once
// The line between radio and loop: what it takes of the power and what it makes of the standing-wave ratio.
#include "base/notice.hpp"
#include "units/quantities.hpp"

#include <vector>

namespace loopwright::coupling {

/// Matched loss of a line per length at one frequency, as a data sheet prints it [dB/m].
struct LossPoint {
    units::Frequency frequency{};
    double loss_dB_per_m = 0;
};

struct FeedLine {
    units::Length length{};
    units::Resistance impedance{units::ohms(50)};
    std::vector<LossPoint> loss; ///< none: a line without loss
};

/// Matched loss of the whole line [dB] at a frequency: a sqrt(f) + b f with a, b >= 0 through the loss points
/// (least squares in the relative error; one point: a only). The two terms are the conductors' skin effect
/// and the dielectric. Adds notice `feed_line_extrapolated` (caution) more than a factor 3 outside the
/// points. Throws base::InputError for loss or length below zero or a frequency of 0.
[[nodiscard]] units::Decibel matched_loss(const FeedLine& line, units::Frequency frequency,
                                          base::Notices* notices);

/// What the radio sees and what reaches the loop, for a load of the given standing-wave ratio at the far end.
struct LineEnd {
    double vswr_at_radio = 1;  ///< |G| shrinks by the matched loss twice
    units::Decibel total_loss; ///< matched loss and the extra loss of the standing wave
};
/// total loss = 10 log10[(A^2 - |G|^2)/(A (1 - |G|^2))], A = 10^(matched dB/10), |G| at the load.
/// Source: power balance of a line of real impedance (derived in docs/theory/coupling.md). Range: loss small
/// enough per wavelength for the impedance to be real, as on every usual cable at HF.
[[nodiscard]] LineEnd line_end(units::Decibel matched_loss, double vswr_at_load);

} // namespace loopwright::coupling
