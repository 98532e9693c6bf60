#pragma once
// A loop with a feed as two ports, whatever the feed is made of; plain SI.
#include "base/notice.hpp"
#include "units/quantities.hpp"

#include <complex>

namespace loopwright::coupling::detail {

using Complex = std::complex<double>;

/// Open-circuit impedances [ohm]: port 1 the feed, port 2 the capacitor's gap.
struct OpenTwoPort {
    Complex z11, z12, z22;
    /// At the feed with `capacitor_ohm` across port 2.
    [[nodiscard]] Complex input(Complex capacitor_ohm) const {
        return z11 - z12 * z12 / (z22 + capacitor_ohm);
    }
    /// Current through the capacitor for one ampere into the feed.
    [[nodiscard]] Complex capacitor_per_feed(Complex capacitor_ohm) const {
        return -z12 / (z22 + capacitor_ohm);
    }
};

class FedLoop {
public:
    FedLoop() = default;
    FedLoop(const FedLoop&) = delete;
    FedLoop& operator=(const FedLoop&) = delete;
    virtual ~FedLoop() = default;
    [[nodiscard]] virtual OpenTwoPort at(units::Frequency frequency) const = 0;
    /// Share of the power accepted at the feed that the feed's own parts turn into heat, 0 to 1.
    [[nodiscard]] virtual double own_loss_share(units::Frequency frequency, const OpenTwoPort& port,
                                                Complex capacitor_ohm) const = 0;
    /// Limits of this kind of feed.
    [[nodiscard]] virtual base::Notices notices(units::Frequency frequency) const = 0;
};

} // namespace loopwright::coupling::detail
