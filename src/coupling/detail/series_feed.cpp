#include "coupling/detail/series_feed.hpp"

#include "base/error.hpp"
#include "units/text.hpp"
#include "wire/port_matrix.hpp"

namespace loopwright::coupling::detail {

loop::SolvedLoop SeriesFeed::solved(units::Frequency frequency) const {
    auto found = alone_.solved(frequency);
    if (!found) {
        throw base::InputError("frequency", units::canonical(frequency),
                               "a frequency to which a capacitor can tune this loop");
    }
    return *std::move(found);
}

// Port p opposite the capacitor, in series with the voltage E = -(z12 I + zs J): J = ypp E + ypc V, the
// capacitor's current = ypc E + ycc V. Solved for the two open-circuit columns.
OpenTwoPort SeriesFeed::at(units::Frequency frequency) const {
    const loop::SolvedLoop loop = solved(frequency);
    const wire::TwoPort y = wire::two_port(loop.solution.admittance());
    const SeriesCircuit c = circuit(frequency, loop);
    const Complex open = y.y11 - y.y12 * y.y12 / y.y22; // at p, capacitor open
    const Complex divided = 1.0 + c.zs * open;
    OpenTwoPort port;
    port.z11 = c.zgg - c.z12 * c.z12 * open / divided;
    port.z12 = c.z12 * y.y12 / (y.y22 * divided);
    port.z22 = (1.0 + c.zs * y.y11) / (y.y22 * divided);
    return port;
}

} // namespace loopwright::coupling::detail
