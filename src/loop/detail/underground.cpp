#include "loop/detail/underground.hpp"

#include "base/error.hpp"
#include "design/soil.hpp"

namespace loopwright::loop::detail {

namespace {

using Complex = std::complex<double>;
constexpr double perfect_permittivity = 1e14;

geometry::Vector3 turned(const geometry::Frame& stand, double x, double y, double z) {
    return x * stand.right + y * stand.rise + z * stand.up;
}

} // namespace

wire::Underground underground_of(const design::Ground& ground) {
    if (ground.kind == design::GroundKind::free_space) {
        throw base::ProgramError("underground_of: free space has none");
    }
    return {ground.kind == design::GroundKind::perfect, design::soil_of(ground)};
}

Complex permittivity_of(const wire::Underground& underground, units::Frequency frequency) {
    return underground.perfect ? Complex(1.0, -perfect_permittivity)
                               : ground::complex_permittivity(underground.soil, frequency);
}

std::vector<ground::CurrentElement> stood_up(std::vector<ground::CurrentElement> pieces,
                                             const geometry::Frame& stand) {
    for (ground::CurrentElement& piece : pieces) {
        const auto& p = piece.position_m;
        const geometry::Vector3 at = stand.origin + turned(stand, p[0], p[1], p[2]);
        piece.position_m = {at.x, at.y, at.z};
        const auto m = piece.moment_A_m;
        const geometry::Vector3 re = turned(stand, m[0].real(), m[1].real(), m[2].real());
        const geometry::Vector3 im = turned(stand, m[0].imag(), m[1].imag(), m[2].imag());
        piece.moment_A_m = {Complex(re.x, im.x), Complex(re.y, im.y), Complex(re.z, im.z)};
    }
    return pieces;
}

} // namespace loopwright::loop::detail
