#pragma once
// The sentences that stand first on a page: volts against the rating, and the distance people must keep.
#include "design/design.hpp"
#include "report/page.hpp"
#include "survey/card.hpp"
#include "survey/keying.hpp"
#include "survey/survey.hpp"

#include <optional>
#include <string>
#include <string_view>
#include <vector>

namespace loopwright::report {

/// The highest peak capacitor voltage of the planned bands against the rating, the bands where none is
/// established, and the distance: from the report before keying where there is one.
[[nodiscard]] std::vector<Sentence> hazards(const survey::Survey& survey,
                                            const survey::Keying* keying = nullptr);

/// The same from the report before keying alone: all causes of doubt together, every member of the capacitor,
/// the most unfavourable verdict of all bands; with a card that of all its rows.
[[nodiscard]] std::vector<Sentence> keying_hazards(const survey::Keying& keying,
                                                   const survey::Card* card = nullptr);

/// What people must keep on a band of that name, widest limit for the public; null where there is no report,
/// no such band, none of its figures count (out of reach) or one is not established.
[[nodiscard]] const survey::KeyingDistance* distance_on(const survey::Keying* keying,
                                                        std::string_view band) noexcept;

/// Whether people, at the distance entered, are nearer than a public limit asks on the band (upper end).
/// Nothing where no distance was entered, none is established, or the band is out of reach.
[[nodiscard]] std::optional<bool> people_too_near(const survey::Keying& keying,
                                                  const survey::KeyingBand& band);
/// On any band; false only where every reached band says so.
[[nodiscard]] std::optional<bool> people_too_near(const survey::Keying& keying);

/// To the next centimetre up [m].
[[nodiscard]] double rounded_up_m(units::Length length);
/// A distance in centimetres, never rounded down.
[[nodiscard]] std::string distance_text(units::Length distance);

/// Of the curve of a survey: the highest voltage among the frequencies that the capacitor reaches.
[[nodiscard]] std::vector<Sentence> sweep_hazards(const survey::Survey& survey);

/// The same for one point.
[[nodiscard]] std::vector<Sentence> hazards(const loop::OperatingPoint& point, const design::Design& design);

} // namespace loopwright::report
