#pragma once
// The match at one frequency in words and figures, as the Coupling section shows it.
#include "coupling/feed_size.hpp"
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

/// The measure that sets the match of a kind: "Coupling loop diameter", "Tap length", "Turns of the line".
[[nodiscard]] QString size_name(design::CouplingKind kind);
/// That measure of a coupling: "180 mm", "5 turns".
[[nodiscard]] QString size_text(const design::Coupling& coupling, units::UnitSystem system);

/// What kind of model stands behind the figures of a kind, in a sentence or two.
[[nodiscard]] QString coupling_model_words(design::CouplingKind kind);

/// "212 mm: VSWR 1.05 on 40m, 1.62 on 20m", names: of the bands, in the order of the rows. Empty where no
/// size was found.
[[nodiscard]] QString sizing_words(const coupling::FeedSize& found, const QStringList& names,
                                   units::UnitSystem system);

} // namespace loopwright::models
