#include "wire/loops.hpp"

#include "conductor/skin_effect.hpp"
#include "units/constants.hpp"

#include <array>
#include <cmath>
#include <stdexcept>

namespace loopwright::wire::testing {

using geometry::Vector3;
using units::constants::pi;

Wire circle(const Vector3& centre, const Vector3& right, const Vector3& up, double diameter_m,
            double radius_m, bool from_below) {
    geometry::Piece::Turning turning;
    turning.frame = {centre, right, up, cross(up, right)};
    turning.angle_start = from_below ? pi : 0.0;
    turning.angle_change = 2 * pi;
    turning.radius_start_m = diameter_m / 2;
    Wire wire;
    wire.radius_m = radius_m;
    wire.stretches.push_back({geometry::Piece::turning(turning), 0});
    return wire;
}

Wire vertical_circle(double diameter_m, double radius_m) {
    return circle({0, 0, 0}, {1, 0, 0}, {0, 0, 1}, diameter_m, radius_m);
}

Wire polyline(const std::vector<Vector3>& points, double radius_m, bool closed) {
    Wire wire;
    wire.radius_m = radius_m;
    wire.closed = closed;
    for (std::size_t i = 0; i + (closed ? 0 : 1) < points.size(); ++i) {
        wire.stretches.push_back({geometry::Piece::straight(points[i], points[(i + 1) % points.size()]), 0});
    }
    return wire;
}

Wire straight(const Vector3& from, const Vector3& to, double radius_m) {
    return polyline({from, to}, radius_m, false);
}

namespace {

Vector3 vector_of(const std::array<double, 3>& p) {
    return {p[0], p[1], p[2]};
}

/// Distance along a wire of straight lines to the place nearest a point of it.
double distance_along(const Wire& wire, const Vector3& point) {
    double begin = 0;
    double best = 1e300;
    double at = 0;
    for (const Stretch& stretch : wire.stretches) {
        const double length = stretch.piece.length_m();
        const double s = dot(point - stretch.piece.point(0), stretch.piece.tangent(0));
        const double inside = std::min(std::max(s, 0.0), length);
        const double away = norm(point - stretch.piece.point(inside / length));
        if (away < best - 1e-9) {
            best = away;
            at = begin + inside;
        }
        begin += length;
    }
    return at;
}

} // namespace

WireModel model_of(const support::FullwaveCase& one) {
    const double a = one.in("a");
    const double gap = one.in("gap");
    WireModel model;
    if (one.has("vertices_closed")) {
        std::vector<Vector3> points;
        for (const auto& vertex : one.vertices()) {
            points.push_back(vector_of(vertex));
        }
        model.wires.push_back(polyline(points, a));
        const Wire& wire = model.wires.front();
        model.ports = {{0, distance_along(wire, vector_of(one.point("drive_point"))), gap},
                       {0, distance_along(wire, vector_of(one.point("cap_point"))), gap}};
        return model;
    }
    const Vector3 centre = vector_of(one.point("center"));
    const bool horizontal = one.text("orientation") == "horizontal";
    const Vector3 up = horizontal ? Vector3{0, 1, 0} : Vector3{0, 0, 1};
    const double diameter = one.in("D");
    model.wires.push_back(circle(centre, {1, 0, 0}, up, diameter, a));
    model.ports = {{0, pi * diameter / 2, gap}, {0, 0.0, gap}};
    if (one.has("Dc")) {
        const double below = -diameter / 2 + one.in("axis_offset") + one.in("Dc") / 2;
        model.wires.push_back(circle(centre + below * up, {1, 0, 0}, up, one.in("Dc"), one.in("ac"), true));
        model.wires.back().stretches.front().conductor = 1;
        model.ports.push_back({1, 0.0, gap});
    }
    return model;
}

Loading loading_of(const support::FullwaveCase& one) {
    const auto wire_ohm = [&](double radius_m) {
        return conductor::wire_internal_impedance(units::metres(2 * radius_m),
                                                  units::siemens_per_metre(one.in("sigma")),
                                                  units::hertz(one.in("f")))
            .value();
    };
    Loading loading;
    loading.conductor_ohm_per_m.push_back(wire_ohm(one.in("a")));
    if (one.has("ac")) {
        loading.conductor_ohm_per_m.push_back(wire_ohm(one.in("ac")));
    }
    return loading;
}

Complex capacitor_S(double omega, double capacitance_F, double q, double contact_ohm) {
    const double reactance = 1 / (omega * capacitance_F);
    return 1.0 / Complex(reactance / q + contact_ohm, -reactance);
}

Tuned tune(const Solution& solution, double q, double contact_ohm) {
    const double omega = solution.wavenumber_rad_m() * units::constants::speed_of_light_m_s;
    PortMatrix matrix = solution.admittance();
    while (matrix.ports > 2) {
        matrix = matrix.terminated(matrix.ports - 1, 0.0);
    }
    const TwoPort port = two_port(matrix);
    const auto load = [&](double c) { return capacitor_S(omega, c, q, contact_ohm); };
    const auto capacitance = resonating_capacitance_F(port, omega, load);
    if (!capacitance) {
        throw std::runtime_error("no capacitance resonates this loop");
    }
    Tuned tuned;
    tuned.capacitance_F = *capacitance;
    const Complex y = load(*capacitance);
    tuned.input_ohm = port.input_impedance(y);
    std::vector<Complex> volts{tuned.input_ohm, port.second_voltage(tuned.input_ohm, y)};
    if (solution.admittance().ports == 3) {
        volts.push_back(solution.admittance().terminated_voltage(volts, 2, 0.0));
    }
    tuned.per_ampere = solution.currents(volts);
    const PowerParts power = solution.powers(tuned.per_ampere);
    tuned.radiation_ohm = power.field_W;
    for (const double watts : power.conductor_W) {
        tuned.conductor_ohm += watts;
    }
    tuned.capacitor_ohm = std::norm(volts[1]) * y.real();
    tuned.capacitor_V_per_A = std::abs(volts[1]);
    tuned.capacitor_A_per_A = std::abs(volts[1] * y);
    return tuned;
}

} // namespace loopwright::wire::testing
