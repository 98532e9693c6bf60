#include "coupling/mismatch.hpp"

#include "units/constants.hpp"

#include <algorithm>
#include <cmath>
#include <complex>
#include <limits>

namespace loopwright::coupling {

namespace {
double vswr_of_magnitude(double magnitude) {
    constexpr double largest = std::numeric_limits<double>::max();
    return magnitude < 1.0 ? std::min((1.0 + magnitude) / (1.0 - magnitude), largest) : largest;
}
} // namespace

double vswr(units::Impedance load, units::Resistance line) {
    const std::complex<double> z = load.value();
    return vswr_of_magnitude(std::abs((z - line.value()) / (z + line.value())));
}

double reflection_magnitude(double vswr) {
    return (vswr - 1.0) / (vswr + 1.0);
}

double accepted_share(double vswr) {
    const double magnitude = reflection_magnitude(vswr);
    return (1.0 - magnitude) * (1.0 + magnitude);
}

double resonator_vswr(units::Frequency resonance, double q_unloaded, double coupling,
                      units::Frequency frequency) {
    const double ratio = frequency.value() / resonance.value();
    const std::complex<double> z = coupling / std::complex<double>(1.0, q_unloaded * (ratio - 1.0 / ratio));
    return vswr_of_magnitude(std::abs((z - 1.0) / (z + 1.0)));
}

CriticalCoupling critical_coupling(units::Resistance loop, units::Inductance coupling_loop,
                                   units::Frequency frequency, units::Resistance line) {
    const double omega = 2.0 * units::constants::pi * frequency.value();
    const double x = omega * coupling_loop.value();
    const double z0 = line.value();
    const double m = std::sqrt(loop.value() * (z0 * z0 + x * x) / z0) / omega;
    // Seen from the loop the line's side adds (w M)^2/(Z0 + j w L): its reactance is -(w M)^2 x/(Z0^2 + x^2).
    const double shift = omega * m * omega * m * x / (z0 * z0 + x * x);
    return {units::henries(m), units::ohms(shift)};
}

} // namespace loopwright::coupling
