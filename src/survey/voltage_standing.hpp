#pragma once
// What all planned bands, or all rows of a card, say together about the capacitor's voltage: the most
// unfavourable verdict, never that of one band alone.
#include "survey/card.hpp"
#include "survey/keying.hpp"

#include <optional>
#include <string>
#include <vector>

namespace loopwright::survey {

/// Across the whole capacitor at one place.
struct CarriedVoltage {
    std::string where;                    ///< "40m", on a card "40m SSB voice"
    units::Voltage peak{};                ///< unfavourable end
    std::optional<units::Voltage> usable; ///< peak, by the members that have a rating
    bool unrated_members = false;         ///< a member there has none: `usable` is no clearance
    units::Power power{};
    loop::Model model = loop::Model::full_wave;

    [[nodiscard]] bool over() const { return usable && peak > *usable; }
    [[nodiscard]] bool rated() const { return usable && !unrated_members; }
};

enum class RatingVerdict {
    within,          ///< on every place, and every member is rated
    not_established, ///< a voltage or a rating is missing somewhere, nothing known is exceeded
    exceeded,        ///< somewhere
};
/// Stable word for files: "within", "not_established", "exceeded".
[[nodiscard]] const char* name_of(RatingVerdict verdict) noexcept;

struct VoltageStanding {
    RatingVerdict verdict = RatingVerdict::not_established;
    /// Of the places whose members are all rated or that are over: the one nearest to its usable voltage, or
    /// most over it; where there is none such, the highest voltage. Nothing: no place is reached.
    std::optional<CarriedVoltage> nearest;
    std::optional<CarriedVoltage> highest; ///< the highest voltage of all, whatever its rating
    std::vector<std::string> unrated;      ///< bands where a member has no rating
    std::vector<std::string> unknown;      ///< bands where no voltage is established
    /// Some rating was entered: what then has none is left out, not forgone.
    bool any_rating = false;
};

/// Of the bands that the capacitor reaches.
[[nodiscard]] VoltageStanding voltage_standing(const Keying& keying);
/// Of every row of the card that the capacitor reaches, and of the planned bands that have no row. Rows with
/// the unfavourable ends of the report: with_keying().
[[nodiscard]] VoltageStanding voltage_standing(const Keying& keying, const Card& card);

} // namespace loopwright::survey
