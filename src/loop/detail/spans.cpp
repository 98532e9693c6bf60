#include "loop/detail/spans.hpp"

#include <algorithm>
#include <cmath>

namespace loopwright::loop::detail {
namespace {

using geometry::dot;
using geometry::WirePath;

// What a half turn about the axis from the capacitor to the point opposite makes of the spans of a reversible
// path.
class HalfTurn {
public:
    explicit HalfTurn(const WirePath& path)
        : path_(path), start_(path.capacitor_point()), axis_(unit(path.opposite_point() - start_)) {}

    [[nodiscard]] Span of(const Span& span) const {
        Span image;
        image.piece = path_.pieces().size() - 1 - span.piece;
        image.share_from = 1 - span.share_to;
        image.share_to = 1 - span.share_from;
        image.from_m = path_.length_m() - span.to_m;
        image.to_m = path_.length_m() - span.from_m;
        for (std::size_t i = 0; i < 2; ++i) {
            const Sample& sample = span.samples[1 - i];
            image.samples[i] = {place(sample.point), sample.tangent - 2 * dot(axis_, sample.tangent) * axis_,
                                path_.length_m() - sample.s_m, sample.weight_m};
        }
        image.middle = place(span.middle);
        return image;
    }

private:
    [[nodiscard]] geometry::Vector3 place(const geometry::Vector3& point) const {
        const geometry::Vector3 from = point - start_;
        return start_ + 2 * dot(axis_, from) * axis_ - from;
    }
    const WirePath& path_;
    geometry::Vector3 start_, axis_;
};

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

} // namespace

Place place_on(const geometry::Piece& piece, double share) {
    const geometry::Piece::Turning& t = piece.turn();
    if (piece.is_straight() || t.radius_change_m != 0 || t.height_change_m != 0) {
        return {piece.point(share), piece.tangent(share)};
    }
    // A circle: both from one angle.
    const double angle = t.angle_start + share * t.angle_change;
    const double sine = std::sin(angle);
    const double cosine = std::cos(angle);
    const double forward = t.angle_change < 0 ? -1 : 1;
    return {t.frame.origin + t.radius_start_m * (sine * t.frame.right + cosine * t.frame.up) +
                t.height_start_m * t.frame.rise,
            (forward * cosine) * t.frame.right - (forward * sine) * t.frame.up};
}

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
        const Place at = place_on(shape, share);
        span.samples[i] = {at.point, at.tangent, path.begin_m(piece) + share * shape.length_m(),
                           0.5 * span.length_m()};
    }
    span.middle = 0.5 * (span.samples[0].point + span.samples[1].point);
    return span;
}

std::vector<Span> cut(const WirePath& path, const Cutting& cutting) {
    const std::vector<double> marks = all_marks(path, cutting);
    std::vector<Span> spans;
    spans.reserve(marks.size());
    std::size_t piece = 0;
    const double end = path.reversible() ? 0.5 * (1 + 1e-9) * path.length_m() : marks.back();
    for (std::size_t i = 1; i < marks.size() && marks[i] <= end; ++i) {
        const double middle = 0.5 * (marks[i - 1] + marks[i]);
        while (piece + 1 < path.pieces().size() && path.begin_m(piece + 1) < middle) {
            ++piece;
        }
        const double begin = path.begin_m(piece);
        const double length = path.pieces()[piece].length_m();
        spans.push_back(make_span(path, piece, std::max(0.0, (marks[i - 1] - begin) / length),
                                  std::min(1.0, (marks[i] - begin) / length)));
    }
    if (path.reversible()) {
        const HalfTurn half_turn(path);
        for (std::size_t i = spans.size(); i-- > 0;) {
            spans.push_back(half_turn.of(spans[i]));
        }
    }
    return spans;
}

} // namespace loopwright::loop::detail
