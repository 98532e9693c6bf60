#include "survey/height.hpp"

#include "base/error.hpp"
#include "design/validation.hpp"
#include "loop/loop_model.hpp"
#include "survey/detail/parallel.hpp"
#include "units/text.hpp"

#include <cmath>
#include <string>

namespace loopwright::survey {

namespace {

constexpr double lowest_m = 0.1;
constexpr double highest_m = 100;
constexpr int most_heights = 1000;

void require(const HeightRequest& request) {
    design::require_valid(request.design);
    if (request.design.site.ground.kind == design::GroundKind::free_space) {
        throw base::InputError("site.ground", "free space",
                               "a ground: height means nothing without one, choose a class or enter soil");
    }
    const double from = request.from.value(), to = request.to.value();
    if (!(from >= lowest_m && from <= highest_m)) {
        throw base::InputError("from", units::canonical(request.from), "a height from 0.1 m to 100 m");
    }
    if (!(to > from && to <= highest_m)) {
        throw base::InputError("to", units::canonical(request.to),
                               "a height above " + units::canonical(request.from) + ", up to 100 m");
    }
    if (request.points < 2 || request.points > most_heights) {
        throw base::InputError("points", std::to_string(request.points), "a whole number from 2 to 1000");
    }
}

units::Length height_at(const HeightRequest& request, std::size_t index) {
    const auto last = static_cast<std::size_t>(request.points - 1);
    if (index == 0 || index == last) {
        return index == 0 ? request.from : request.to;
    }
    const double share = static_cast<double>(index) / static_cast<double>(last);
    return request.from * std::pow(request.to / request.from, share);
}

} // namespace

HeightSweep height_sweep(const HeightRequest& request, const base::StopToken& stop,
                         const base::Progress& progress) {
    require(request);
    const auto count = static_cast<std::size_t>(request.points);
    detail::Counter counter(count, progress);
    std::vector<std::optional<HeightRow>> slots(count);
    detail::for_each_index(count, stop, [&](std::size_t i) {
        design::Design at_height = request.design;
        at_height.site.lowest_point = {height_at(request, i), {}};
        const auto model =
            loop::make_model(at_height, loop::Model::full_wave, loop::Workload::few_frequencies);
        slots[i] =
            HeightRow{at_height.site.lowest_point.value,
                      model->at(request.frequency, request.design.station.power.value, request.vswr_limit)};
        counter.one_done();
    });
    HeightSweep sweep;
    sweep.request = request;
    sweep.rows = detail::filled(std::move(slots));
    sweep.complete = sweep.rows.size() == count;
    return sweep;
}

} // namespace loopwright::survey
