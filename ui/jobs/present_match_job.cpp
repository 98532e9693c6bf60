#include "jobs/present_match_job.hpp"

#include "base/error.hpp"
#include "coupling/mismatch.hpp"
#include "units/text.hpp"

#include <algorithm>

namespace loopwright::jobs {

namespace {

constexpr int present_points = 101;
constexpr double present_bandwidths = 4.0, widest_present_share = 0.3;

} // namespace

std::shared_ptr<const PresentMatchResult> run_present_match(const PresentMatchRequest& request,
                                                            const base::StopToken& stop,
                                                            const base::Progress& /*progress*/) {
    const design::Design& design = request.design;
    auto result = std::make_shared<PresentMatchResult>();
    result->request = request;
    result->line = design.feed_line ? design.feed_line->impedance.value : units::ohms(50);
    const coupling::CoupledLoop coupled(design, result->line);
    if (stop.stop_requested()) {
        return nullptr;
    }
    const auto own = coupled.alone().at(request.resonance, design.station.power.value, 2.0).resonance;
    if (!own) {
        throw base::InputError("frequency", units::canonical(request.resonance),
                               "a frequency to which a capacitor can tune this loop");
    }
    const coupling::Match match = coupled.match(request.resonance, *own);
    if (stop.stop_requested()) {
        return nullptr;
    }
    const units::Frequency span = std::min(present_bandwidths * own->bandwidth_half_power,
                                           units::Frequency(widest_present_share * request.resonance));
    result->curve = coupled.curve(match, span, present_points);
    result->vswr_wanted =
        coupling::vswr(coupled.input(request.wanted, match.tuning_capacitance), result->line);
    return stop.stop_requested() ? nullptr : result;
}

} // namespace loopwright::jobs
