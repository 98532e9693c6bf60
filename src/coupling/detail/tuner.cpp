#include "coupling/detail/tuner.hpp"

#include "units/constants.hpp"

#include <boost/math/tools/minima.hpp>

#include <algorithm>

namespace loopwright::coupling::detail {

Complex Tuner::capacitor_ohm(double capacitance_F, double frequency_Hz, double tuned_Hz) const {
    const capacitor::Capacitor& capacitor = capacitors.at(units::hertz(tuned_Hz));
    const double loss =
        capacitor.series_loss(units::farads(capacitance_F), units::hertz(frequency_Hz)).total.value();
    return {loss, -1 / (2 * units::constants::pi * frequency_Hz * capacitance_F)};
}

// The coupling's own reactance shifts the best setting by a few widths: look widely, then closely.
double Tuner::best_F(const OpenTwoPort& port, double frequency_Hz, const loop::Resonance& own) const {
    const double own_F = own.tuning_capacitance.value();
    const double step_F = own_F / own.q_unloaded; // about half the unloaded width
    const auto at = [&](double steps) { return reflected_power(port, own_F + steps * step_F, frequency_Hz); };
    const double reach = std::min(30.0, 0.5 * own.q_unloaded);
    constexpr int looks = 300;
    double best = 0;
    double least = at(best);
    for (int i = 0; i <= looks; ++i) {
        const double steps = reach * (2.0 * i / looks - 1);
        if (const double now = at(steps); now < least) {
            best = steps;
            least = now;
        }
    }
    const double step = 2 * reach / looks;
    const double steps = boost::math::tools::brent_find_minima(at, best - step, best + step, 30).first;
    return own_F + steps * step_F;
}

} // namespace loopwright::coupling::detail
