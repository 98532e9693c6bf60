#pragma once
// The two ports of a fed loop over a range of frequencies, from few solutions.
#include "coupling/detail/fed_loop.hpp"

#include <array>

namespace loopwright::coupling::detail {

/// Open-circuit impedances around a frequency by polynomials through 5 Chebyshev nodes. The capacitor is not
/// in them, so they are smooth: within 10 % to either side of the middle the error is below 1e-6 of |z|.
class Around {
public:
    /// half_span from 0 to 30 % of the middle.
    Around(const FedLoop& fed, units::Frequency middle, units::Frequency half_span);
    /// frequency inside the span.
    [[nodiscard]] OpenTwoPort at(units::Frequency frequency) const;

private:
    static constexpr std::size_t nodes = 5;
    std::array<double, nodes> at_Hz_{};
    std::array<OpenTwoPort, nodes> port_{};
};

} // namespace loopwright::coupling::detail
