// Loss of the capacitor with fixed ones added, member by member.
#include "capacitor/capacitor.hpp"

#include "base/error.hpp"
#include "units/constants.hpp"

#include <algorithm>
#include <cmath>

namespace loopwright::capacitor {

/// How the whole is made up.
struct Capacitor::Setting {
    double branch_F = 0; ///< variable capacitor with what is in series with it
    double variable_elastance =
        0;             ///< 1/C of the variable capacitor [1/F]; 0 where it would have to be endless
    double shrink = 1; ///< of what is fixed, where the whole is less than that
};

Capacitor::Setting Capacitor::setting(double whole_F) const {
    Setting s;
    s.branch_F = std::max(0.0, whole_F - parallel_F_);
    if (s.branch_F > 0) {
        s.variable_elastance = std::max(0.0, 1 / s.branch_F - series_elastance_);
    }
    s.shrink = whole_F < parallel_F_ ? whole_F / parallel_F_ : 1.0;
    return s;
}

// A member that carries the share s of the current with the resistance r counts as r s^2 at the terminals.
LossShares Capacitor::shares_with(double whole_F, double frequency_Hz, double class_q) const {
    const Setting s = setting(whole_F);
    const double omega = 2 * units::constants::pi * frequency_Hz;
    const double branch_share = s.branch_F / whole_F;
    const double square = branch_share * branch_share;
    const auto parallel_ohm = [&](double each_F, double q) {
        return each_F * s.shrink / (omega * q * whole_F * whole_F);
    };
    LossShares shares;
    if (spec_.loss.series_resistance) {
        shares.variable = units::ohms(own_series_ohm(frequency_Hz) * square);
    } else {
        const double q = spec_.loss.q.value_or(class_q);
        shares.variable = units::ohms(s.variable_elastance / (omega * q) * square);
        shares.stray = units::ohms(parallel_ohm(spec_.stray.value(), q));
    }
    shares.contact = spec_.contact_resistance * square;
    shares.added.reserve(spec_.added.size());
    for (const FixedCapacitor& each : spec_.added) {
        const double q = each.q.value_or(class_q), each_F = each.capacitance.value();
        shares.added.push_back(units::ohms(
            each.connection == Connection::series ? square / (omega * q * each_F) : parallel_ohm(each_F, q)));
    }
    return shares;
}

LossShares Capacitor::loss_shares(units::Capacitance whole, units::Frequency frequency) const {
    if (!(whole.value() > 0 && frequency.value() > 0) || !std::isfinite(whole.value()) ||
        !std::isfinite(frequency.value())) {
        throw base::ProgramError("loss_shares: capacitance and frequency must be positive");
    }
    return shares_with(whole.value(), frequency.value(), assumed_q);
}

SeriesLoss Capacitor::network_loss(double whole_F, double frequency_Hz) const {
    const auto sum = [&](double class_q) {
        const LossShares shares = shares_with(whole_F, frequency_Hz, class_q);
        units::Resistance loss = shares.variable + shares.stray;
        for (const units::Resistance& each : shares.added) {
            loss += each;
        }
        return SeriesLoss{loss, shares.contact, loss + shares.contact, {}};
    };
    SeriesLoss result = sum(assumed_q);
    result.range = {result.total, result.total};
    if (added_q_missing_ || (!spec_.loss.q && !spec_.loss.series_resistance)) {
        result.range = {sum(assumed_q_range.high).total, sum(assumed_q_range.low).total};
    }
    return result;
}

} // namespace loopwright::capacitor
