#include "wire/wire_model.hpp"

#include "base/error.hpp"

#include <algorithm>
#include <cmath>

namespace loopwright::wire {

double Wire::length_m() const {
    double sum = 0;
    for (const Stretch& stretch : stretches) {
        sum += stretch.piece.length_m();
    }
    return sum;
}

Wire wire_along(const geometry::WirePath& path, double radius_m, std::size_t conductor) {
    Wire wire;
    wire.radius_m = radius_m;
    for (const geometry::Piece& piece : path.pieces()) {
        wire.stretches.push_back({piece, conductor});
    }
    return wire;
}

Gap capacitor_gap(const geometry::WirePath& path, std::size_t wire) {
    return {wire, 0.0, path.gap_m()};
}
Gap opposite_gap(const geometry::WirePath& path, std::size_t wire) {
    return {wire, path.length_m() / 2, path.gap_m()};
}

std::size_t conductor_count(const WireModel& model) {
    std::size_t count = 0;
    for (const Wire& wire : model.wires) {
        for (const Stretch& stretch : wire.stretches) {
            count = std::max(count, stretch.conductor + 1);
        }
    }
    return count;
}

namespace {

void check_wire(const Wire& wire) {
    if (wire.stretches.empty()) {
        throw base::ProgramError("a wire needs at least one stretch");
    }
    const double length = wire.length_m();
    if (!(wire.radius_m > 0 && wire.radius_m <= 0.1 * length && std::isfinite(length))) {
        throw base::ProgramError("a wire's radius must be above 0 and below a tenth of its length");
    }
    const std::size_t count = wire.stretches.size();
    for (std::size_t i = 0; i < count; ++i) {
        const geometry::Piece& piece = wire.stretches[i].piece;
        if (!(piece.length_m() > 0)) {
            throw base::ProgramError("a stretch of a wire has no length");
        }
        if (i + 1 == count && !wire.closed) {
            continue;
        }
        const geometry::Piece& next = wire.stretches[(i + 1) % count].piece;
        if (!(norm(next.point(0) - piece.point(1)) <= 1e-6 * length)) {
            throw base::ProgramError("the stretches of a wire must follow one another");
        }
    }
}

void check_gap(const WireModel& model, const Gap& gap, bool port) {
    if (gap.wire >= model.wires.size()) {
        throw base::ProgramError("a gap names a wire that is not there");
    }
    const Wire& wire = model.wires[gap.wire];
    const double length = wire.length_m();
    const bool width_fits = gap.width_m <= 0.5 * length && (port ? gap.width_m > 0 : gap.width_m >= 0);
    const double half = 0.5 * gap.width_m;
    const bool inside =
        wire.closed ? std::abs(gap.at_m) <= 2 * length : gap.at_m - half >= 0 && gap.at_m + half <= length;
    if (!(width_fits && inside)) {
        throw base::ProgramError("a gap does not fit on its wire");
    }
}

} // namespace

void check(const WireModel& model) {
    if (model.wires.empty()) {
        throw base::ProgramError("a wire model needs at least one wire");
    }
    for (const Wire& wire : model.wires) {
        check_wire(wire);
    }
    for (const Gap& gap : model.ports) {
        check_gap(model, gap, true);
    }
    for (const Gap& gap : model.loads) {
        check_gap(model, gap, false);
    }
}

} // namespace loopwright::wire
