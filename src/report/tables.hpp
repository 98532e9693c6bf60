#pragma once
// The tables of a survey: for people few columns in usual units, for programs every figure in SI.
#include "report/table.hpp"
#include "survey/keying.hpp"
#include "survey/survey.hpp"

namespace loopwright::report {

/// The band board: band, working frequency, needed capacitance, efficiency, best gain, unloaded Q, VSWR
/// bandwidth, peak capacitor voltage, with `keying` the distance that people must keep (unfavourable end,
/// rounded up), verdict in a word.
[[nodiscard]] Table band_board(const survey::Survey& survey, const survey::Keying* keying = nullptr);

/// The same bands with every figure of docs/reference/cli.md, for CSV. Notices as codes, separated by blanks.
[[nodiscard]] Table band_data(const survey::Survey& survey, const survey::Keying* keying = nullptr);

/// The curve of a survey for people, and with every figure.
[[nodiscard]] Table sweep_table(const survey::Survey& survey);
[[nodiscard]] Table sweep_data(const survey::Survey& survey);

/// The curves of one design by both models (either order), for CSV: frequency by frequency the full wave's
/// figures and below them the closed form's, each row with the codes of the reasons why they part
/// (loop/model_difference.hpp), separated by blanks. Throws base::ProgramError where the two are no pair.
[[nodiscard]] Table models_data(const survey::Survey& one, const survey::Survey& other);

/// One point for people: quantity, value, interval where one is known.
[[nodiscard]] Table point_table(const loop::OperatingPoint& point);

} // namespace loopwright::report
