#pragma once
// What every JSON answer shares.
#include "base/notice.hpp"
#include "loop/operating_point.hpp"
#include "report/table.hpp"
#include "units/quantities.hpp"

#include <nlohmann/json.hpp>

#include <optional>
#include <string>
#include <string_view>

namespace loopwright::report::detail {

using Json = nlohmann::ordered_json;

/// Throws base::ProgramError for a number that is not finite.
[[nodiscard]] Json number_of(double value);
/// Its SI value; null where there is none.
template <class Quantity>
[[nodiscard]] Json si_of(const std::optional<Quantity>& quantity) {
    return quantity ? number_of(quantity->value()) : Json(nullptr);
}
/// null where there is none.
[[nodiscard]] Json decibels_of(const std::optional<units::Decibel>& value);

/// Number, flag, text or null.
[[nodiscard]] Json json_of(const Cell& cell);
/// Puts a value under a path; objects with a dot.
void put(Json& object, std::string_view path, Json value);

/// Their texts with ordinary blanks.
[[nodiscard]] Json notices_of(const base::Notices& notices);

/// `schema`, every figure and the notices of a point.
void put_point(Json& object, const loop::OperatingPoint& point);

/// Indented by two blanks, with a line feed at the end. Text of a person's file is UTF-8 by then; should it
/// not be, a replacement character is better than no answer.
[[nodiscard]] std::string text_of(const Json& json);

} // namespace loopwright::report::detail
