#pragma once
// The calibrated dial of a design.
#include "design/design.hpp"
#include "tuning/calibration.hpp"
#include "tuning/tuning_curve.hpp"

#include <memory>

namespace loopwright::tuning {

/// What the calibration starts from for a design with a dial: its law, its fixed capacitors (each in use on
/// its bands; a frequency up to a tenth outside a band counts to it), the model's tuning curve. Priors as
/// HardwarePrior, with: the reading error half a finest step of the drive and half its backlash together, at
/// least 1/2000 of the travel; for a table a law deviation of half; for a capacitor made by hand 10 % of its
/// capacitance. Throws base::InputError where the design has no dial or its capacitor is refused.
[[nodiscard]] Hardware hardware_of(const design::Design& design, std::shared_ptr<const TuningCurve> curve);

/// The full-wave tuning curve of a design over dial_frequencies(). The model's points are kept by
/// loop::make_model(), so that asking again after an edit of dial or calibration takes some 0.1 ms. Throws as
/// TuningCurve and loop::make_model().
[[nodiscard]] std::shared_ptr<const TuningCurve> design_curve(const design::Design& design);

/// With the points of its calibration (none: the model alone). Throws as the two above.
[[nodiscard]] CalibratedDial calibrated_dial(const design::Design& design);
[[nodiscard]] CalibratedDial calibrated_dial(const design::Design& design,
                                             std::shared_ptr<const TuningCurve> curve);

/// Frequencies that a person may measure at: the planned bands' edges and middles, each band in steps of a
/// quarter. Throws base::InputError for an unknown region.
[[nodiscard]] std::vector<units::Frequency> measurable(const design::Design& design);

} // namespace loopwright::tuning
