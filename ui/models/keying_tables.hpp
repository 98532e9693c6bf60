#pragma once
// Tables of one band of the sheet before keying. No widget.
#include "models/text_table_model.hpp"
#include "survey/keying.hpp"
#include "units/text.hpp"

namespace loopwright::models {

/// A row a limit and tier: fields, power averaged, distance with its interval, body average, direction,
/// cause, powers.
[[nodiscard]] TextTable distance_table(const survey::KeyingBand& band, const design::Design& design,
                                       units::UnitSystem system);
/// A row a member of the capacitor: volts, amperes, heat, and what it stands.
[[nodiscard]] TextTable member_table(const survey::KeyingBand& band);

} // namespace loopwright::models
