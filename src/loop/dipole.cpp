#include "loop/dipole.hpp"

#include "base/error.hpp"
#include "loop/detail/underground.hpp"
#include "loop/far_pattern.hpp"
#include "units/constants.hpp"
#include "units/text.hpp"
#include "wire/ground_matrix.hpp"
#include "wire/samples.hpp"
#include "wire/solver.hpp"

#include <algorithm>
#include <cmath>

namespace loopwright::loop {

namespace {

using Complex = std::complex<double>;
using units::constants::pi;

constexpr double radius_in_wavelengths = 1e-5;
constexpr double gap_share = 0.01; // of the length: the feed
constexpr int elements = 48;

wire::WireModel straight_wire(double length_m, double radius_m) {
    wire::Wire wire;
    wire.stretches = {{geometry::Piece::straight({-length_m / 2, 0, 0}, {length_m / 2, 0, 0}), 0}};
    wire.radius_m = radius_m;
    wire.closed = false;
    wire::WireModel model;
    model.wires = {wire};
    model.ports = {{0, length_m / 2, gap_share * length_m}};
    return model;
}

/// Half a sine along the wire, 1 A in the middle.
wire::Currents half_wave_current(const wire::Mesh& mesh, double k, double length_m) {
    wire::Currents currents;
    currents.wavenumber_rad_m = k;
    currents.node_A.resize(mesh.nodes());
    for (const wire::Element& element : mesh.elements()) {
        if (element.node[0] != wire::no_node) {
            currents.node_A[element.node[0]] = std::cos(k * (element.begin_m - length_m / 2));
        }
    }
    currents.unknown_A = currents.node_A; // an open wire has no current around
    return currents;
}

/// x^T Re(Z) x of a real current: what leaves the wire as field (the method of the induced electromotive
/// force).
double power_W(const wire::FieldMatrix& field, const wire::Currents& currents) {
    double sum = 0;
    std::size_t e = 0;
    for (std::size_t i = 0; i < field.unknowns; ++i) {
        for (std::size_t k = 0; k <= i; ++k, ++e) {
            sum += (i == k ? 1.0 : 2.0) * field.re[e] * currents.unknown_A[i].real() *
                   currents.unknown_A[k].real();
        }
    }
    return sum;
}

geometry::Frame stand_of(const ComparisonDipole& dipole, double length_m, bool free_space) {
    const double a = dipole.azimuth.value();
    const geometry::Vector3 along =
        dipole.vertical ? geometry::Vector3{0, 0, 1} : geometry::Vector3{std::cos(a), std::sin(a), 0};
    const geometry::Vector3 up = dipole.vertical ? geometry::Vector3{1, 0, 0} : geometry::Vector3{0, 0, 1};
    geometry::Frame stand;
    stand.right = along;
    stand.up = up;
    stand.rise = geometry::cross(up, along);
    if (!free_space) {
        stand.origin = {0, 0, dipole.height.value() + (dipole.vertical ? length_m / 2 : 0.0)};
    }
    return stand;
}

void require(const ComparisonDipole& dipole, units::Frequency frequency, bool free_space) {
    constexpr double lowest_m = 0.1, highest_m = 100, lowest_Hz = 1e4, highest_Hz = 1e9;
    const double h = dipole.height.value();
    if (!free_space && !(h >= lowest_m && h <= highest_m)) {
        throw base::InputError("dipole.height", units::canonical(dipole.height), "from 0.1 m to 100 m");
    }
    if (!std::isfinite(dipole.azimuth.value())) {
        throw base::InputError("dipole.azimuth", "not a number", "a direction in degrees");
    }
    if (!(frequency.value() >= lowest_Hz && frequency.value() <= highest_Hz)) {
        throw base::InputError("frequency", units::canonical(frequency), "from 10 kHz to 1 GHz");
    }
}

} // namespace

struct DipoleOverGround::Parts {
    FarPattern pattern;
    double accepted_W; ///< for 1 A at the middle
};

DipoleOverGround::DipoleOverGround(const design::Ground& ground, units::Frequency frequency,
                                   const ComparisonDipole& dipole) {
    const bool free_space = ground.kind == design::GroundKind::free_space;
    require(dipole, frequency, free_space);
    const double wavelength_m = units::constants::speed_of_light_m_s / frequency.value();
    const double length_m = wavelength_m / 2;
    wire::MeshOptions options;
    options.elements_around = elements;
    const wire::Solver solver(straight_wire(length_m, radius_in_wavelengths * wavelength_m), options,
                              frequency * 1.001);
    const geometry::Frame stand = stand_of(dipole, length_m, free_space);
    const wire::Currents currents = half_wave_current(solver.mesh(), 2 * pi / wavelength_m, length_m);
    double accepted_W = power_W(solver.free_space(frequency), currents);
    Complex permittivity = 1.0;
    if (!free_space) {
        const wire::Underground underground = detail::underground_of(ground);
        permittivity = detail::permittivity_of(underground, frequency);
        accepted_W += power_W(wire::GroundMatrices(solver, underground, stand).direct(frequency), currents);
    }
    parts_ = std::make_unique<const Parts>(
        Parts{FarPattern(detail::stood_up(wire::current_elements(solver.mesh(), currents, 2), stand),
                         2 * pi / wavelength_m, permittivity, free_space),
              accepted_W});
}

DipoleOverGround::~DipoleOverGround() = default;
DipoleOverGround::DipoleOverGround(DipoleOverGround&&) noexcept = default;
DipoleOverGround& DipoleOverGround::operator=(DipoleOverGround&&) noexcept = default;

units::Decibel DipoleOverGround::gain(units::Angle elevation, units::Angle azimuth) const {
    return parts_->pattern.gain(elevation, azimuth, parts_->accepted_W);
}

units::Decibel DipoleOverGround::low_angle_gain() const {
    return parts_->pattern.low_angle_gain(parts_->accepted_W);
}

units::Resistance DipoleOverGround::input_resistance() const {
    return units::ohms(parts_->accepted_W);
}

OperatingPoint compared_with_dipole(OperatingPoint point, const design::Ground& ground,
                                    const ComparisonDipole& dipole) {
    if (!point.resonance || !point.resonance->gain_low_angle) {
        return point;
    }
    Resonance& r = *point.resonance;
    const units::Decibel yardstick = point.model == Model::closed_form
                                         ? half_wave_dipole_gain
                                         : DipoleOverGround(ground, point.frequency, dipole).low_angle_gain();
    r.gain_over_dipole = {r.gain_low_angle->value - yardstick.value};
    return point;
}

} // namespace loopwright::loop
