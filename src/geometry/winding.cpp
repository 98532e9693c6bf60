#include "geometry/winding.hpp"

#include "base/error.hpp"
#include "units/constants.hpp"

#include <algorithm>
#include <array>
#include <cmath>

namespace loopwright::geometry {
namespace {

using units::constants::pi;

// Half sizes of a turn: circumradius for circle and polygon; half width and half height for a rectangle.
struct Half {
    double radius_m = 0, width_m = 0, height_m = 0;
};

bool starts_at_corner(const Winding& w) {
    return w.outline == Outline::polygon && (w.corner_down || w.sides % 2 != 0);
}

// A turn that lies `inset` further inward. Turns of a polygon are spaced flat to flat.
Half inset_by(const Winding& w, Half half, double inset_m) {
    if (w.outline == Outline::rectangle) {
        return {0, half.width_m - inset_m, half.height_m - inset_m};
    }
    const double flat_to_corner = w.outline == Outline::polygon ? std::cos(pi / w.sides) : 1.0;
    return {half.radius_m - inset_m / flat_to_corner, 0, 0};
}

double perimeter_m(const Winding& w, const Half& half) {
    switch (w.outline) {
    case Outline::circle:
        return 2 * pi * half.radius_m;
    case Outline::polygon:
        return 2 * w.sides * half.radius_m * std::sin(pi / w.sides);
    case Outline::rectangle:
        break;
    }
    return 4 * (half.width_m + half.height_m);
}

double area_m2(const Winding& w, const Half& half) {
    switch (w.outline) {
    case Outline::circle:
        return pi * half.radius_m * half.radius_m;
    case Outline::polygon:
        return 0.5 * w.sides * half.radius_m * half.radius_m * std::sin(2 * pi / w.sides);
    case Outline::rectangle:
        break;
    }
    return 4 * half.width_m * half.height_m;
}

// A point of a turn in its plane (right, up) and its share of the way round, clockwise from the capacitor.
struct Mark {
    double share = 0, right_m = 0, up_m = 0;
};

std::vector<Mark> marks_of_polygon(const Winding& w, const Half& half) {
    std::vector<Mark> marks;
    const double step = 2 * pi / w.sides;
    const bool corner = starts_at_corner(w);
    if (!corner) {
        marks.push_back({0, 0, half.radius_m * std::cos(pi / w.sides)});
    }
    for (int i = 0; i < w.sides; ++i) {
        const double angle = (i + (corner ? 0.0 : 0.5)) * step;
        marks.push_back({angle / (2 * pi), half.radius_m * std::sin(angle), half.radius_m * std::cos(angle)});
    }
    return marks;
}

std::vector<Mark> marks_of_rectangle(const Half& half) {
    const double round = 4 * (half.width_m + half.height_m);
    const double top = half.width_m / round;
    const double side = 2 * half.height_m / round;
    return {{0, 0, half.height_m},
            {top, half.width_m, half.height_m},
            {top + side, half.width_m, -half.height_m},
            {3 * top + side, -half.width_m, -half.height_m},
            {3 * top + 2 * side, -half.width_m, half.height_m}};
}

// The turns of a winding, without leads: from the capacitor's side all the way round.
class Turns {
public:
    Turns(const Winding& w, const Half& outer, const Frame& frame) : w_(w), outer_(outer), frame_(frame) {
        spacing_m_ = w.turns > 1 ? w.spacing.value() : 0;
        spiral_ = w.arrangement == Arrangement::spiral;
    }

