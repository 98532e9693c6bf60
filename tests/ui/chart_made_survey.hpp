#pragma once
// A survey made by hand: round formulas, so that a test knows every number without the model.
#include "models/readout_model.hpp"
#include "survey/survey.hpp"

#include <memory>

namespace loopwright::test {

/// Beyond it the made survey has no numbers.
inline constexpr double made_limit_Hz = 33e6;

struct MadeOptions {
    int points = 231;
    double rating_V = 1700; ///< 0: none
    double scale = 1;       ///< of efficiency and voltage, to tell two surveys apart
    bool joints = true;
};

/// Efficiency x/(1+x) with x = scale (f/14 MHz)^3.5; voltage 1.5 kV scale sqrt(f/10 MHz); capacitance of 2.6
/// uH less 5 pF; Q 300 (f/10 MHz)^0.5; bandwidths from Q. Three bands: 40m worthwhile, 20m over the rating
/// (1.78 kV of 1.7 kV), 6m not established.
[[nodiscard]] std::shared_ptr<const survey::Survey> made_survey(const MadeOptions& options = {});

[[nodiscard]] models::Charts made_charts(const MadeOptions& options = {});

} // namespace loopwright::test
