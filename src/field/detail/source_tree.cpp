#include "field/detail/source_tree.hpp"

#include "units/constants.hpp"

#include <algorithm>
#include <cmath>

namespace loopwright::field::detail {

namespace {

using Complex = std::complex<double>;
using Point = std::array<double, 3>;
using geometry::Vector3;
using units::constants::pi;

constexpr std::size_t points_of_a_group = 8;
constexpr std::size_t least_elements_of_a_group = 5; // fewer are no more points as they are
constexpr double group_from_half_lengths = 2.2;
constexpr double most_turn_rad = 3.3; // half a circle: a polynomial must follow the wire too
// From the leaf's surface, in its longest element's lengths: 2, 4, 8 Gauss points hold 3e-4 and better.
constexpr double two_points_from = 3.5, four_points_from = 1.0, eight_points_from = 0.2;
constexpr double corner_cosine = 0.9987; // 3 degrees

double distance(const Point& a, const Point& b) {
    const double dx = a[0] - b[0], dy = a[1] - b[1], dz = a[2] - b[2];
    return std::sqrt(dx * dx + dy * dy + dz * dz);
}

void put(Pack& pack, int lane, const Source& s) {
    pack.x[lane] = s.position_m[0];
    pack.y[lane] = s.position_m[1];
    pack.z[lane] = s.position_m[2];
    for (std::size_t i = 0; i < 3; ++i) {
        pack.moment_A_m[i].re[lane] = s.moment_A_m[i].real();
        pack.moment_A_m[i].im[lane] = s.moment_A_m[i].imag();
    }
    pack.charge_current_A.re[lane] = s.charge_current_A.real();
    pack.charge_current_A.im[lane] = s.charge_current_A.imag();
}

/// Lagrange's polynomial of node p at x.
double lagrange(const std::array<double, points_of_a_group>& nodes, std::size_t p, double x) {
    double value = 1;
    for (std::size_t q = 0; q < nodes.size(); ++q) {
        value *= q == p ? 1.0 : (x - nodes[q]) / (nodes[p] - nodes[q]);
    }
    return value;
}

bool continues(const wire::Mesh& mesh, const wire::Element& a, const wire::Element& b) {
    return a.wire == b.wire && std::abs(a.begin_m + a.length_m - b.begin_m) < 1e-9 &&
           dot(mesh.tangent(a, 1.0), mesh.tangent(b, 0.0)) > corner_cosine;
}

} // namespace

struct SourceTree::Pieces {
    const loop::SolvedLoop& loop;
    std::vector<Source> two, four, eight;

