// Static interaction of two spans.
#include "loop/detail/spans.hpp"
#include "loop/detail/tube_kernel.hpp"

#include <algorithm>
#include <cmath>

namespace loopwright::loop::detail {
namespace {

using geometry::dot;
using geometry::WirePath;

// Sum over the Gauss points of both spans of (kernel, kernel cosine) with the pair's own kernel.
template <class Kernel>
PairIntegral over_samples(const Span& a, const Span& b, const Kernel& kernel) {
    PairIntegral sum;
    for (const Sample& p : a.samples) {
        for (const Sample& q : b.samples) {
            const geometry::Vector3 between = p.point - q.point;
            sum += kernel(dot(between, between), dot(p.tangent, q.tangent), p.weight_m * q.weight_m);
        }
    }
    return sum;
}

} // namespace

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
    // What lies nearer than two lengths off the run is not for a few Gauss points.
    const double least = std::max(1.2 * reach, 2.1 * std::max(a.length_m(), b.length_m()));
    return distance < least && (distance + 0.5 * reach) * curvature < 1.6 ? distance : -1;
}

// The integral along the straight run less that of the plain kernel 1 / sqrt(R^2 + 2 a^2) at the Gauss
// points.
double StaticInteraction::run_excess_m(double longer_m, double shorter_m, double distance_m) {
    const double grain = 1e10 / path_.length_m();
    const std::array<std::int64_t, 3> key{static_cast<std::int64_t>(longer_m * grain + 0.5),
                                          static_cast<std::int64_t>(shorter_m * grain + 0.5),
                                          static_cast<std::int64_t>(distance_m * grain + 0.5)};
    const auto mixed = static_cast<std::uint64_t>(key[0] + 3 * key[1] + 7 * key[2]) * 0x9E3779B97F4A7C15ULL;
    RunExcess& held = excesses_[mixed >> 58];
    if (held.key != key) {
        const double sum = (longer_m + shorter_m) / std::sqrt(12.0);
        const double difference = (longer_m - shorter_m) / std::sqrt(12.0);
        double along = 0;
        for (const double offset : {sum, difference, -difference, -sum}) {
            const double apart_m = distance_m + offset;
            along += 1 / std::sqrt(apart_m * apart_m + 2 * radius_m_ * radius_m_);
        }
        held = {key, collinear_integral(longer_m, shorter_m, distance_m, radius_m_) -
                         0.25 * longer_m * shorter_m * along};
    }
    return held.excess_m;
}

// Exact along a straight run; on a bent one the plain kernel at the Gauss points says what the bend changes.
PairIntegral StaticInteraction::along_run(const Span& a, const Span& b, double distance_m,
                                          const PairIntegral& plain) {
    const double excess =
        run_excess_m(std::max(a.length_m(), b.length_m()), std::min(a.length_m(), b.length_m()), distance_m);
    return {plain.scalar_m + excess, plain.vector_m + excess};
}

PairIntegral StaticInteraction::plain(const Span& a, const Span& b) const {
    const double shift = 2 * radius_m_ * radius_m_;
    return over_samples(a, b, [&](double d2, double cosine, double weight) {
        const double kernel = weight / std::sqrt(d2 + shift);
        return PairIntegral{kernel, kernel * cosine};
    });
}

PairIntegral StaticInteraction::apart(const Span& a, const Span& b) const {
    return over_samples(a, b, [&](double d2, double cosine, double weight) {
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

PairIntegral StaticInteraction::split(const Span& a, const Span& b) {
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
    return distance >= 0 ? along_run(a, b, distance, plain(a, b)) : off_run(a, b);
}

PairIntegral StaticInteraction::near(const Span& a, const Span& b, const PairIntegral& plain) {
    const double distance = run_distance_m(a, b);
    if (distance >= 0) {
        return along_run(a, b, distance, plain);
    }
    const double clear = std::max(2.0 * std::max(a.length_m(), b.length_m()),
                                  10 * radius_m_ + 0.5 * (a.length_m() + b.length_m()));
    const geometry::Vector3 between = a.middle - b.middle;
    return dot(between, between) > clear * clear ? plain : off_run(a, b);
}

PairIntegral StaticInteraction::off_run(const Span& a, const Span& b) {
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

PairIntegral StaticInteraction::any(const Span& a, const Span& b) {
    const double distance = run_distance_m(a, b);
    if (distance >= 0) {
        return along_run(a, b, distance, plain(a, b));
    }
    const double length = std::max(a.length_m(), b.length_m());
    const geometry::Vector3 between = a.middle - b.middle;
    const bool far = dot(between, between) > 4 * length * length;
    return far || length < 0.7 * radius_m_ ? apart(a, b) : close(a, b);
}

PairIntegral StaticInteraction::close(const Span& a, const Span& b) {
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
