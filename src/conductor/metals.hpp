#pragma once
// Metals by name: conductivity at 20 degC, its temperature coefficient and where they come from.
#include "units/quantities.hpp"

#include <string>
#include <string_view>
#include <vector>

namespace loopwright::conductor {

struct MetalData {
    std::string name;                             ///< lower case, as in a design file
    units::Conductivity conductivity{};           ///< nominal, at 20 degC
    units::PerKelvin temperature_coefficient{};   ///< of the resistivity, referred to 20 degC
    std::string source;                           ///< document, and what in it is from memory
    units::Interval<units::Conductivity> range{}; ///< where published copies disagree; else both ends nominal
};

/// All metals, in the order a person is offered them.
[[nodiscard]] const std::vector<MetalData>& metals();

/// The metal of that name; upper case, outer blanks and the spelling "aluminum" are forgiven.
/// Throws base::InputError for an unknown one, with the one that was meant and all known ones; `where` is the
/// place it names.
[[nodiscard]] const MetalData& find_metal(std::string_view name,
                                          const std::string& where = "conductor.metal");

/// sigma20 / (1 + alpha (T - 20 degC)) [S/m], (C7). A straight line in resistivity, good to about 1 % from
/// -40 to 120 degC. Throws base::InputError outside -100 to 250 degC, base::ProgramError for a conductivity
/// that is not positive or a coefficient that makes the resistivity vanish.
[[nodiscard]] units::Conductivity conductivity_at(units::Conductivity at_20_celsius,
                                                  units::PerKelvin temperature_coefficient,
                                                  units::Temperature temperature,
                                                  const std::string& where = "conductor.temperature");
[[nodiscard]] units::Conductivity conductivity_at(const MetalData& metal, units::Temperature temperature);

} // namespace loopwright::conductor
