#pragma once
// What a band is worth with this loop, in words.
#include "band/emission.hpp"
#include "design/design.hpp"
#include "survey/survey.hpp"
#include "units/text.hpp"

#include <optional>
#include <string>
#include <vector>

namespace loopwright::survey {

/// Shares of the power that reach the sky which separate worthwhile, weak and very weak: common practice, no
/// source. 10 % is 10 dB (one and two thirds S units of 6 dB) below all of the power, 1 % is 20 dB.
inline constexpr double worthwhile_from = 0.10;
inline constexpr double weak_from = 0.01;

/// How an efficiency is printed, wherever a verdict may stand beside it: rounded to `digits` significant
/// digits (1 to 6), with more of them, up to 6, where rounding would lift it onto a limit that it is
/// below. 9.96 % with two digits stays 9.96 %, not 10 % beside the word weak. Nearer than six digits
/// tell: 9.99999 %.
struct EfficiencyFigure {
    double share = 0;
    int digits = 3;
};
[[nodiscard]] EfficiencyFigure efficiency_to_print(double share, int digits);

/// What the volts across the whole capacitor are held against at a point.
struct VoltageLimit {
    units::Voltage limit;
    bool as_rated; ///< the number a person gave; else worked out from gap, members and currents
    bool unrated_members = false;
};

/// Nothing where no member has a rating. The point must have a resonance.
[[nodiscard]] std::optional<VoltageLimit> voltage_limit(const loop::OperatingPoint& point,
                                                        const design::Design& design);

/// Everything that decides about a band, worst first; never empty, and the first is the verdict. Limits are
/// held against the unfavourable end of an interval: lower efficiency and bandwidth, higher voltage, either
/// end of the needed capacitance, and the volts against what the network of the capacitor stands
/// (capacitor::NetworkLoad::allowed_peak). Without a rating no verdict is given on volts and the text says
/// so. No reason ever calls a state harmless. Capacitor limits are those of minimum and maximum with stray.
[[nodiscard]] std::vector<Reason> reasons(const loop::OperatingPoint& point, const design::Design& design,
                                          const band::Emission& emission);

/// Text of a value that somebody gave (a rating, a limit, a width), in contrast to a computed one: at most
/// six digits and no zeros at its end ("2 kV", "15.3 pF").
[[nodiscard]] std::string given_text(double value_in_si, units::Dimension dimension);
template <class Quantity>
[[nodiscard]] std::string given_text(Quantity quantity) {
    return given_text(quantity.value(), units::DimensionOf<Quantity>::value);
}

} // namespace loopwright::survey
