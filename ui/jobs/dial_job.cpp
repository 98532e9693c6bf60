#include "jobs/dial_job.hpp"

#include "band/band.hpp"
#include "band/working_frequencies.hpp"
#include "design/on_band.hpp"
#include "loop/loop_model.hpp"
#include "tuning/calibration_report.hpp"
#include "tuning/design_dial.hpp"

#include <algorithm>
#include <utility>

namespace loopwright::jobs {

namespace {

using units::Frequency;

/// Or nothing between the bands.
const band::Band* find_band(Frequency frequency, int region) {
    const auto& bands = band::bands_of(region);
    const auto found = std::find_if(bands.begin(), bands.end(), [&](const band::Band& one) {
        return frequency >= one.low && frequency <= one.high;
    });
    return found == bands.end() ? nullptr : &*found;
}

std::string band_of(Frequency frequency, int region) {
    const band::Band* band = find_band(frequency, region);
    return band == nullptr ? std::string() : band->name;
}

/// Where the same fixed capacitors are there as at `frequency`.
units::Interval<Frequency> same_capacitors(const design::Design& design, Frequency frequency,
                                           units::Interval<Frequency> all) {
    const auto& added = design.capacitor.added;
    const bool plugged = std::any_of(added.begin(), added.end(),
                                     [](const design::AddedCapacitor& one) { return !one.bands.empty(); });
    const band::Band* band = find_band(frequency, design.station.region);
    if (!plugged || band == nullptr) {
        return all;
    }
    return {std::max(band->low, all.low), std::min(band->high, all.high)};
}

void fill_dial(DialResult& result) {
    const design::Design& design = result.request.design;
    const auto curve = tuning::design_curve(design);
    result.dial = tuning::calibrated_dial(design, curve);
    result.around = same_capacitors(design, result.tuned, curve->range());
    result.predicted = result.dial->predicted(result.tuned);
    if (result.dial->used_points() > 0) {
        result.calibrated = result.dial->at(result.tuned);
    }
    result.next = tuning::next_points_of(*result.dial, design);
    if (!result.predicted) {
        result.trouble =
            "No setting of this capacitor tunes the loop to this frequency, or the model does not "
            "stand behind a number there.";
    }
}

} // namespace

std::shared_ptr<const DialResult> compute_dial(const DialRequest& request, const base::StopToken& stop,
                                               const base::Progress& /*progress*/) {
    auto result = std::make_shared<DialResult>();
    result->request = request;
    const design::Design& design = request.design;
    const auto emission = band::find_emission(request.emission);
    result->tuned = request.radio;
    if (emission) {
        result->tuned =
            band::tuned_for(*emission, band::sideband_of(*emission, request.radio), request.radio);
        result->window = emission->working_width;
    }
    const design::Design there = design::on_band(design, band_of(result->tuned, design.station.region));
    const auto model = loop::make_model(there, loop::Model::full_wave);
    if (stop.stop_requested()) {
        return nullptr;
    }
    result->point = model->at(result->tuned, design.station.power.value, request.vswr_limit);
    result->reachable = result->point.resonance && result->point.resonance->in_capacitor_range;
    if (!design.capacitor.dial) {
        result->trouble = "The design has no dial yet: say on the left how its scale goes.";
        return result;
    }
    if (stop.stop_requested()) {
        return nullptr;
    }
    fill_dial(*result);
    return result;
}

} // namespace loopwright::jobs
