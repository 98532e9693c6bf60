#include "jobs/match_job.hpp"

#include "coupling/mismatch.hpp"

#include <algorithm>
#include <cmath>

namespace loopwright::jobs {

namespace {

/// VSWR at the ends of the curve, in terms of the limit.
constexpr double ends_over_limit = 3.0;
constexpr double first_share = 2e-4, widest_share = 0.2;
constexpr int points_a_step = 5; ///< between two looks at the stop flag

/// Doubled until the VSWR at both ends is high enough; 2, 4 or 10 times a power of ten at the end.
units::Frequency span_of(const coupling::CoupledLoop& loop, const coupling::Match& match, double vswr_limit,
                         const base::StopToken& stop) {
    units::Frequency span = first_share * match.frequency;
    while (span < widest_share * match.frequency && !stop.stop_requested()) {
        const auto ends = loop.curve(match, span, 2);
        if (std::min(ends.front().vswr, ends.back().vswr) > ends_over_limit * vswr_limit) {
            break;
        }
        span *= 2.0;
    }
    const double decade = std::pow(10.0, std::floor(std::log10(span.value())));
    for (const double factor : {2.0, 4.0, 10.0}) {
        if (factor * decade >= span.value()) {
            return units::hertz(factor * decade);
        }
    }
    return span;
}

} // namespace

std::shared_ptr<const MatchResult> run_match(const MatchRequest& request, const base::StopToken& stop,
                                             const base::Progress& progress) {
    const auto tell = [&progress](double share) {
        if (progress) {
            progress(share);
        }
    };
    auto result = std::make_shared<MatchResult>();
    result->request = request;
    const coupling::CoupledLoop loop(request.design, request.line);
    tell(0.05);
    result->match = loop.match(request.frequency);
    tell(0.1);
    const units::Frequency span = span_of(loop, result->match, request.vswr_limit, stop);
    const int last = std::max(request.points, 3) - 1;
    for (int done = 0; done <= last; done += points_a_step) {
        if (stop.stop_requested()) {
            return nullptr;
        }
        // A few points at a time, so that a stop is soon heard.
        for (int i = done; i < std::min(done + points_a_step, last + 1); ++i) {
            const units::Frequency at =
                result->match.frequency + span * (static_cast<double>(i) / last - 0.5);
            const units::Impedance input = loop.input(at, result->match.tuning_capacitance);
            result->curve.push_back({at, input, coupling::vswr(input, request.line)});
        }
        tell(0.1 + 0.9 * static_cast<double>(done) / last);
    }
    return result;
}

} // namespace loopwright::jobs
