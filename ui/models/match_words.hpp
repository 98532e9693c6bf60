#pragma once
// The match at one frequency in words and figures, as the Coupling section shows it.
#include "coupling/coupling_size.hpp"
#include "coupling/match_report.hpp"
#include "models/headline.hpp"
#include "models/match_plot.hpp"

#include <vector>

namespace loopwright::models {

/// VSWR, input impedance, VSWR at the radio (only with a feed line), capacitance, bandwidth. ids:
/// "match.vswr", "match.input", "match.vswr_at_radio", "match.capacitance", "match.bandwidth". Without a
/// match all of them say 'not established' and why.
[[nodiscard]] std::vector<Headline> match_headlines(const coupling::MatchReport& report, double vswr_limit);

/// What the Smith chart and the VSWR curve draw.
[[nodiscard]] MatchPlot plot_of(const coupling::MatchReport& report, double vswr_limit);

/// The one size for all (common), or the best of the first row; null where there is none.
[[nodiscard]] const units::Length* chosen_size(const coupling::CouplingSizes& sizes, bool common);

/// "212 mm; VSWR 1.05 on 40m, 1.62 on 20m", names: of the bands, in the order of the rows. common: the one
/// size for all, else the best of the first row. Empty where there is none.
[[nodiscard]] QString sizing_words(const coupling::CouplingSizes& sizes, const QStringList& names,
                                   bool common, units::UnitSystem system);

} // namespace loopwright::models
