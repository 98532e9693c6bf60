#include "cli/match.hpp"

#include "band/emission.hpp"
#include "base/error.hpp"
#include "cli/options.hpp"
#include "coupling/coupling_size.hpp"
#include "coupling/feed_size.hpp"
#include "coupling/match_report.hpp"
#include "report/match.hpp"
#include "report/page.hpp"
#include "report/words.hpp"
#include "survey/survey.hpp"
#include "survey/verdict.hpp"
#include "units/text.hpp"

#include <utility>

namespace loopwright::cli {
namespace {

constexpr int refused = 1;

Outcome at_frequency(const Invocation& asked, const survey::Request& request) {
    const design::Design& design = request.design;
    if (!design.coupling) {
        throw base::InputError::sentence(
            "coupling", asked.file + ": the design has no coupling, so there is nothing to match; give it a "
                                     "'coupling', or ask with --design-coupling which size would match");
    }
    const coupling::MatchReport report = coupling::match_report(
        design, frequency_of(asked, "--frequency"), design.station.power.value, request.vswr_limit);
    Outcome outcome;
    if (asked.has("--json")) {
        outcome.output = report::match_json(report, design);
    } else if (asked.has("--csv")) {
        outcome.output = report::to_csv(report::match_curve_data(report));
    } else {
        outcome.output = report::to_text(report::match_page(report, design));
    }
    const auto emission = band::find_emission(design.station.emission);
    const survey::Reason worst =
        survey::reasons(report.alone, design, emission.value_or(band::Emission{})).front();
    if (worst.verdict == survey::BandVerdict::voltage_exceeded ||
        worst.verdict == survey::BandVerdict::not_established) {
        outcome.status = refused;
        outcome.error =
            std::string(program) + ": " +
            report::with_plain_blanks(survey::given_text(report.alone.frequency) + ": " + worst.text) + "\n";
    }
    return outcome;
}

/// The amateur band of the design's region that the frequency lies in, or nothing.
std::string band_at(const design::Design& design, units::Frequency frequency) {
    for (const band::Band& band : band::bands_of(design.station.region)) {
        if (frequency >= band.low && frequency <= band.high) {
            return band.name;
        }
    }
    return {};
}

report::NamedSizes sizes_of(const Invocation& asked, const design::Design& design) {
    report::NamedSizes named;
    if (design.feed_line) {
        named.line = design.feed_line->impedance.value;
    }
    std::vector<units::Frequency> frequencies;
    if (asked.has("--frequency")) {
        frequencies.push_back(frequency_of(asked, "--frequency"));
        named.bands.push_back(band_at(design, frequencies.back()));
    } else {
        const auto emission = band::find_emission(design.station.emission).value_or(band::Emission{});
        for (const band::Band& band : survey::planned_bands(design)) {
            frequencies.push_back(band.usual + emission.centre_above_dial); // as on the band board
            named.bands.push_back(band.name);
        }
    }
    named.sizes = coupling::feed_sizes(design, frequencies, named.line);
    return named;
}

Outcome design_coupling(const Invocation& asked, design::Design design) {
    if (!design.coupling) {
        design.coupling = coupling::default_coupling(design); // a coupling loop
    }
    const report::NamedSizes named = sizes_of(asked, design);
    Outcome outcome;
    if (asked.has("--json")) {
        outcome.output = report::coupling_sizes_json(named, design);
    } else if (asked.has("--csv")) {
        outcome.output = report::to_csv(report::coupling_sizes_data(named));
    } else {
        outcome.output = report::to_text(report::coupling_sizes_page(named, design));
    }
    if (!named.sizes.size) {
        outcome.status = refused;
        outcome.error = std::string(program) + ": no capacitor tunes this loop to any of the frequencies\n";
    }
    return outcome;
}

} // namespace

Outcome match(const Invocation& asked, design::Design design) {
    const survey::Request request = request_of(asked, std::move(design));
    return asked.has("--design-coupling") ? design_coupling(asked, request.design)
                                          : at_frequency(asked, request);
}

} // namespace loopwright::cli