    [[nodiscard]] const wire::Element& element(std::size_t e) const {
        return loop.solution.mesh().elements()[e];
    }
    [[nodiscard]] Point place(std::size_t e, double x) const {
        const Vector3 p = loop.stand.origin + turned(loop.stand, loop.solution.mesh().point(element(e), x));
        return {p.x, p.y, p.z};
    }
    [[nodiscard]] double turn_rad(Range elements) const {
        double turn = 0;
        for (std::size_t e = elements.first; e < elements.first + elements.count; ++e) {
            const wire::Mesh& mesh = loop.solution.mesh();
            turn += std::acos(
                std::clamp(dot(mesh.tangent(element(e), 0), mesh.tangent(element(e), 1)), -1.0, 1.0));
        }
        return turn;
    }
    /// How many of them make half of their length.
    [[nodiscard]] std::size_t half(Range elements) const {
        const auto length = [&](std::size_t count) {
            return std::abs(element(elements.first + count - 1).begin_m +
                            element(elements.first + count - 1).length_m - element(elements.first).begin_m);
        };
        std::size_t count = 1;
        while (count + 1 < elements.count && length(count + 1) <= 0.5 * length(elements.count) + 1e-9) {
            ++count;
        }
        return count;
    }
};

SourceTree::SourceTree(const loop::SolvedLoop& loop) {
    const Pieces pieces{loop, sources_of(loop, 2), sources_of(loop, 4), sources_of(loop, 8)};
    const wire::Mesh& mesh = loop.solution.mesh();
    const auto& elements = mesh.elements();
    for (std::size_t e = 0; e < elements.size(); ++e) {
        const Point middle = pieces.place(e, 0.5), a = pieces.two[2 * e].position_m,
                    b = pieces.two[2 * e + 1].position_m;
        const double span = distance(a, b);
        segments_.push_back({middle,
                             {(b[0] - a[0]) / span, (b[1] - a[1]) / span, (b[2] - a[2]) / span},
                             0.5 * elements[e].length_m,
                             elements[e].radius_m});
    }
    for (std::size_t first = 0; first < elements.size();) {
        std::size_t end = first + 1;
        while (end < elements.size() && continues(mesh, elements[end - 1], elements[end])) {
            ++end;
        }
        roots_.push_back(add_group(pieces, {first, end - first}));
        first = end;
    }
}

void SourceTree::bound(Group& group, const Pieces& pieces) const {
    std::vector<Point> places;
    Point low{1e300, 1e300, 1e300}, high{-1e300, -1e300, -1e300};
    for (std::size_t e = group.elements.first; e < group.elements.first + group.elements.count; ++e) {
        group.longest_m = std::max(group.longest_m, pieces.element(e).length_m);
        group.length_m += pieces.element(e).length_m;
        for (const double x : {0.0, 0.25, 0.5, 0.75, 1.0}) {
            places.push_back(pieces.place(e, x));
            for (std::size_t i = 0; i < 3; ++i) {
                low[i] = std::min(low[i], places.back()[i]);
                high[i] = std::max(high[i], places.back()[i]);
            }
        }
    }
    for (std::size_t i = 0; i < 3; ++i) {
        group.centre[i] = 0.5 * (low[i] + high[i]);
    }
    for (const Point& p : places) {
        group.radius_m = std::max(group.radius_m, distance(p, group.centre));
    }
}

SourceTree::Range SourceTree::add_packs(const std::vector<Source>& sources, std::size_t first,
                                        std::size_t count) {
    const Range range{packs_.size(), (count + 3) / 4};
    for (std::size_t i = 0; i < 4 * range.count; ++i) {
        if (i % 4 == 0) {
            packs_.emplace_back();
        }
        Source s = sources[first + std::min(i, count - 1)];
        if (i >= count) {
            s.moment_A_m = {};
            s.charge_current_A = 0;
        }
        put(packs_.back(), static_cast<int>(i % 4), s);
    }
    return range;
}

SourceTree::Range SourceTree::add_points(const Pieces& pieces, Range elements) {
    std::vector<double> begins{0.0};
    for (std::size_t e = 0; e < elements.count; ++e) {
        begins.push_back(begins.back() + pieces.element(elements.first + e).length_m);
    }
    const double whole_m = begins.back();
    std::array<double, points_of_a_group> nodes{};
    std::vector<Source> points(points_of_a_group);
    for (std::size_t p = 0; p < points_of_a_group; ++p) {
        nodes[p] = 0.5 * whole_m * (1 - std::cos(pi * (static_cast<double>(p) + 0.5) / points_of_a_group));
        const auto above = std::upper_bound(begins.begin(), begins.end() - 1, nodes[p]);
        const auto e = static_cast<std::size_t>(above - begins.begin()) - 1;
        const std::size_t element = elements.first + e;
        points[p].position_m =
            pieces.place(element, (nodes[p] - begins[e]) / pieces.element(element).length_m);
    }
    constexpr std::array<double, 4> gauss = gauss_places_of_four;
    for (std::size_t e = 0; e < elements.count; ++e) {
        for (std::size_t n = 0; n < gauss.size(); ++n) {
            const double at = begins[e] + gauss[n] * (begins[e + 1] - begins[e]);
            const Source& s = pieces.four[4 * (elements.first + e) + n];
            for (std::size_t p = 0; p < points_of_a_group; ++p) {
                const double share = lagrange(nodes, p, at);
                for (std::size_t i = 0; i < 3; ++i) {
                    points[p].moment_A_m[i] += share * s.moment_A_m[i];
                }
                points[p].charge_current_A += share * s.charge_current_A;
            }
        }
    }
    return add_packs(points, 0, points_of_a_group);
}

std::size_t SourceTree::add_group(const Pieces& pieces, Range elements) {
    Group group;
    group.elements = elements;
    bound(group, pieces);
    group.leaf = elements.count <= 2;
    group.together =
        elements.count >= least_elements_of_a_group && pieces.turn_rad(elements) <= most_turn_rad;
    if (group.leaf) {
        group.packs = {add_packs(pieces.two, 2 * elements.first, 2 * elements.count),
                       add_packs(pieces.four, 4 * elements.first, 4 * elements.count),
                       add_packs(pieces.eight, 8 * elements.first, 8 * elements.count)};
    } else {
        if (group.together) {
            group.packs[0] = add_points(pieces, elements);
        }
        const std::size_t half = pieces.half(elements);
        group.below = {add_group(pieces, {elements.first, half}),
                       add_group(pieces, {elements.first + half, elements.count - half})};
    }
    groups_.push_back(group);
    return groups_.size() - 1;
}

bool SourceTree::choose(const Point& point_m, std::vector<const Pack*>& chosen) const {
    std::array<std::size_t, 64> pending{}; // a tree of 2^50 elements would not fill it
    bool served = true;
    const auto take = [&](Range range) {
        for (std::size_t i = 0; i < range.count; ++i) {
            chosen.push_back(&packs_[range.first + i]);
        }
    };
    for (const std::size_t root : roots_) {
        std::size_t depth = 0;
        pending[depth++] = root;
        while (depth > 0) {
            const Group& group = groups_[pending[--depth]];
            const double away = distance(point_m, group.centre);
            if (group.together && away >= group_from_half_lengths * 0.5 * group.length_m) {
                take(group.packs[0]);
            } else if (!group.leaf) {
                pending[depth++] = group.below[1];
                pending[depth++] = group.below[0];
            } else {
                const double lengths = (away - group.radius_m) / group.longest_m;
                take(group.packs[lengths >= two_points_from ? 0 : lengths >= four_points_from ? 1 : 2]);
                served = served && lengths >= eight_points_from;
            }
        }
    }
    return served;
}

double SourceTree::clearance_m(const Point& point_m, Range elements) const {
    double least = 1e300;
    for (std::size_t e = elements.first; e < elements.first + elements.count; ++e) {
        const Segment& s = segments_[e];
        double along = 0;
        for (std::size_t i = 0; i < 3; ++i) {
            along += (point_m[i] - s.middle[i]) * s.along[i];
        }
        along = std::clamp(along, -s.half_m, s.half_m);
        const Point nearest{s.middle[0] + along * s.along[0], s.middle[1] + along * s.along[1],
                            s.middle[2] + along * s.along[2]};
        least = std::min(least, distance(point_m, nearest) - s.radius_m);
    }
    return least;
}

double SourceTree::clearance_m(const Point& point_m) const {
    return clearance_m(point_m, {0, segments_.size()});
}

bool SourceTree::is_clear(const Point& point_m, double least_m) const {
    std::array<std::size_t, 64> pending{};
    for (const std::size_t root : roots_) {
        std::size_t depth = 0;
        pending[depth++] = root;
        while (depth > 0) {
            const Group& group = groups_[pending[--depth]];
            const double conductor_m = segments_[group.elements.first].radius_m;
            // Straight elements leave the arcs they stand for by less than a tenth of their length.
            if (distance(point_m, group.centre) - group.radius_m >
                least_m + 2 * conductor_m + 0.1 * group.longest_m) {
                continue;
            }
            if (group.leaf) {
                if (clearance_m(point_m, group.elements) < least_m) {
                    return false;
                }
                continue;
            }
            pending[depth++] = group.below[1];
            pending[depth++] = group.below[0];
        }
    }
    return true;
}

} // namespace loopwright::field::detail
