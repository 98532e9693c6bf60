#pragma once
// Thin straight wires that may branch, by the simplest sound method: the mixed-potential equation with even
// currents on short segments and even charges on the halves around each node (R. F. Harrington, Field
// Computation by Moment Methods, 1968). Made for the tests alone: it shares no code with src/.
#include <array>
#include <complex>
#include <cstddef>
#include <vector>

namespace loopwright::coupling::testing {

struct Point {
    double x = 0, z = 0; ///< all wires lie in one plane
};

/// Nodes and the segments between them; a node may join any number of segments.
class BranchedWires {
public:
    /// Returns the node's number.
    std::size_t add_node(const Point& at);
    /// A straight wire from one node to another in so many equal segments; returns the first one's number.
    /// ohm_per_m: internal impedance of the conductor.
    std::size_t add_wire(std::size_t from, std::size_t to, std::size_t segments, double radius_m,
                         std::complex<double> ohm_per_m);
    [[nodiscard]] std::size_t segments() const { return segments_.size(); }

    /// A voltage spread evenly over `count` segments from `first`; its current is their mean.
    struct Gap {
        std::size_t first = 0, count = 1;
    };
    /// Open-circuit impedances of two gaps [ohm]: z11, z12, z22. Free space.
    [[nodiscard]] std::array<std::complex<double>, 3> open_impedances(double frequency_Hz, const Gap& gap1,
                                                                      const Gap& gap2) const;

private:
    struct Segment {
        std::size_t from = 0, to = 0;
        double radius_m = 0;
        std::complex<double> ohm_per_m;
    };
    std::vector<Point> nodes_;
    std::vector<Segment> segments_;
};

} // namespace loopwright::coupling::testing
