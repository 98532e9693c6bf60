#include "cli/drift.hpp"

#include "band/emission.hpp"
#include "base/error.hpp"
#include "cli/options.hpp"
#include "cli/outcomes.hpp"
#include "design/on_band.hpp"
#include "report/drift.hpp"
#include "survey/survey.hpp"
#include "survey/verdict.hpp"
#include "units/text.hpp"

#include <cmath>
#include <utility>

namespace loopwright::cli {
namespace {

constexpr double usual_rise_K = 15;
constexpr double most_rise_K = 100;

/// A difference: "15K", "-20 K".
double rise_of(const Invocation& asked) {
    if (!asked.has("--rise")) {
        return usual_rise_K;
    }
    const std::string& text = asked.values.find("--rise")->second;
    const std::string plain = units::trimmed(text);
    const base::InputError refusal("--rise", text,
                                   "a change of temperature from -100 K to 100 K, such as '15K'");
    if (plain.size() < 2 || plain.back() != 'K') {
        throw base::InputError(refusal);
    }
    double rise = 0;
    try {
        rise = units::parse_si(plain.substr(0, plain.size() - 1), units::Dimension::number, "--rise");
    } catch (const base::InputError&) {
        throw base::InputError(refusal);
    }
    if (!(std::abs(rise) <= most_rise_K)) {
        throw base::InputError(refusal);
    }
    return rise;
}

} // namespace

Outcome drift(const Invocation& asked, design::Design design) {
    const survey::Request request = request_of(asked, std::move(design));
    report::DriftAnswer answer;
    answer.rise_K = rise_of(asked);
    const auto add = [&](const std::string& band, const design::Design& there, units::Frequency frequency) {
        answer.rows.push_back({band, tuning::drift({there, frequency, answer.rise_K, request.vswr_limit})});
    };
    if (asked.has("--frequency")) {
        add("", request.design, frequency_of(asked, "--frequency"));
    } else {
        const auto emission = band::find_emission(request.design.station.emission).value_or(band::Emission{});
        for (const band::Band& band : survey::planned_bands(request.design)) {
            add(band.name, design::on_band(request.design, band.name),
                band.usual + emission.centre_above_dial);
        }
    }
    Outcome outcome;
    outcome.output = asked.has("--json") ? report::drift_json(answer, request.design)
                     : asked.has("--csv")
                         ? report::to_csv(report::drift_data(answer))
                         : report::to_text(report::drift_page(answer, request.design), wide_page);
    for (const report::NamedDrift& row : answer.rows) {
        if (!row.report.usable_span && outcome.status == done) {
            outcome.status = refused;
            outcome.error = error_sentence(survey::given_text(row.report.point.frequency) +
                                           ": the model stands behind no number here");
        }
    }
    return outcome;
}

void check_drift_values(const Invocation& asked) {
    static_cast<void>(rise_of(asked));
}

} // namespace loopwright::cli
