#include "field/field_map.hpp"

#include "base/error.hpp"
#include "base/stopped.hpp"
#include "design/validation.hpp"
#include "field/quick_field.hpp"
#include "loop/loop_model.hpp"
#include "units/text.hpp"

#include <tbb/parallel_for.h>

#include <algorithm>
#include <cmath>

namespace loopwright::field {

namespace {

constexpr double nearest_m = 0.2;

void check(const MapRequest& request, bool free_space) {
    const double half = request.half_width.value(), offset = request.offset.value();
    if (!(half >= 0.1 && half <= 50)) {
        throw base::InputError("half_width", units::canonical(request.half_width), "from 0.1 m to 50 m");
    }
    const bool below = request.plane == MapPlane::xy && !free_space && offset < 0;
    if (!(std::abs(offset) <= 50) || below) {
        throw base::InputError("offset", units::canonical(request.offset),
                               below ? "a height from 0 m to 50 m" : "from -50 m to 50 m");
    }
    if (request.points < 2 || request.points > 401) {
        throw base::InputError("points", std::to_string(request.points), "a whole number from 2 to 401");
    }
}

std::array<double, 3> position(const MapRequest& request, bool free_space, int row, int column) {
    const double half = request.half_width.value(), offset = request.offset.value();
    const int last = request.points - 1;
    // Divided last: places of a decimal step print as such.
    const auto even = [&](int index) { return half * (2.0 * index - last) / last; };
    const double first = even(column);
    const double second = request.plane == MapPlane::xy || free_space ? even(row) : 2 * half * row / last;
    switch (request.plane) {
    case MapPlane::xy:
        return {first, second, offset};
    case MapPlane::xz:
        return {first, offset, second};
    case MapPlane::yz:
        break;
    }
    return {offset, first, second};
}

} // namespace

std::optional<FieldMap> field_map(const design::Design& design, units::Frequency frequency,
                                  units::Power power, const MapRequest& request, const base::StopToken& stop,
                                  base::Notices* notices) {
    design::require_valid(design);
    const bool free_space = design.site.ground.kind == design::GroundKind::free_space;
    check(request, free_space);
    if (notices != nullptr) {
        *notices = loop::make_model(design, loop::Model::full_wave, loop::Workload::few_frequencies)
                       ->at(frequency, power, 2.0)
                       .notices;
    }
    auto loop = loop::FullWave(design, loop::Workload::few_frequencies).solved(frequency);
    if (!loop) {
        return std::nullopt;
    }
    const double half = request.half_width.value();
    const double reach = 1.001 * std::hypot(half, std::max(half, std::abs(request.offset.value())));
    const double top = 1.001 * std::max(2 * half, request.offset.value());
    QuickField quick(*std::move(loop), units::metres(reach), units::metres(top));
    quick.heed(stop);
    const double root = std::sqrt(power.value());
    FieldMap map{request, frequency, power, {}, false};
    const auto count = static_cast<std::size_t>(request.points);
    map.points.resize(count * count);
    const auto fill = [&](std::size_t row) {
        for (std::size_t column = 0; column < count; ++column) {
            base::leave_if_stopped(stop);
            MapPoint& point = map.points[row * count + column];
            point.position_m = position(request, free_space, static_cast<int>(row), static_cast<int>(column));
            if (quick.is_clear(point.position_m, nearest_m)) {
                const Field field = quick.at_1W(point.position_m);
                point.electric = root * field.electric();
                point.magnetic = root * field.magnetic();
            }
        }
    };
    try {
        tbb::parallel_for(std::size_t{0}, count, fill);
    } catch (const base::Stopped&) {
        map.points.clear();
    }
    map.complete = !stop.stop_requested();
    if (!map.complete) {
        map.points.clear(); // stopped after the last point
    }
    return map;
}

} // namespace loopwright::field
