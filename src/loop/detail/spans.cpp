#include "loop/detail/spans.hpp"

#include "loop/detail/tube_kernel.hpp"

#include <algorithm>
#include <cmath>

namespace loopwright::loop::detail {
namespace {

using geometry::dot;
using geometry::WirePath;

Span make_span(const WirePath& path, std::size_t piece, double share_from, double share_to) {
    Span span;
    span.piece = piece;
    span.share_from = share_from;
    span.share_to = share_to;
    const geometry::Piece& shape = path.pieces()[piece];
    span.from_m = path.begin_m(piece) + share_from * shape.length_m();
    span.to_m = path.begin_m(piece) + share_to * shape.length_m();
    const double centre = 0.5 * (share_from + share_to);
    const double offset = 0.5 * (share_to - share_from) / std::sqrt(3.0);
    for (std::size_t i = 0; i < 2; ++i) {
        const double share = centre + (i == 0 ? -offset : offset);
        span.samples[i] = {shape.point(share), shape.tangent(share),
                           path.begin_m(piece) + share * shape.length_m(), 0.5 * span.length_m()};
    }
    span.middle = 0.5 * (span.samples[0].point + span.samples[1].point);
    return span;
}

// A stretch of the path without a corner, the edge of the gap or the opposite point inside.
struct Stretch {
    double end_m = 0;
    bool even = false; ///< cut evenly
};

// Distances from the capacitor at which spans end, from 0 up to the end of the last stretch; steps grow from
// the gap outward.
std::vector<double> graded_marks(std::vector<Stretch> stretches, double half_gap_m, double longest_m,
                                 const Cutting& cutting) {
    std::sort(stretches.begin(), stretches.end(),
              [](const Stretch& a, const Stretch& b) { return a.end_m < b.end_m; });
    std::vector<double> marks{0};
    double step = half_gap_m / cutting.gap_parts;
    for (const Stretch& stretch : stretches) {
        const double begin = marks.back();
        const double length = stretch.end_m - begin;
        if (length <= 1e-9 * stretches.back().end_m) {
            continue;
        }
        const double parts = std::ceil(length / longest_m);
        for (double part = 1; stretch.even && part < parts; ++part) {
            marks.push_back(begin + part / parts * length);
        }
        while (!stretch.even && stretch.end_m - marks.back() > 1.5 * step) {
            marks.push_back(marks.back() + step);
            if (begin >= 0.99 * half_gap_m) {
                step = std::min(cutting.growth * step, longest_m);
            }
        }
        marks.push_back(stretch.end_m);
    }
    return marks;
}

std::vector<double> all_marks(const WirePath& path, const Cutting& cutting) {
    const double length = path.length_m();
    const double half_gap = std::min(0.5 * path.gap_m(), 0.25 * length);
    const double longest = cutting.longest * length;
    // The first and the last two pieces of a path with leads are the link and the leads.
    const std::size_t last = path.pieces().size() - 1;
    const auto even = [&](double middle_m) {
        const std::size_t piece = path.piece_at(middle_m);
        return cutting.even_turns && piece >= 2 && piece + 2 <= last;
    };
    std::vector<Stretch> ahead{{half_gap, false}, {0.5 * length, even(0.5 * length * (1 - 1e-9))}};
    std::vector<Stretch> behind{{half_gap, false}, {0.5 * length, even(0.5 * length * (1 + 1e-9))}};
    for (std::size_t i = 1; i <= last; ++i) {
        const double corner = path.begin_m(i);
        if (corner < 0.5 * length) {
            ahead.push_back({corner, even(corner - 1e-9 * length)});
        } else {
            behind.push_back({length - corner, even(corner + 1e-9 * length)});
        }
    }
    std::vector<double> marks = graded_marks(ahead, half_gap, longest, cutting);
    const std::vector<double> back =
        path.reversible() ? marks : graded_marks(behind, half_gap, longest, cutting);
    for (auto mark = back.rbegin() + 1; mark != back.rend(); ++mark) {
        marks.push_back(length - *mark);
    }
    return marks;
}

// Sum over the Gauss points of both spans of (kernel, kernel cosine) with the pair's own kernel.
template <class Kernel>
PairIntegral over_samples(const Span& a, const Span& b, const Kernel& kernel) {
    PairIntegral sum;
    for (const Sample& p : a.samples) {
        for (const Sample& q : b.samples) {
            const geometry::Vector3 between = p.point - q.point;
            sum += kernel(dot(between, between), dot(p.tangent, q.tangent), p.s_m - q.s_m,
                          p.weight_m * q.weight_m);
        }
    }
    return sum;
}

} // namespace

std::vector<Span> cut(const WirePath& path, const Cutting& cutting) {
    const std::vector<double> marks = all_marks(path, cutting);
    std::vector<Span> spans;
    spans.reserve(marks.size());
    std::size_t piece = 0;
    for (std::size_t i = 1; i < marks.size(); ++i) {
        const double middle = 0.5 * (marks[i - 1] + marks[i]);
        while (piece + 1 < path.pieces().size() && path.begin_m(piece + 1) < middle) {
            ++piece;
        }
        const double begin = path.begin_m(piece);
        const double length = path.pieces()[piece].length_m();
        spans.push_back(make_span(path, piece, std::max(0.0, (marks[i - 1] - begin) / length),
                                  std::min(1.0, (marks[i] - begin) / length)));
    }
    return spans;
}

StaticInteraction::StaticInteraction(const WirePath& path, double radius_m)
    : path_(path), radius_m_(radius_m) {
    int run = 0;
    for (std::size_t i = 0; i < path.pieces().size(); ++i) {
        if (i > 0 && !path.smooth_before(i)) {
            ++run;
        }
        run_.push_back(run);
        const geometry::Piece& piece = path.pieces()[i];
        curvature_1_m_.push_back(std::abs(piece.turning_angle()) / piece.length_m());
    }
    if (path.smooth_before(0)) {
        for (int& number : run_) {
            number = number == run ? 0 : number;
        }
    }
}

// Distance along the path between the middles where both spans lie on one smooth run and are close enough for
// the run between them to be nearly straight; else a negative number.
double StaticInteraction::run_distance_m(const Span& a, const Span& b) const {
    if (run_[a.piece] != run_[b.piece]) {
        return -1;
    }
    double distance = std::abs(0.5 * (a.from_m + a.to_m) - 0.5 * (b.from_m + b.to_m));
    if (path_.smooth_before(0)) {
        distance = std::min(distance, path_.length_m() - distance);
    }
    const double reach = a.length_m() + b.length_m();
    const double curvature = std::max(curvature_1_m_[a.piece], curvature_1_m_[b.piece]);
    return distance < 1.2 * reach && (distance + 0.5 * reach) * curvature < 1.6 ? distance : -1;
}

PairIntegral StaticInteraction::along_run(const Span& a, const Span& b, double distance_m) const {
    const double straight = collinear_integral(a.length_m(), b.length_m(), distance_m, radius_m_);
    PairIntegral result{straight, straight};
    if (curvature_1_m_[a.piece] == 0 && curvature_1_m_[b.piece] == 0) {
        return result;
    }
    const double shift = 2 * radius_m_ * radius_m_;
    const double length = path_.length_m();
    result += over_samples(a, b, [&](double d2, double cosine, double ds, double weight) {
        const double along = std::abs(ds) > 0.5 * length ? length - std::abs(ds) : ds;
        const double chord = 1 / std::sqrt(d2 + shift);
        const double arc = 1 / std::sqrt(along * along + shift);
        return PairIntegral{weight * (chord - arc), weight * (cosine * chord - arc)};
    });
    return result;
}

PairIntegral StaticInteraction::apart(const Span& a, const Span& b) const {
    return over_samples(a, b, [&](double d2, double cosine, double, double weight) {
        const double kernel = d2 > 100 * radius_m_ * radius_m_ ? 1 / std::sqrt(d2 + 2 * radius_m_ * radius_m_)
                                                               : tube_kernel(std::sqrt(d2), radius_m_);
        return PairIntegral{weight * kernel, weight * kernel * cosine};
    });
}

namespace {

// A span as a straight filament: its chord, moved to the middle of where the arc runs.
struct Filament {
    geometry::Vector3 from, direction;
    double length_m = 0;
};

Filament filament_of(const WirePath& path, const Span& span) {
    const geometry::Piece& piece = path.pieces()[span.piece];
    const geometry::Vector3 from = piece.point(span.share_from);
    const geometry::Vector3 to = piece.point(span.share_to);
    const geometry::Vector3 chord = to - from;
    const double length = geometry::norm(chord);
    if (piece.is_straight()) {
        return {from, (1 / length) * chord, length};
    }
    const geometry::Vector3 bulge = piece.point(0.5 * (span.share_from + span.share_to)) - 0.5 * (from + to);
    return {from + (2.0 / 3.0) * bulge, (1 / length) * chord, length};
}

// int ds / sqrt(R^2 + 2 a^2) along a filament, seen from a point.
double seen_from(const geometry::Vector3& point, const Filament& filament, double radius_m) {
    const geometry::Vector3 to = point - filament.from;
    const double along = dot(to, filament.direction);
    const double aside2 = std::max(0.0, dot(to, to) - along * along) + 2 * radius_m * radius_m;
    const double ahead = filament.length_m - along;
    return std::log((ahead + std::sqrt(ahead * ahead + aside2)) *
                    (along + std::sqrt(along * along + aside2)) / aside2);
}

// Distance of a point from a filament, squared.
double distance2(const geometry::Vector3& point, const Filament& filament) {
    const geometry::Vector3 to = point - filament.from;
    const double along = std::clamp(dot(to, filament.direction), 0.0, filament.length_m);
    const geometry::Vector3 rest = to - along * filament.direction;
    return dot(rest, rest);
}

} // namespace

PairIntegral StaticInteraction::split(const Span& a, const Span& b) const {
    const bool first = a.length_m() >= b.length_m();
    const Span& whole = first ? a : b;
    const double half = 0.5 * (whole.share_from + whole.share_to);
    const Span one = make_span(path_, whole.piece, whole.share_from, half);
    const Span two = make_span(path_, whole.piece, half, whole.share_to);
    PairIntegral sum = first ? any(one, b) : any(a, one);
    sum += first ? any(two, b) : any(a, two);
    return sum;
}

std::size_t StaticInteraction::HashLikeness::operator()(const Likeness& key) const noexcept {
    std::uint64_t hash = 0;
    for (const std::int64_t part : key) {
        hash = (hash ^ static_cast<std::uint64_t>(part)) * 0x9E3779B97F4A7C15ULL;
        hash ^= hash >> 29;
    }
    return static_cast<std::size_t>(hash);
}

StaticInteraction::Likeness StaticInteraction::likeness(const Span& a, const Span& b) const {
    const double grain = 1e9 / path_.length_m();
    const auto rounded = [](double value) { return static_cast<std::int64_t>(std::llround(value)); };
    const auto apart2 = [&](std::size_t i, std::size_t j) {
        const geometry::Vector3 between = a.samples[i].point - b.samples[j].point;
        return rounded(grain * std::sqrt(dot(between, between)));
    };
    return {rounded(grain * a.length_m()),
            rounded(grain * b.length_m()),
            apart2(0, 0),
            apart2(0, 1),
            apart2(1, 0),
            apart2(1, 1),
            rounded(1e9 * dot(a.samples[0].tangent, b.samples[0].tangent))};
}

PairIntegral StaticInteraction::operator()(const Span& a, const Span& b) {
    const double distance = run_distance_m(a, b);
    if (distance >= 0) {
        return along_run(a, b, distance);
    }
    const double length = std::max(a.length_m(), b.length_m());
    const geometry::Vector3 between = a.middle - b.middle;
    if (dot(between, between) > 4 * length * length) {
        return apart(a, b);
    }
    const auto [place, fresh] = known_.try_emplace(likeness(a, b));
    if (fresh) {
        place->second = close(a, b);
    }
    return place->second;
}

PairIntegral StaticInteraction::any(const Span& a, const Span& b) const {
    const double distance = run_distance_m(a, b);
    if (distance >= 0) {
        return along_run(a, b, distance);
    }
    const double length = std::max(a.length_m(), b.length_m());
    const geometry::Vector3 between = a.middle - b.middle;
    const bool far = dot(between, between) > 4 * length * length;
    return far || length < 0.7 * radius_m_ ? apart(a, b) : close(a, b);
}

PairIntegral StaticInteraction::close(const Span& a, const Span& b) const {
    const Span& longer = a.length_m() >= b.length_m() ? a : b;
    const Span& shorter = a.length_m() >= b.length_m() ? b : a;
    if (curvature_1_m_[longer.piece] * longer.length_m() > 0.24) {
        return split(a, b);
    }
    // Side by side: the longer one as a straight filament, integrated exactly.
    const Filament filament = filament_of(path_, longer);
    const double least = std::max(shorter.length_m(), 3 * radius_m_);
    if (distance2(shorter.middle, filament) < least * least) {
        return split(a, b);
    }
    PairIntegral sum;
    for (const Sample& sample : shorter.samples) {
        const double scalar = sample.weight_m * seen_from(sample.point, filament, radius_m_);
        sum += PairIntegral{scalar, scalar * dot(sample.tangent, filament.direction)};
    }
    return sum;
}

} // namespace loopwright::loop::detail
