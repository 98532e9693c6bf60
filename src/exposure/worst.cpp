// The worst field on a shell, and between shells: what the remembered curves are made of.
#include "exposure/detail/shells.hpp"
#include "exposure/surroundings.hpp"
#include "units/constants.hpp"

#include <algorithm>
#include <cmath>
#include <limits>

namespace loopwright::exposure {

namespace {

using detail::WorstCurve;
using detail::WorstSample;
using units::constants::pi;

// The largest value on a shell is less than this times the largest on its nodes: what is farther below a
// limit needs no closer look.
constexpr double node_factor = 1 / 0.6;

/// A threshold that only one of the fields can reach; its share is that field's square.
Threshold only(Cause cause) {
    constexpr double never = 1e30;
    return cause == Cause::electric ? Threshold{1, never} : Threshold{never, 1};
}

/// Vertex of the parabola through three values a step apart, in steps from the middle one; 0 where they do
/// not bend down.
double vertex(double before, double here, double after) {
    const double bend = before - 2 * here + after;
    return bend < 0 && std::isfinite(bend) ? std::clamp(0.5 * (before - after) / bend, -1.0, 1.0) : 0.0;
}

} // namespace

double Surroundings::part(const Squares& squares, Cause cause) {
    return squares.touch              ? std::numeric_limits<double>::infinity()
           : cause == Cause::electric ? squares.electric
                                      : squares.magnetic;
}

std::size_t Surroundings::largest(const std::vector<Squares>& all, Cause cause) {
    std::size_t best = 0;
    for (std::size_t n = 1; n < all.size(); ++n) {
        best = part(all[n], cause) > part(all[best], cause) ? n : best;
    }
    return best;
}

const std::vector<Surroundings::Squares>& Surroundings::seen(Taken taken, int index) {
    const Shell& at = shell(index);
    return taken == Taken::largest ? at.nodes : at.means;
}

WorstCurve& Surroundings::curve(Taken taken, Cause cause) {
    return curves_[(taken == Taken::largest ? 0U : 2U) + (cause == Cause::electric ? 0U : 1U)];
}

// Pattern search: the four neighbours, the step halved when none is larger; at the end the vertex of the
// parabolas through the last of them. finer: divides the first step.
WorstSample Surroundings::worst_largest(double distance_m, Cause cause, Place from, double finer) {
    const Threshold one = only(cause);
    double azimuth_step = 0.5 * azimuth_step_rad_ / finer, share_step = 0.12 / finer;
    const auto at = [&](const Place& place) { return squares(distance_m, place).over(one); };
    double square = at(from);
    while (std::isfinite(square)) {
        const std::array<Place, 4> around{Place{from.azimuth_rad - azimuth_step, from.share},
                                          Place{from.azimuth_rad + azimuth_step, from.share},
                                          Place{from.azimuth_rad, std::max(0.0, from.share - share_step)},
                                          Place{from.azimuth_rad, std::min(1.0, from.share + share_step)}};
        std::array<double, 4> there{};
        std::size_t best = 0;
        for (std::size_t i = 0; i < around.size(); ++i) {
            there[i] = around[i].azimuth_rad == from.azimuth_rad && around[i].share == from.share
                           ? square
                           : at(around[i]);
            best = there[i] > there[best] ? i : best;
        }
        if (there[best] > square) {
            square = there[best];
            from = around[best];
            continue;
        }
        if (share_step > 0.035) {
            azimuth_step *= 0.5;
            share_step *= 0.5;
            continue;
        }
        Place peak{from.azimuth_rad + azimuth_step * vertex(there[0], square, there[1]), from.share};
        if (around[2].share < from.share && around[3].share > from.share &&
            std::abs(around[2].share + around[3].share - 2 * from.share) < 1e-9) {
            peak.share += share_step * vertex(there[2], square, there[3]);
        }
        const double value = at(peak);
        if (value > square) {
            square = value;
            from = peak;
        }
        break;
    }
    return {square, from.azimuth_rad, from.share};
}

// The means vary slowly with azimuth: the vertex of a parabola through three of them.
WorstSample Surroundings::worst_mean_on_shell(int index, Cause cause) {
    const std::vector<Squares>& means = shell(index).means;
    const std::size_t best = largest(means, cause);
    const WorstSample node{part(means[best], cause), azimuths_rad_[best], 0.5};
    const bool whole_turn = azimuth_step_rad_ * static_cast<double>(means.size()) > 1.9 * pi;
    const bool at_end = best == 0 || best + 1 == means.size();
    if (std::isinf(node.square) || (at_end && !whole_turn)) {
        return node; // an end is a plane of symmetry
    }
    const std::size_t count = means.size();
    const double steps = vertex(part(means[(best + count - 1) % count], cause), node.square,
                                part(means[(best + 1) % count], cause));
    const double azimuth = node.azimuth_rad + steps * azimuth_step_rad_;
    const double square = part(body_mean(shell_distance_m(index), azimuth), cause);
    return square > node.square ? WorstSample{square, azimuth, 0.5} : node;
}

/// Between shells: from the neighbours' places.
WorstCurve::Make Surroundings::maker(Taken taken, Cause cause) {
    return [this, taken, cause](double distance_m, const WorstSample* inner, const WorstSample* outer) {
        const Threshold one = only(cause);
        WorstSample best;
        for (const WorstSample* from : {inner, outer}) {
            if (from == nullptr || (from == outer && inner != nullptr && std::isfinite(inner->square) &&
                                    std::abs(inner->azimuth_rad - outer->azimuth_rad) < 0.05 &&
                                    std::abs(inner->share - outer->share) < 0.03)) {
                continue;
            }
            const Place place{from->azimuth_rad, from->share};
            const double square = taken == Taken::mean ? part(body_mean(distance_m, place.azimuth_rad), cause)
                                                       : squares(distance_m, place).over(one);
            if (square >= best.square) {
                best = {square, place.azimuth_rad, place.share};
            }
        }
        return taken == Taken::mean ? best
                                    : worst_largest(distance_m, cause, {best.azimuth_rad, best.share}, 2);
    };
}

double Surroundings::worst_on_shell(Taken taken, Cause cause, int index, double least) {
    const std::vector<Squares>& all = seen(taken, index);
    const std::size_t best = largest(all, cause);
    if (part(all[best], cause) * node_factor < least) {
        return 0;
    }
    return curve(taken, cause)
        .at(shell_distance_m(index),
            [&](double distance_m, const WorstSample*, const WorstSample*) {
                const std::size_t heights = shares_.size();
                return taken == Taken::mean
                           ? worst_mean_on_shell(index, cause)
                           : worst_largest(distance_m, cause,
                                           {azimuths_rad_[best / heights], shares_[best % heights]}, 1);
            })
        .square;
}

} // namespace loopwright::exposure
