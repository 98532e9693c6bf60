#pragma once
// The real path of the conductor's centre line in space: smooth pieces (straight, circular, helical, spiral),
// closed, beginning and ending at the capacitor. Drawings, the closed-form and the full-wave model use the
// same path.
#include "geometry/vector3.hpp"

#include <cstddef>
#include <vector>

namespace loopwright::geometry {

/// Where a winding stands: right and up span the plane of a turn, up points to the capacitor's side, rise is
/// the direction in which a stack grows. Unit vectors at right angles.
struct Frame {
    Vector3 origin;
    Vector3 right{1, 0, 0};
    Vector3 up{0, 0, 1};
    Vector3 rise{0, 1, 0};
};

/// One smooth piece. Shares run from 0 to 1 along its length (of the arc length).
class Piece {
public:
    /// A turn about the line through centre along frame.rise: at angle t (radians, from up toward right) the
    /// point centre + radius (sin t right + cos t up) + height rise, with radius and height changing evenly
    /// with the angle.
    struct Turning {
        Frame frame;
        double angle_start = 0, angle_change = 0;
        double radius_start_m = 0, radius_change_m = 0;
        double height_start_m = 0, height_change_m = 0;
    };

    [[nodiscard]] static Piece straight(const Vector3& from, const Vector3& to);
    [[nodiscard]] static Piece turning(const Turning& turning);

    [[nodiscard]] bool is_straight() const noexcept { return straight_; }
    [[nodiscard]] double length_m() const noexcept { return length_m_; }
    [[nodiscard]] Vector3 point(double share) const;
    [[nodiscard]] Vector3 tangent(double share) const; ///< unit vector
    /// Angle the tangent turns through over the piece, radians (0: straight).
    [[nodiscard]] double turning_angle() const noexcept { return straight_ ? 0 : turning_.angle_change; }
    /// What a turning piece was made from; meaningless for a straight one.
    [[nodiscard]] const Turning& turn() const noexcept { return turning_; }

private:
    [[nodiscard]] double angle_share(double share) const;
    [[nodiscard]] double speed_m(double angle_share) const;
    [[nodiscard]] double length_to(double angle_share) const;

    bool straight_ = true;
    Vector3 from_, direction_;
    Turning turning_;
    double length_m_ = 0;
};

/// The closed path. Distances s along it start at the capacitor (s = 0, the middle of the gap) and run to
/// length_m(), the capacitor again; the reference point opposite the capacitor is s = length_m() / 2. The
/// capacitor's voltage is spread evenly over the gap: s < gap/2 and s > length - gap/2.
class WirePath {
public:
    /// pieces follow each other without a break (checked to 1e-9 of the length: base::ProgramError) and
    /// close. reversible: a half turn about the line through the capacitor and the loop's centre maps the
    /// path on itself, run backwards.
    WirePath(std::vector<Piece> pieces, double gap_m, bool reversible);

    [[nodiscard]] const std::vector<Piece>& pieces() const noexcept { return pieces_; }
    /// Distance at which piece i begins; begin_m(pieces().size()) is the length.
    [[nodiscard]] double begin_m(std::size_t i) const { return begins_.at(i); }
    [[nodiscard]] double length_m() const noexcept { return begins_.back(); }
    [[nodiscard]] double gap_m() const noexcept { return gap_m_; }
    [[nodiscard]] bool reversible() const noexcept { return reversible_; }
    /// Whether the tangent is continuous where piece i begins (i = 0: where the path closes).
    [[nodiscard]] bool smooth_before(std::size_t i) const { return smooth_.at(i); }

    [[nodiscard]] std::size_t piece_at(double s_m) const;
    /// s is taken modulo the length.
    [[nodiscard]] Vector3 point(double s_m) const;
    [[nodiscard]] Vector3 tangent(double s_m) const; ///< at a corner: of the piece that begins there
    [[nodiscard]] Vector3 capacitor_point() const { return point(0); }
    [[nodiscard]] Vector3 opposite_point() const { return point(length_m() / 2); }

private:
    struct Place {
        std::size_t piece = 0;
        double share = 0;
    };
    [[nodiscard]] Place locate(double s_m) const;

    std::vector<Piece> pieces_;
    std::vector<double> begins_;
    std::vector<bool> smooth_;
    double gap_m_ = 0;
    bool reversible_ = false;
};

} // namespace loopwright::geometry
