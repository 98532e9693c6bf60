#include "cli/card.hpp"

#include "band/emission.hpp"
#include "base/error.hpp"
#include "base/nearest.hpp"
#include "cli/beside.hpp"
#include "cli/options.hpp"
#include "cli/outcomes.hpp"
#include "cli/workbench.hpp"
#include "report/card.hpp"
#include "survey/card.hpp"
#include "survey/keying.hpp"
#include "survey/site_voltage.hpp"
#include "survey/verdict.hpp"
#include "units/text.hpp"

#include <algorithm>
#include <utility>

namespace loopwright::cli {
namespace {

survey::CardRequest card_request(const Invocation& asked, design::Design design) {
    const survey::Request shared = request_of(asked, std::move(design));
    survey::CardRequest request{shared.design, shared.vswr_limit};
    if (asked.has("--region")) {
        request.design.station.region = count_of(asked, "--region", 1, 3);
    }
    return request;
}

std::optional<band::Emission> emission_of(const Invocation& asked) {
    if (!asked.has("--emission")) {
        return std::nullopt;
    }
    const std::string& id = asked.values.find("--emission")->second;
    auto emission = band::find_emission(id);
    if (!emission) {
        throw base::InputError("--emission", id, base::listed(band::emission_ids()));
    }
    return emission;
}

survey::Keying keying_of(const survey::CardRequest& request) {
    survey::KeyingRequest keying;
    keying.design = request.design;
    return survey::keying(keying);
}

/// Status and sentence of a row that must not be built upon.
void judge(Outcome& outcome, const survey::CardRow& row) {
    for (const survey::CardRemark& remark : row.remarks) {
        const bool against = remark.kind == survey::CardRemarkKind::voltage_exceeded ||
                             remark.kind == survey::CardRemarkKind::not_established;
        if (against && outcome.status == done) {
            outcome.status = refused;
            outcome.error = error_sentence(survey::given_text(row.tuned()) + ": " + remark.text);
        }
    }
}

/// What the workbench is asked for, so that the PDF comes from the one path that paints pages.
std::vector<std::string> painting(const Invocation& asked) {
    std::vector<std::string> words{"--card", asked.values.find("--pdf")->second, asked.file};
    for (const char* option : {"--paper", "--region", "--vswr", "--power"}) {
        if (asked.has(option)) {
            words.emplace_back(option);
            words.push_back(asked.values.find(option)->second);
        }
    }
    if (asked.has("--pocket")) {
        words.emplace_back("--pocket");
    }
    return words;
}

} // namespace

Outcome card(const Invocation& asked, design::Design design) {
    const survey::CardRequest request = card_request(asked, std::move(design));
    Outcome outcome;
    if (asked.has("--pdf")) {
        const std::string problem = run_workbench(painting(asked));
        if (!problem.empty()) {
            return {"", error_sentence(problem), refused};
        }
    }
    const survey::Keying keying = keying_of(request);
    const survey::Card card = survey::with_keying(survey::card(request), keying);
    if (asked.has("--csv")) {
        outcome.output = report::to_csv(report::card_data(card));
    } else if (asked.has("--json")) {
        outcome.output = report::card_json(card, &keying);
    } else if (!asked.has("--pdf")) {
        outcome.output = report::to_text(report::card_page(card, keying), 130);
    }
    for (const survey::CardRow& row : card.rows) {
        judge(outcome, row);
    }
    judge_beside(outcome, keying);
    return outcome;
}

Outcome dial(const Invocation& asked, design::Design design) {
    const survey::CardRequest request = card_request(asked, std::move(design));
    const survey::CardRow row =
        survey::card_row(request, frequency_of(asked, "--frequency"), emission_of(asked));
    Outcome outcome;
    outcome.output = asked.has("--json") ? report::card_row_json(row, request)
                                         : report::to_text(report::card_row_page(row, request), 130);
    judge(outcome, row);
    if (!row.reachable && outcome.status == done) {
        outcome.status = refused;
        outcome.error = error_sentence(survey::given_text(row.tuned()) + ": " + row.remarks.front().text);
    }
    return outcome;
}

void check_card_values(const Invocation& asked) {
    static_cast<void>(card_request(asked, {}));
    static_cast<void>(emission_of(asked));
    for (const char* option : {"--paper", "--pocket"}) {
        if (asked.has(option) && !asked.has("--pdf")) {
            throw base::InputError::sentence(option, std::string(option) + " goes with --pdf");
        }
    }
}

} // namespace loopwright::cli
