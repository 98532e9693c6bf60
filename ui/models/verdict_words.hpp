#pragma once
// A verdict for the eye: a word and a symbol of its own each, so that colour says nothing that they do not.
#include "survey/survey.hpp"

#include <QString>

namespace loopwright::models {

/// "worth using", "over the rating". Never calls a band harmless.
[[nodiscard]] QString verdict_word(survey::BandVerdict verdict);
/// One character, different for every verdict.
[[nodiscard]] QString verdict_symbol(survey::BandVerdict verdict);
/// True where the band cannot or must not be used as it is.
[[nodiscard]] bool forbids(survey::BandVerdict verdict);
/// All sentences of a row, worst first: "Needs 9.1 pF; the capacitor starts at 12 pF. Radiates 80 % ...".
[[nodiscard]] QString verdict_sentences(const survey::BandRow& row);

} // namespace loopwright::models