    [[nodiscard]] std::vector<Piece> pieces() const {
        return w_.outline == Outline::circle ? circular() : straight_sided();
    }

private:
    [[nodiscard]] double inset_m(double turn) const { return spiral_ ? (turn - 0.5) * spacing_m_ : 0.0; }
    [[nodiscard]] double rise_m(double turn) const {
        return spiral_ ? 0.0 : (turn - 0.5 * w_.turns) * spacing_m_;
    }
    [[nodiscard]] std::vector<Piece> circular() const {
        std::vector<Piece> pieces;
        for (int turn = 0; turn < w_.turns; ++turn) {
            Piece::Turning t;
            t.frame = frame_;
            t.angle_change = 2 * pi;
            t.radius_start_m = inset_by(w_, outer_, inset_m(turn)).radius_m;
            t.radius_change_m = inset_by(w_, outer_, inset_m(turn + 1)).radius_m - t.radius_start_m;
            t.height_start_m = rise_m(turn);
            t.height_change_m = rise_m(turn + 1) - t.height_start_m;
            pieces.push_back(Piece::turning(t));
        }
        return pieces;
    }
    [[nodiscard]] std::vector<Piece> straight_sided() const {
        std::vector<Vector3> points;
        for (int turn = 0; turn < w_.turns; ++turn) {
            const std::size_t count = marks(turn, 0).size();
            for (std::size_t i = 0; i < count; ++i) {
                const double share = marks(turn, 0)[i].share;
                points.push_back(place(marks(turn, share)[i], turn + share));
            }
        }
        points.push_back(place(marks(w_.turns, 0)[0], w_.turns));
        std::vector<Piece> pieces;
        for (std::size_t i = 1; i < points.size(); ++i) {
            pieces.push_back(Piece::straight(points[i - 1], points[i]));
        }
        return pieces;
    }
    [[nodiscard]] std::vector<Mark> marks(int turn, double share) const {
        const Half half = inset_by(w_, outer_, inset_m(turn + share));
        return w_.outline == Outline::polygon ? marks_of_polygon(w_, half) : marks_of_rectangle(half);
    }
    [[nodiscard]] Vector3 place(const Mark& mark, double turn) const {
        return frame_.origin + mark.right_m * frame_.right + mark.up_m * frame_.up +
               rise_m(turn) * frame_.rise;
    }

