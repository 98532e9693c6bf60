#include "coupling/detail/around.hpp"

#include "units/constants.hpp"

#include <cmath>

namespace loopwright::coupling::detail {

Around::Around(const FedLoop& fed, units::Frequency middle, units::Frequency half_span) {
    for (std::size_t i = 0; i < nodes; ++i) {
        const double x = std::cos(units::constants::pi * (static_cast<double>(i) + 0.5) / nodes);
        at_Hz_.at(i) = middle.value() + half_span.value() * x;
        port_.at(i) = fed.at(units::hertz(at_Hz_.at(i)));
    }
}

// Lagrange's form: five nodes, no need for more.
OpenTwoPort Around::at(units::Frequency frequency) const {
    OpenTwoPort sum{};
    for (std::size_t i = 0; i < nodes; ++i) {
        double weight = 1;
        for (std::size_t k = 0; k < nodes; ++k) {
            if (k != i) {
                weight *= (frequency.value() - at_Hz_.at(k)) / (at_Hz_.at(i) - at_Hz_.at(k));
            }
        }
        sum.z11 += weight * port_.at(i).z11;
        sum.z12 += weight * port_.at(i).z12;
        sum.z22 += weight * port_.at(i).z22;
    }
    return sum;
}

} // namespace loopwright::coupling::detail
