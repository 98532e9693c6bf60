#pragma once
// Where a number comes from: for every headline quantity of an operating point its formula, the values that
// stand in it, its source and its range of validity, as text for people.
#include "design/design.hpp"
#include "loop/operating_point.hpp"
#include "units/text.hpp"

#include <string>
#include <string_view>
#include <vector>

namespace loopwright::loop {

struct Symbol {
    std::string name;    ///< as in the formula: "R"
    std::string meaning; ///< "radius of the loop"
    std::string value;   ///< with its unit, as shown to people
};

struct Explanation {
    std::string key;   ///< as `point` prints it: "inductance_H", "resistance_ohm.radiation", "efficiency"
    std::string title; ///< "Inductance"
    std::string formula;
    std::vector<Symbol> symbols; ///< the result first
    std::string source;          ///< author and work, or the chapter of the theory with its equation
    std::string validity;        ///< where it holds, how well, what is left out
};

/// All headline quantities of an established point, in the order of `point`; empty where the model does not
/// stand behind the point. Texts are English.
[[nodiscard]] std::vector<Explanation> explanations(const design::Design& design, const OperatingPoint& point,
                                                    units::UnitSystem system = units::UnitSystem::metric);

/// One of them by its key; base::ProgramError for a key that does not exist. Without a title: the point is
/// not established.
[[nodiscard]] Explanation explain(std::string_view key, const design::Design& design,
                                  const OperatingPoint& point,
                                  units::UnitSystem system = units::UnitSystem::metric);

} // namespace loopwright::loop
