#pragma once
// What the solver is given: thin round wires in space, the gaps where something is connected, and at each
// frequency what the wires and the lumped parts cost. Plain SI numbers; positions in metres.
#include "geometry/wire_path.hpp"

#include <complex>
#include <cstddef>
#include <vector>

namespace loopwright::wire {

/// A smooth part of a wire. conductor: index into Loading::conductor_ohm_per_m, so that parts of one wire may
/// differ in loss (metal, temperature, neighbours).
struct Stretch {
    geometry::Piece piece;
    std::size_t conductor = 0;
};

/// Stretches follow one another; closed: the last ends where the first begins. radius_m: of the round wire
/// with the same external field (conductor::Conductor::equivalent_radius).
struct Wire {
    std::vector<Stretch> stretches;
    double radius_m = 0;
    bool closed = true;
    [[nodiscard]] double length_m() const;
};

/// A place on a wire: a voltage spread evenly over width_m of it, its middle at_m metres along the wire. The
/// conductor is taken to run on through it, with its loss.
struct Gap {
    std::size_t wire = 0;
    double at_m = 0;
    double width_m = 0.02;
};

/// ports: where a voltage is applied or something is connected later (drive, capacitor); width > 0, since the
/// capacitance at a gap of no width does not converge. loads: where a fixed impedance sits in series
/// (joints); width 0 is a point.
struct WireModel {
    std::vector<Wire> wires;
    std::vector<Gap> ports;
    std::vector<Gap> loads;
};

/// At one frequency: internal impedance of each conductor per metre and of each load; real parts >= 0.
/// Missing entries are base::ProgramError.
struct Loading {
    std::vector<std::complex<double>> conductor_ohm_per_m;
    std::vector<std::complex<double>> load_ohm;
};

/// A wire of a path that begins and ends at the capacitor, all of one conductor.
[[nodiscard]] Wire wire_along(const geometry::WirePath& path, double radius_m, std::size_t conductor = 0);
/// The gap of such a wire, and the one of the same width opposite.
[[nodiscard]] Gap capacitor_gap(const geometry::WirePath& path, std::size_t wire = 0);
[[nodiscard]] Gap opposite_gap(const geometry::WirePath& path, std::size_t wire = 0);

/// How many conductors the stretches name: the greatest index + 1.
[[nodiscard]] std::size_t conductor_count(const WireModel& model);

/// Throws base::ProgramError for: no wire, a wire without stretches, a stretch without length, a break
/// between stretches, a radius not above 0 or over a tenth of the wire's length, a gap of a wire that is not
/// there, wider than half its wire, beyond the end of an open wire, a port of no width.
void check(const WireModel& model);

} // namespace loopwright::wire
