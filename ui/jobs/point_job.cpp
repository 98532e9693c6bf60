#include "jobs/point_job.hpp"

#include "geometry/winding.hpp"
#include "loop/design_parts.hpp"
#include "loop/full_wave.hpp"
#include "loop/loop_model.hpp"
#include "wire/mesh.hpp"

#include <algorithm>
#include <cmath>
#include <complex>

namespace loopwright::jobs {

namespace {

/// Scaled to the current that the point has opposite the capacitor.
std::vector<CurrentSample> current_around(const loop::SolvedLoop& solved, const loop::OperatingPoint& point,
                                          double length_m) {
    std::vector<CurrentSample> samples;
    if (!point.resonance) {
        return samples;
    }
    const double opposite_A = point.resonance->loop_current_rms.value();
    for (const wire::Element& element : solved.solution.mesh().elements()) {
        const std::size_t node = element.node[0];
        if (node != wire::no_node) {
            const std::complex<double> current = solved.currents.node_A.at(node);
            samples.push_back(
                {element.begin_m / length_m, opposite_A * std::abs(current), std::arg(current)});
        }
    }
    std::sort(samples.begin(), samples.end(),
              [](const CurrentSample& a, const CurrentSample& b) { return a.share < b.share; });
    return samples;
}

} // namespace

std::shared_ptr<const PointResult> compute_point(const PointRequest& request, const base::StopToken& stop,
                                                 const base::Progress& /*progress*/) {
    auto result = std::make_shared<PointResult>();
    result->request = request;
    const units::Power power = request.design.station.power.value;
    const auto ask = [&](const loop::LoopModel& model) {
        return model.at(request.frequency, power, request.vswr_limit);
    };
    const bool full = request.model == loop::Model::full_wave;
    if (full) {
        const loop::FullWave model(request.design);
        if (stop.stop_requested()) {
            return nullptr;
        }
        result->point = ask(model);
        if (const auto solved = request.with_current ? model.solved(request.frequency) : std::nullopt) {
            const auto path = geometry::wire_path(loop::winding_of(request.design.loop));
            result->current = current_around(*solved, result->point, path.length_m());
        }
    } else {
        result->point = ask(*loop::make_model(request.design, request.model));
    }
    if (request.other_beside) {
        const loop::Model other = full ? loop::Model::closed_form : loop::Model::full_wave;
        result->other = ask(*loop::make_model(request.design, other));
    }
    return result;
}

} // namespace loopwright::jobs
