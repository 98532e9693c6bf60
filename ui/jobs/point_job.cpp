#include "jobs/point_job.hpp"

#include "loop/full_wave.hpp"
#include "loop/loop_model.hpp"
#include "wire/mesh.hpp"

#include <cmath>
#include <complex>

namespace loopwright::jobs {

namespace {

/// Scaled to the current that the point has opposite the capacitor.
std::vector<CurrentSample> current_around(const loop::SolvedLoop& solved, const loop::OperatingPoint& point) {
    std::vector<CurrentSample> samples;
    if (!point.resonance) {
        return samples;
    }
    const double opposite_A = point.resonance->loop_current_rms.value();
    const wire::Mesh& mesh = solved.solution.mesh();
    for (const wire::Element& element : mesh.elements()) {
        const std::size_t node = element.node[0];
        if (element.wire != 0 || node == wire::no_node) {
            continue;
        }
        const std::complex<double> current = solved.currents.node_A.at(node);
        samples.push_back(
            {element.begin_m, mesh.point(element, 0.0), opposite_A * std::abs(current), std::arg(current)});
    }
    return samples;
}

} // namespace

PointResult compute(const PointRequest& request) {
    PointResult result;
    result.request = request;
    const units::Power power = request.design.station.power.value;
    const auto ask = [&](const loop::LoopModel& model) {
        return model.at(request.frequency, power, request.vswr_limit);
    };
    const bool full = request.model == loop::Model::full_wave;
    if (full) {
        const loop::FullWave model(request.design);
        result.point = ask(model);
        if (const auto solved = model.solved(request.frequency)) {
            result.current = current_around(*solved, result.point);
        }
    } else {
        result.point = ask(*loop::make_model(request.design, request.model));
    }
    if (request.other_beside) {
        const loop::Model other = full ? loop::Model::closed_form : loop::Model::full_wave;
        result.other = ask(*loop::make_model(request.design, other));
    }
    return result;
}

void PointJob::start(const PointRequest& request) {
    start_work([request](const base::StopToken& /*stop*/, const base::Progress& /*progress*/) -> Result {
        return std::make_shared<const PointResult>(compute(request));
    });
}

} // namespace loopwright::jobs
