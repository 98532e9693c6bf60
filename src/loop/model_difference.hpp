#pragma once
// Where the two models part at a frequency, and why.
#include "design/design.hpp"
#include "loop/operating_point.hpp"

#include <string>
#include <vector>

namespace loopwright::loop {

/// One thing that only the full-wave model knows, with its size here.
struct DifferenceReason {
    std::string code; ///< "ground", "current_not_even", "soil_reflects", "closed_form_range", "own_charge"
    std::string text; ///< one sentence with the numbers
    bool operator==(const DifferenceReason&) const = default;
};

/// Closed form against full wave, both at the same frequency and power. Ratios are full wave / closed form;
/// absent where one of the two is not established.
struct ModelDifference {
    std::optional<double> resistance_ratio; ///< of the total
    std::optional<double> efficiency_ratio;
    std::optional<double> voltage_ratio;
    std::optional<units::Capacitance> capacitance; ///< full wave less closed form
    std::vector<DifferenceReason> reasons;         ///< the weightiest first; empty: the two agree
};

/// Reasons are given where they move a figure by more than 1 % (or 0.5 pF). Throws base::ProgramError for
/// points that are not of the two models at one frequency.
[[nodiscard]] ModelDifference difference(const OperatingPoint& closed_form, const OperatingPoint& full_wave,
                                         const design::Ground& ground);

} // namespace loopwright::loop
