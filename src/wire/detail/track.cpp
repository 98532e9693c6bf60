#include "wire/detail/track.hpp"

#include <cmath>

namespace loopwright::wire::detail {

Track::Track(const Mesh& mesh, const Element& element)
    : piece_(&mesh.model().wires[element.wire].stretches[element.stretch].piece),
      share_begin_(element.share_begin), share_change_(element.share_end - element.share_begin) {
    if (piece_->is_straight()) {
        form_ = Form::straight;
        origin_ = piece_->point(share_begin_);
        along_ = piece_->tangent(share_begin_);
        direction_ = (share_change_ * piece_->length_m()) * along_;
    } else if (piece_->turn().radius_change_m == 0) {
        form_ = Form::turn;
        const auto& turn = piece_->turn();
        right_ = turn.radius_start_m * turn.frame.right;
        up_ = turn.radius_start_m * turn.frame.up;
        angle_ = turn.angle_start + share_begin_ * turn.angle_change;
        angle_change_ = share_change_ * turn.angle_change;
        origin_ =
            turn.frame.origin + (turn.height_start_m + share_begin_ * turn.height_change_m) * turn.frame.rise;
        direction_ = (share_change_ * turn.height_change_m) * turn.frame.rise;
        across_ = turn.angle_change / piece_->length_m();
        along_ = (turn.height_change_m / piece_->length_m()) * turn.frame.rise;
    }
}

Station Track::at(double x) const {
    if (form_ == Form::straight) {
        return {origin_ + x * direction_, along_};
    }
    if (form_ == Form::turn) {
        const double angle = angle_ + x * angle_change_;
        const double sine = std::sin(angle), cosine = std::cos(angle);
        return {origin_ + x * direction_ + sine * right_ + cosine * up_,
                along_ + (across_ * cosine) * right_ - (across_ * sine) * up_};
    }
    const double share = share_begin_ + x * share_change_;
    return {piece_->point(share), piece_->tangent(share)};
}

} // namespace loopwright::wire::detail