    const Winding& w_;
    Half outer_;
    Frame frame_;
    double spacing_m_ = 0;
    bool spiral_ = false;
};

double length_m(const std::vector<Piece>& pieces) {
    double sum = 0;
    for (const Piece& piece : pieces) {
        sum += piece.length_m();
    }
    return sum;
}

[[noreturn]] void refuse_measure(const char* accepted) {
    throw base::InputError("loop.size_is", "this measure", accepted);
}

double polygon_radius_m(const Winding& w, double size_m) {
    switch (w.measure) {
    case Measure::across_corners:
        return size_m / 2;
    case Measure::side:
        return size_m / (2 * std::sin(pi / w.sides));
    case Measure::across_flats:
        if (w.sides % 2 != 0) {
            refuse_measure("side or across_corners: a polygon with an odd number of sides has no two flats "
                           "that face each other");
        }
        return size_m / (2 * std::cos(pi / w.sides));
    case Measure::diameter:
    case Measure::conductor_length:
        break;
    }
    refuse_measure("across_flats, across_corners, side or conductor_length for a polygon");
}

// Radius that gives the turns a total length. The length is linear in the radius but for small terms, so
// the secant rule ends after a few steps.
double radius_for_length_m(const Winding& w, double wanted_m) {
    const auto length = [&](double radius_m) { return length_m(Turns(w, {radius_m, 0, 0}, {}).pieces()); };
    const double per_radius = perimeter_m(w, {1, 0, 0}) * w.turns;
    double r0 = wanted_m / per_radius;
    double l0 = length(r0);
    double r1 = r0 + (wanted_m - l0) / per_radius;
    for (int step = 0; step < 50 && std::abs(r1 - r0) > 1e-15 * r0; ++step) {
        const double l1 = length(r1);
        const double slope = l1 != l0 ? (l1 - l0) / (r1 - r0) : per_radius;
        r0 = r1;
        l0 = l1;
        r1 += (wanted_m - l1) / slope;
    }
    return r1;
}

Half half_of(const Winding& w) {
    if (w.outline == Outline::rectangle) {
        return {0, w.width.value() / 2, w.height.value() / 2};
    }
    const double size_m = w.size.value();
    if (w.measure == Measure::conductor_length) {
        return {radius_for_length_m(w, size_m), 0, 0};
    }
    if (w.outline == Outline::polygon) {
        return {polygon_radius_m(w, size_m), 0, 0};
    }
    if (w.measure != Measure::diameter) {
        refuse_measure("diameter or conductor_length for a circle");
    }
    return {size_m / 2, 0, 0};
}

void require_positive(double value_m, const char* where) {
    if (!(value_m > 0) || !std::isfinite(value_m)) {
        throw base::InputError(where, std::to_string(value_m) + " m", "a length above 0");
    }
}

Half checked_half(const Winding& w) {
    if (w.outline == Outline::polygon && w.sides < 3) {
        throw base::InputError("loop.sides", std::to_string(w.sides), "3 or more");
    }
    if (w.turns < 1) {
        throw base::InputError("loop.turns", std::to_string(w.turns), "1 or more");
    }
    if (w.outline == Outline::rectangle) {
        require_positive(w.width.value(), "loop.width");
        require_positive(w.height.value(), "loop.height");
    } else {
        require_positive(w.size.value(), "loop.size");
    }
    const Half half = half_of(w);
    if (w.turns > 1) {
        require_positive(w.spacing.value(), "loop.turn_spacing");
        const double inset = w.arrangement == Arrangement::spiral ? (w.turns - 0.5) * w.spacing.value() : 0;
        const Half inner = inset_by(w, half, inset);
        const double least =
            w.outline == Outline::rectangle ? std::min(inner.width_m, inner.height_m) : inner.radius_m;
        if (!(least > 0)) {
            throw base::InputError("loop.turn_spacing", std::to_string(w.spacing.value()) + " m",
                                   "a spacing that leaves room inside the innermost turn of the spiral");
        }
    }
    return half;
}

Frame tilted_frame(const Placement& placement) {
    const double s = std::sin(placement.tilt.value());
    const double c = std::cos(placement.tilt.value());
    return {{0, 0, 0}, {1, 0, 0}, {0, s, c}, {0, c, -s}};
}

std::vector<Piece> closed_pieces(const Winding& w, const Half& half, const Frame& frame) {
    std::vector<Piece> turns = Turns(w, half, frame).pieces();
    if (w.turns == 1) {
        return turns;
    }
    const double lead_m = w.lead.value();
    const Vector3 outward = w.arrangement == Arrangement::stack ? frame.up : frame.rise;
    const Vector3 first = turns.front().point(0);
    const Vector3 last = turns.back().point(1);
    const Vector3 from = first + lead_m * outward;
    const Vector3 to = last + lead_m * outward;
    const Vector3 middle = 0.5 * (from + to);
    std::vector<Piece> all{Piece::straight(middle, from)};
    if (lead_m > 0) {
        all.push_back(Piece::straight(from, first));
    }
    all.insert(all.end(), turns.begin(), turns.end());
    if (lead_m > 0) {
        all.push_back(Piece::straight(last, to));
    }
    all.push_back(Piece::straight(to, middle));
    return all;
}

// Lowest z of the pieces; a full turn is lowest where its tangent is level, found well enough by sampling and
// exactly for the turns of constant radius that stand upright.
double lowest_m(const std::vector<Piece>& pieces) {
    double lowest = pieces.front().point(0).z;
    for (const Piece& piece : pieces) {
        const int steps = piece.is_straight() ? 1 : 64;
        for (int i = 0; i <= steps; ++i) {
            lowest = std::min(lowest, piece.point(double(i) / steps).z);
        }
    }
    return lowest;
}

} // namespace

units::Length circumradius(const Winding& winding) {
    return units::metres(checked_half(winding).radius_m);
}

units::Length perimeter(const Winding& winding) {
    return units::metres(perimeter_m(winding, checked_half(winding)));
}

units::Area area(const Winding& winding) {
    return units::square_metres(area_m2(winding, checked_half(winding)));
}

units::Area turn_area(const Winding& winding) {
    const Half outer = checked_half(winding);
    double sum = 0;
    for (int turn = 0; turn < winding.turns; ++turn) {
        const bool spiral = winding.arrangement == Arrangement::spiral && winding.turns > 1;
        sum += area_m2(winding, inset_by(winding, outer, spiral ? turn * winding.spacing.value() : 0.0));
    }
    return units::square_metres(sum);
}

Frame frame_of(const Winding& winding, const Placement& placement) {
    Frame frame = tilted_frame(placement);
    if (!placement.free_space) {
        const double below = lowest_m(closed_pieces(winding, checked_half(winding), frame));
        frame.origin.z = placement.clearance.value() - below;
    }
    return frame;
}

WirePath wire_path(const Winding& winding, const Placement& placement) {
    const Half half = checked_half(winding);
    const Frame frame = frame_of(winding, placement);
    const bool reversible = winding.turns == 1 || winding.arrangement == Arrangement::stack;
    return {closed_pieces(winding, half, frame), winding.gap.value(), reversible};
}

} // namespace loopwright::geometry
