#pragma once
// Place and direction on one element, without the general machinery of a piece where the form is simple.
#include "wire/mesh.hpp"

namespace loopwright::wire::detail {

struct Station {
    geometry::Vector3 point, tangent;
};

/// x from 0 to 1 along the element. Straight lines and turns of constant radius cost one sine and cosine at
/// most; others ask the piece.
class Track {
public:
    Track(const Mesh& mesh, const Element& element);
    [[nodiscard]] Station at(double x) const;

private:
    enum class Form { straight, turn, other };
    Form form_ = Form::other;
    const geometry::Piece* piece_;
    double share_begin_, share_change_;
    geometry::Vector3 origin_, direction_; ///< straight: begin and whole way; turn: centre and rise over x
    geometry::Vector3 right_, up_;         ///< turn: of length radius
    double angle_ = 0, angle_change_ = 0;
    double across_ = 0;       ///< turn: tangent's part across the axis, over the radius
    geometry::Vector3 along_; ///< tangent's part along the axis; straight: the tangent
};

} // namespace loopwright::wire::detail
