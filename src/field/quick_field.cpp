#include "field/quick_field.hpp"

#include "base/error.hpp"
#include "field/detail/piece_sum.hpp"
#include "ground/field_table.hpp"

#include <algorithm>
#include <cmath>
#include <optional>

namespace loopwright::field {

using Point = std::array<double, 3>;

struct QuickField::Parts {
    Parts(loop::SolvedLoop&& solved, double reach, double top)
        : loop(std::move(solved)), tree(loop), k(loop.solution.wavenumber_rad_m()),
          scale(1 / std::sqrt(loop.total.value())), reach_m(reach), top_m(top) {
        extent.lowest_m = 1e300;
        extent.highest_m = -1e300;
        for (const detail::Pack& pack : tree.packs()) {
            for (int i = 0; i < numeric::lane_count; ++i) {
                extent.horizontal_m = std::max(extent.horizontal_m, std::hypot(pack.x[i], pack.y[i]));
                extent.lowest_m = std::min(extent.lowest_m, pack.z[i]);
                extent.highest_m = std::max(extent.highest_m, pack.z[i]);
            }
        }
        if (loop.underground && !loop.underground->perfect) {
            table.emplace(k, loop.permittivity(), reach_m + extent.horizontal_m, extent.lowest_m,
                          extent.highest_m + top_m);
        }
    }

    loop::SolvedLoop loop;
    detail::SourceTree tree;
    double k, scale, reach_m, top_m;
    Extent extent;
    std::optional<ground::FieldTable> table;
};

QuickField::QuickField(loop::SolvedLoop loop, units::Length reach, units::Length top) {
    if (!(reach.value() > 0 && reach.value() <= 300) || !(top.value() > 0 && top.value() <= 300)) {
        throw base::ProgramError("QuickField: reach and top must be above 0 and up to 300 m");
    }
    parts_ = std::make_unique<Parts>(std::move(loop), reach.value(), top.value());
}
QuickField::~QuickField() = default;
QuickField::QuickField(QuickField&&) noexcept = default;
QuickField& QuickField::operator=(QuickField&&) noexcept = default;

Field QuickField::at_1W(const Point& point_m) const {
    const Parts& parts = *parts_;
    if (!(std::hypot(point_m[0], point_m[1]) <= parts.reach_m * (1 + 1e-9)) ||
        (!free_space() && !(point_m[2] >= 0 && point_m[2] <= parts.top_m * (1 + 1e-9)))) {
        throw base::ProgramError("QuickField: a point outside what is covered");
    }
    std::vector<const detail::Pack*> packs;
    packs.reserve(128);
    const bool served = parts.tree.choose(point_m, packs);
    const detail::Below below{parts.table ? &*parts.table : nullptr,
                              parts.loop.underground && parts.loop.underground->perfect};
    Field field = detail::field_of_packs(packs, point_m, parts.k, below, served);
    const Field free = served ? Field{} : detail::free_space_part(parts.loop, point_m);
    for (std::size_t i = 0; i < 3; ++i) {
        field.electric_V_m[i] = parts.scale * (field.electric_V_m[i] + free.electric_V_m[i]);
        field.magnetic_A_m[i] = parts.scale * (field.magnetic_A_m[i] + free.magnetic_A_m[i]);
    }
    return field;
}

void QuickField::heed(const base::StopToken& stop) {
    if (parts_->table) {
        parts_->table->heed(stop);
    }
}

double QuickField::clearance_m(const Point& point_m) const {
    return parts_->tree.clearance_m(point_m);
}
bool QuickField::is_clear(const Point& point_m, double least_m) const {
    return parts_->tree.is_clear(point_m, least_m);
}

QuickField::Nearness QuickField::farthest_within(double least_m, double low_m, double high_m) const {
    Nearness most;
    const bool everywhere = free_space();
    parts_->tree.for_each_place([&](const Point& p, double radius_m) {
        const double near_m = least_m + radius_m;
        const double below = everywhere ? 0.0 : std::max({0.0, low_m - p[2], p[2] - high_m});
        if (below >= near_m) {
            return;
        }
        const double from_axis = std::hypot(p[0], p[1], everywhere ? p[2] : 0.0);
        const double distance = from_axis + std::sqrt(near_m * near_m - below * below);
        if (distance > most.distance_m) {
            const double out = from_axis > 0 ? distance / from_axis : 0.0;
            most = {distance,
                    {out > 0 ? p[0] * out : distance, p[1] * out,
                     everywhere ? p[2] * out : std::clamp(p[2], low_m, high_m)}};
        }
    });
    return most;
}

const loop::SolvedLoop& QuickField::loop() const noexcept {
    return parts_->loop;
}
bool QuickField::free_space() const noexcept {
    return !parts_->loop.underground.has_value();
}
QuickField::Extent QuickField::extent() const noexcept {
    return parts_->extent;
}

} // namespace loopwright::field
