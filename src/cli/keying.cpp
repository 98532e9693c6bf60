#include "cli/keying.hpp"

#include "band/emission.hpp"
#include "base/error.hpp"
#include "base/nearest.hpp"
#include "cli/options.hpp"
#include "cli/outcomes.hpp"
#include "design/limit_ids.hpp"
#include "report/keying.hpp"
#include "survey/keying.hpp"
#include "survey/verdict.hpp"
#include "units/text.hpp"

#include <algorithm>
#include <utility>

namespace loopwright::cli {
namespace {

std::vector<std::string> limits_of(const Invocation& asked) {
    std::vector<std::string> ids;
    const std::string& text = asked.values.find("--limits")->second;
    for (std::size_t start = 0; start <= text.size();) {
        const std::size_t end = std::min(text.find(',', start), text.size());
        std::string id = text.substr(start, end - start);
        const auto& known = design::limit_ids();
        if (std::find(known.begin(), known.end(), id) == known.end()) {
            throw base::InputError("--limits", id, base::listed(known));
        }
        ids.push_back(std::move(id));
        start = end + 1;
    }
    return ids;
}

survey::KeyingRequest keying_request(const Invocation& asked, design::Design design) {
    survey::KeyingRequest request;
    request.design = request_of(asked, std::move(design)).design;
    design::Station& station = request.design.station;
    if (asked.has("--emission")) {
        const std::string& id = asked.values.find("--emission")->second;
        const auto emission = band::find_emission(id);
        if (!emission) {
            throw base::InputError("--emission", id, base::listed(band::emission_ids()));
        }
        station.emission = emission->id;
        station.use.reset(); // the habit of the design belongs to its own emission
    }
    if (asked.has("--people")) {
        const std::string& text = asked.values.find("--people")->second;
        request.design.site.people_distance = {
            length_of(asked, "--people", units::metres(0.1), units::metres(100)), text};
    }
    if (asked.has("--reach")) {
        const std::string& text = asked.values.find("--reach")->second;
        station.reach = {length_of(asked, "--reach", units::metres(0.1), units::metres(100)), text};
    }
    if (asked.has("--limits")) {
        request.limits = limits_of(asked);
    }
    if (asked.has("--frequency")) {
        request.frequencies = {frequency_of(asked, "--frequency")};
    }
    request.intervals = !asked.has("--nominal");
    return request;
}

} // namespace

Outcome keying(const Invocation& asked, design::Design design) {
    const survey::Keying keying = survey::keying(keying_request(asked, std::move(design)));
    Outcome outcome;
    if (asked.has("--json")) {
        outcome.output = report::keying_json(keying);
    } else if (asked.has("--csv")) {
        outcome.output = report::to_csv(report::keying_data(keying));
    } else {
        outcome.output = report::to_text(report::keying_page(keying));
    }
    // A band out of the capacitor's reach speaks against the whole only where nothing else was asked for.
    const survey::KeyingBand* worst = nullptr;
    for (const survey::KeyingBand& band : keying.bands) {
        const bool against =
            band.verdict == survey::KeyingVerdict::exceeded ||
            band.verdict == survey::KeyingVerdict::not_established ||
            (band.verdict == survey::KeyingVerdict::out_of_reach && keying.bands.size() == 1);
        if (against &&
            (worst == nullptr || static_cast<int>(band.verdict) > static_cast<int>(worst->verdict))) {
            worst = &band;
        }
    }
    if (worst != nullptr) {
        outcome.status = refused;
        outcome.error =
            error_sentence((worst->band.empty() ? survey::given_text(worst->point.frequency) : worst->band) +
                           ": " + worst->reasons.front().text);
    }
    return outcome;
}

void check_keying_values(const Invocation& asked) {
    static_cast<void>(keying_request(asked, {}));
}

} // namespace loopwright::cli
