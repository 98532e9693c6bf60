#pragma once
// The conductor's path cut into short spans, and the static interaction of two of them.
#include "geometry/wire_path.hpp"

#include <array>
#include <cstdint>
#include <unordered_map>
#include <vector>

namespace loopwright::loop::detail {

struct Sample {
    geometry::Vector3 point, tangent;
    double s_m = 0;
    double weight_m = 0;
};

/// Where a piece is at a share of its length, and the way it runs there.
struct Place {
    geometry::Vector3 point, tangent;
};
[[nodiscard]] Place place_on(const geometry::Piece& piece, double share);

/// Part of one piece of the path.
struct Span {
    std::size_t piece = 0;
    double share_from = 0, share_to = 0; ///< of the piece
    double from_m = 0, to_m = 0;         ///< along the path
    std::array<Sample, 2> samples;       ///< Gauss points
    geometry::Vector3 middle;
    [[nodiscard]] double length_m() const noexcept { return to_m - from_m; }
};

/// The part of piece `piece` between two shares of its length.
[[nodiscard]] Span make_span(const geometry::WirePath& path, std::size_t piece, double share_from,
                             double share_to);

/// Cuts a path: fine at the capacitor's gap (its charge is dense there), growing to a largest length.
struct Cutting {
    double gap_parts = 2;      ///< spans in half the gap
    double growth = 2.0;       ///< of each span over the one before, away from the gap
    double longest = 1.0 / 24; ///< of a span, over the length of the path
    bool even_turns = false;   ///< turning pieces cut evenly, for a path of several turns with leads
};

/// Spans from s = 0 to the end; symmetric about the opposite point where the path is reversible. No span
/// crosses a corner, the edge of the gap or the opposite point.
[[nodiscard]] std::vector<Span> cut(const geometry::WirePath& path, const Cutting& cutting);

/// Double integrals over two spans [m]: of the kernel, and of the kernel times the cosine between the
/// directions.
struct PairIntegral {
    double scalar_m = 0, vector_m = 0;
    PairIntegral& operator+=(const PairIntegral& other) noexcept {
        scalar_m += other.scalar_m;
        vector_m += other.vector_m;
        return *this;
    }
};

/// Static interactions on a path with a round conductor, (L.5): exact along a straight run, corrected for
/// curvature on a smooth one, by subdivision across corners and between neighbouring turns, where pairs alike
/// are computed once. Relative accuracy about 1e-3 of each pair, better of their sums.
class StaticInteraction {
public:
    StaticInteraction(const geometry::WirePath& path, double radius_m);
    [[nodiscard]] PairIntegral operator()(const Span& a, const Span& b);
    /// The same with what is known of the pair: the sums of 1 / sqrt(R^2 + 2 a^2) over its Gauss points.
    [[nodiscard]] PairIntegral near(const Span& a, const Span& b, const PairIntegral& plain);

private:
    // What two pairs of spans have in common if one is the other turned, shifted or screwed in space.
    using Likeness = std::array<std::int64_t, 7>;
    struct HashLikeness {
        [[nodiscard]] std::size_t operator()(const Likeness& key) const noexcept;
    };
    [[nodiscard]] Likeness likeness(const Span& a, const Span& b) const;
    [[nodiscard]] PairIntegral close(const Span& a, const Span& b);
    [[nodiscard]] PairIntegral any(const Span& a, const Span& b);
    [[nodiscard]] double run_distance_m(const Span& a, const Span& b) const;
    [[nodiscard]] PairIntegral along_run(const Span& a, const Span& b, double distance_m,
                                         const PairIntegral& plain);
    [[nodiscard]] PairIntegral plain(const Span& a, const Span& b) const;
    [[nodiscard]] PairIntegral off_run(const Span& a, const Span& b);
    [[nodiscard]] PairIntegral apart(const Span& a, const Span& b) const;
    [[nodiscard]] PairIntegral split(const Span& a, const Span& b);

    // What a pair along a run has more than the plain kernel on the bent path gives.
    struct RunExcess {
        std::array<std::int64_t, 3> key{-1, -1, -1}; // lengths and distance
        double excess_m = 0;
    };
    [[nodiscard]] double run_excess_m(double longer_m, double shorter_m, double distance_m);

    const geometry::WirePath& path_;
    double radius_m_;
    std::array<RunExcess, 64> excesses_; ///< pairs along a run computed before, by a hash of the key
    std::vector<int> run_;               ///< of each piece: pieces joined smoothly share one
    std::vector<double> curvature_1_m_;  ///< of each piece
    std::unordered_map<Likeness, PairIntegral, HashLikeness> known_; ///< close pairs computed before
};

} // namespace loopwright::loop::detail
