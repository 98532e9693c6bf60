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

// Distances from the capacitor at which spans end, from 0 up to the last of `stops` (ascending), which are
// all among them; steps grow from the gap outward.
std::vector<double> graded_marks(std::vector<double> stops, double half_gap_m, double longest_m,
                                 const Cutting& cutting) {
    std::sort(stops.begin(), stops.end());
    std::vector<double> marks{0};
    double step = half_gap_m / cutting.gap_parts;
    for (const double stop : stops) {
        if (stop - marks.back() <= 1e-9 * stops.back()) {
            continue;
        }
        const double begin = marks.back();
        while (stop - marks.back() > 1.5 * step) {
            marks.push_back(marks.back() + step);
            if (begin >= 0.99 * half_gap_m) {
                step = std::min(cutting.growth * step, longest_m);
            }
        }
        marks.push_back(stop);
    }
    return marks;
}

std::vector<double> all_marks(const WirePath& path, const Cutting& cutting) {
    const double length = path.length_m();
    const double half_gap = std::min(0.5 * path.gap_m(), 0.25 * length);
    const double longest = cutting.longest * length;
    std::vector<double> ahead{half_gap, 0.5 * length};
    std::vector<double> behind = ahead;
    for (std::size_t i = 1; i < path.pieces().size(); ++i) {
        const double corner = path.begin_m(i);
        (corner < 0.5 * length ? ahead : behind).push_back(std::min(corner, length - corner));
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

// A span as the straight filament between its ends.
struct Filament {
    geometry::Vector3 from, direction;
    double length_m = 0;
};

Filament filament_of(const WirePath& path, const Span& span) {
    const geometry::Piece& piece = path.pieces()[span.piece];
    const geometry::Vector3 from = piece.point(span.share_from);
    const geometry::Vector3 chord = piece.point(span.share_to) - from;
    const double length = geometry::norm(chord);
    return {from, (1 / length) * chord, length};
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
    PairIntegral sum = first ? (*this)(one, b) : (*this)(a, one);
    sum += first ? (*this)(two, b) : (*this)(a, two);
    return sum;
}

PairIntegral StaticInteraction::operator()(const Span& a, const Span& b) const {
    const double distance = run_distance_m(a, b);
    if (distance >= 0) {
        return along_run(a, b, distance);
    }
    const Span& longer = a.length_m() >= b.length_m() ? a : b;
    const Span& shorter = a.length_m() >= b.length_m() ? b : a;
    const double length = longer.length_m();
    const geometry::Vector3 between = a.middle - b.middle;
    if (dot(between, between) > 4 * length * length || length < 0.7 * radius_m_) {
        return apart(a, b);
    }
    if (curvature_1_m_[longer.piece] * length > 0.12) {
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
