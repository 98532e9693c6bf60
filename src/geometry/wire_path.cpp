#include "geometry/wire_path.hpp"

#include "base/error.hpp"

#include <algorithm>

namespace loopwright::geometry {

Piece Piece::straight(const Vector3& from, const Vector3& to) {
    Piece piece;
    piece.from_ = from;
    piece.direction_ = unit(to - from);
    piece.length_m_ = norm(to - from);
    return piece;
}

Piece Piece::turning(const Turning& turning) {
    Piece piece;
    piece.straight_ = false;
    piece.turning_ = turning;
    piece.length_m_ = piece.length_to(1.0);
    return piece;
}

// |dr/dq| for q = share of the angle.
double Piece::speed_m(double q) const {
    const double radius = turning_.radius_start_m + q * turning_.radius_change_m;
    return std::hypot(radius * turning_.angle_change, turning_.radius_change_m, turning_.height_change_m);
}

// Length from the start to the share q of the angle. With x = radius * angle change and c the constant part
// of the speed, ds = sqrt(x^2 + c^2) dq has the antiderivative (x sqrt(x^2 + c^2) + c^2 asinh(x/c)) / 2.
double Piece::length_to(double q) const {
    const Turning& t = turning_;
    if (t.radius_change_m == 0) {
        return q * speed_m(0);
    }
    const double c = std::hypot(t.radius_change_m, t.height_change_m);
    const auto antiderivative = [&](double share) {
        const double x = (t.radius_start_m + share * t.radius_change_m) * t.angle_change;
        return (x * std::hypot(x, c) + c * c * std::asinh(x / c)) / 2.0;
    };
    return (antiderivative(q) - antiderivative(0)) / (t.radius_change_m * t.angle_change);
}

double Piece::angle_share(double share) const {
    if (turning_.radius_change_m == 0) {
        return share;
    }
    // With the speed taken as proportional to the radius the share is a quadratic in q; then Newton's rule.
    const double growth = turning_.radius_change_m / turning_.radius_start_m;
    double q = share * (2 + growth) / (1 + std::sqrt(1 + growth * (2 + growth) * share));
    for (int step = 0; step < 4; ++step) {
        const double change = (share * length_m_ - length_to(q)) / speed_m(q);
        q += change;
        if (std::abs(change) < 1e-9) {
            break;
        }
    }
    return q;
}

Vector3 Piece::point(double share) const {
    if (straight_) {
        return from_ + share * length_m_ * direction_;
    }
    const Turning& t = turning_;
    const double q = angle_share(share);
    const double angle = t.angle_start + q * t.angle_change;
    const double radius = t.radius_start_m + q * t.radius_change_m;
    return t.frame.origin + radius * std::sin(angle) * t.frame.right + radius * std::cos(angle) * t.frame.up +
           (t.height_start_m + q * t.height_change_m) * t.frame.rise;
}

Vector3 Piece::tangent(double share) const {
    if (straight_) {
        return direction_;
    }
    const Turning& t = turning_;
    const double q = angle_share(share);
    const double angle = t.angle_start + q * t.angle_change;
    const double along = (t.radius_start_m + q * t.radius_change_m) * t.angle_change;
    const Vector3 outward = std::sin(angle) * t.frame.right + std::cos(angle) * t.frame.up;
    const Vector3 onward = std::cos(angle) * t.frame.right - std::sin(angle) * t.frame.up;
    return unit(along * onward + t.radius_change_m * outward + t.height_change_m * t.frame.rise);
}

WirePath::WirePath(std::vector<Piece> pieces, double gap_m, bool reversible)
    : pieces_(std::move(pieces)), gap_m_(gap_m), reversible_(reversible) {
    if (pieces_.empty()) {
        throw base::ProgramError("a wire path needs at least one piece");
    }
    begins_.push_back(0);
    for (const Piece& piece : pieces_) {
        begins_.push_back(begins_.back() + piece.length_m());
    }
    for (std::size_t i = 0; i < pieces_.size(); ++i) {
        const Piece& before = pieces_[i == 0 ? pieces_.size() - 1 : i - 1];
        if (!(norm(before.point(1) - pieces_[i].point(0)) <= 1e-9 * length_m())) {
            throw base::ProgramError("the pieces of a wire path must follow each other and close");
        }
        smooth_.push_back(dot(before.tangent(1), pieces_[i].tangent(0)) > 0.999);
    }
}

std::size_t WirePath::piece_at(double s_m) const {
    return locate(s_m).piece;
}

WirePath::Place WirePath::locate(double s_m) const {
    double s = std::fmod(s_m, length_m());
    if (s < 0) {
        s += length_m();
    }
    const auto after = std::upper_bound(begins_.begin() + 1, begins_.end() - 1, s);
    const auto piece = static_cast<std::size_t>(after - begins_.begin()) - 1;
    return {piece, std::min(1.0, (s - begins_[piece]) / pieces_[piece].length_m())};
}

Vector3 WirePath::point(double s_m) const {
    const Place place = locate(s_m);
    return pieces_[place.piece].point(place.share);
}

Vector3 WirePath::tangent(double s_m) const {
    const Place place = locate(s_m);
    return pieces_[place.piece].tangent(place.share);
}

} // namespace loopwright::geometry
