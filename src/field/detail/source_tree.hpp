#pragma once
// The pieces of a solved current in groups, so that far pieces can be taken together.
#include "field/detail/field_sources.hpp"
#include "ground/field_table.hpp"
#include "numeric/lanes.hpp"

#include <array>
#include <cstddef>
#include <vector>

namespace loopwright::field::detail {

/// Four point sources; unused ones carry nothing.
struct Pack {
    numeric::Lanes x{}, y{}, z{};
    std::array<ground::ComplexLanes, 3> moment_A_m{};
    ground::ComplexLanes charge_current_A{};
};

/// A binary tree over the elements, broken at corners and between wires. A group whose middle is 1.1 of its
/// length or more away is eight points: its currents and charges spread over the Chebyshev points of its
/// length by Lagrange's polynomials, which keeps their sums and first seven moments along the wire (the
/// kernel is a polynomial to some 1e-5 there; at most half a circle, since the place is one too). Nearer,
/// elements with 2, 4 or 8 Gauss points.
class SourceTree {
public:
    using Point = std::array<double, 3>;

    explicit SourceTree(const loop::SolvedLoop& loop);

    /// Adds the packs that stand for all currents at a point. False where the point is so near that only the
    /// solver's own quadrature gives the free-space part (0.2 of an element's length); the packs still serve
    /// for what comes from below the ground.
    bool choose(const std::array<double, 3>& point_m, std::vector<const Pack*>& chosen) const;

    /// From the nearest conductor's surface [m]; negative inside. Elements count as straight.
    [[nodiscard]] double clearance_m(const std::array<double, 3>& point_m) const;
    /// clearance_m() >= least_m, without asking far elements.
    [[nodiscard]] bool is_clear(const std::array<double, 3>& point_m, double least_m) const;

    /// Places along every element, its ends included, with the conductor's radius [m]: at(point, radius).
    template <class At>
    void for_each_place(const At& at) const {
        constexpr int steps = 8;
        for (const Segment& s : segments_) {
            for (int i = 0; i <= steps; ++i) {
                const double along = s.half_m * (2.0 * i / steps - 1);
                at(Point{s.middle[0] + along * s.along[0], s.middle[1] + along * s.along[1],
                         s.middle[2] + along * s.along[2]},
                   s.radius_m);
            }
        }
    }

    /// Everything a point of the tree can stand at.
    [[nodiscard]] const std::vector<Pack>& packs() const noexcept { return packs_; }

private:
    struct Range {
        std::size_t first = 0, count = 0;
    };
    struct Group {
        Point centre{};
        double radius_m = 0, length_m = 0, longest_m = 0; ///< longest: element
        Range elements;
        std::array<Range, 3> packs; ///< leaf: 2, 4, 8 points an element; together: the first only
        std::array<std::size_t, 2> below{};
        bool leaf = false, together = false;
    };
    struct Segment {
        Point middle{}, along{};
        double half_m = 0, radius_m = 0;
    };
    struct Pieces; ///< sources by rule, while the tree is made

    std::size_t add_group(const Pieces& pieces, Range elements);
    void bound(Group& group, const Pieces& pieces) const;
    Range add_packs(const std::vector<Source>& sources, std::size_t first, std::size_t count);
    Range add_points(const Pieces& pieces, Range elements);
    [[nodiscard]] double clearance_m(const Point& point_m, Range elements) const;

    std::vector<Segment> segments_;
    std::vector<Pack> packs_;
    std::vector<Group> groups_;
    std::vector<std::size_t> roots_;
};

} // namespace loopwright::field::detail
