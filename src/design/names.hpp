#pragma once
// The words that design files and messages use for the choices of a design.
#include "design/design.hpp"

#include <optional>
#include <string>
#include <string_view>
#include <vector>

namespace loopwright::design {

[[nodiscard]] std::string name_of(Outline outline);         ///< "circle"
[[nodiscard]] std::string name_of(SizeMeaning meaning);     ///< "across_flats"
[[nodiscard]] std::string name_of(Arrangement arrangement); ///< "stack"
[[nodiscard]] std::string name_of(ConductorForm form);      ///< "tube"
[[nodiscard]] std::string name_of(Plane plane);             ///< "vertical"
[[nodiscard]] std::string name_of(CouplingKind kind);       ///< "loop"
[[nodiscard]] std::string name_of(PlateEdges edges);        ///< "plain"
[[nodiscard]] std::string name_of(SectionArrangement how);  ///< "split_stator"
[[nodiscard]] std::string name_of(AddedConnection how);     ///< "parallel"
[[nodiscard]] std::string name_of(Habit habit);             ///< "alternate_slots"
[[nodiscard]] std::string name_of(LimitTier tier);          ///< "public"
[[nodiscard]] std::string name_of(DialLaw law);             ///< "frequency"
[[nodiscard]] std::string name_of(DialScale scale);         ///< "degrees"
[[nodiscard]] std::string name_of(MadeKind kind);           ///< "plates"

/// All words of a choice, in the order of its enumeration.
template <class Choice>
[[nodiscard]] const std::vector<std::string>& names();
template <>
const std::vector<std::string>& names<Outline>();
template <>
const std::vector<std::string>& names<SizeMeaning>();
template <>
const std::vector<std::string>& names<Arrangement>();
template <>
const std::vector<std::string>& names<ConductorForm>();
template <>
const std::vector<std::string>& names<Plane>();
template <>
const std::vector<std::string>& names<CouplingKind>();
template <>
const std::vector<std::string>& names<PlateEdges>();
template <>
const std::vector<std::string>& names<SectionArrangement>();
template <>
const std::vector<std::string>& names<AddedConnection>();
template <>
const std::vector<std::string>& names<Habit>();
template <>
const std::vector<std::string>& names<LimitTier>();
template <>
const std::vector<std::string>& names<DialLaw>();
template <>
const std::vector<std::string>& names<DialScale>();
template <>
const std::vector<std::string>& names<MadeKind>();

/// The choice of a word, or nothing.
template <class Choice>
[[nodiscard]] std::optional<Choice> choice_of(std::string_view word) {
    const auto& all = names<Choice>();
    for (std::size_t i = 0; i < all.size(); ++i) {
        if (all[i] == word) {
            return static_cast<Choice>(i);
        }
    }
    return std::nullopt;
}

/// What a size may mean for an outline with that many sides; the first is the default.
[[nodiscard]] std::vector<SizeMeaning> size_meanings(Outline outline, int sides);

} // namespace loopwright::design
