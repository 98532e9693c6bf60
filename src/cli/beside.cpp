#include "cli/beside.hpp"

#include "survey/verdict.hpp"
#include "survey/voltage_standing.hpp"

namespace loopwright::cli {
namespace {

/// Only the missing rating of a design that has none at all is forgone.
bool forgone(const survey::KeyingBand& band, bool any_rating) {
    return !any_rating && band.point.resonance && band.reasons.size() == 1 && !band.usable_voltage &&
           !band.distances.empty() && survey::widest(band) != nullptr;
}

} // namespace

void judge_beside(Outcome& outcome, const survey::Keying& keying) {
    const bool any_rating = survey::voltage_standing(keying).any_rating;
    for (const auto against : {survey::KeyingVerdict::exceeded, survey::KeyingVerdict::not_established}) {
        for (const survey::KeyingBand& band : keying.bands) {
            if (outcome.status == done && band.verdict == against && !forgone(band, any_rating)) {
                outcome.status = refused;
                outcome.error = error_sentence(
                    (band.band.empty() ? survey::given_text(band.point.frequency) : band.band) + ": " +
                    band.reasons.front().text);
            }
        }
    }
}

} // namespace loopwright::cli
