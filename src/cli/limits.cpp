#include "cli/limits.hpp"

#include "base/error.hpp"
#include "base/nearest.hpp"
#include "cli/options.hpp"
#include "cli/outcomes.hpp"
#include "design/limit_ids.hpp"
#include "report/limits.hpp"
#include "survey/verdict.hpp"

#include <algorithm>

namespace loopwright::cli {
namespace {

std::vector<exposure::Limit> chosen(const Invocation& asked) {
    if (asked.file.empty()) {
        return exposure::limits();
    }
    const exposure::Limit* limit = exposure::find_limit(asked.file);
    if (limit == nullptr) {
        throw base::InputError("ID", asked.file, base::listed(design::limit_ids()));
    }
    return {*limit};
}

bool has_row(const report::LimitsAnswer& answer) {
    return std::any_of(answer.limits.begin(), answer.limits.end(), [&](const exposure::Limit& limit) {
        return std::any_of(limit.tables.begin(), limit.tables.end(), [&](const exposure::LimitTable& table) {
            return exposure::at(limit, table.tier, *answer.frequency).has_value();
        });
    });
}

} // namespace

Outcome limits(const Invocation& asked) {
    report::LimitsAnswer answer;
    answer.limits = chosen(asked);
    if (asked.has("--frequency")) {
        answer.frequency = frequency_of(asked, "--frequency");
    }
    Outcome outcome;
    if (asked.has("--json")) {
        outcome.output = report::limits_json(answer);
    } else if (asked.has("--csv")) {
        outcome.output = report::to_csv(report::limits_data(answer));
    } else {
        outcome.output = report::to_text(report::limits_page(answer));
    }
    if (answer.frequency && !has_row(answer)) {
        outcome.status = refused;
        outcome.error = error_sentence(survey::given_text(*answer.frequency) + ": no table has a row there");
    }
    return outcome;
}

void check_limit_values(const Invocation& asked) {
    static_cast<void>(chosen(asked));
}

} // namespace loopwright::cli
