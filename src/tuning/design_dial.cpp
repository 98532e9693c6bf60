#include "tuning/design_dial.hpp"

#include "band/band.hpp"
#include "design/on_band.hpp"
#include "tuning/dial_law.hpp"
#include "units/text.hpp"

#include <algorithm>
#include <cmath>
#include <string>
#include <utility>

namespace loopwright::tuning {
namespace {

bool planned(const design::Design& design, const band::Band& band) {
    const auto& names = design.station.bands;
    return names.empty() || std::find(names.begin(), names.end(), band.name) != names.end();
}

/// The band a frequency belongs to, up to a tenth outside of it; empty: none.
std::string band_near(int region, units::Frequency frequency) {
    constexpr double widest = 1.1;
    std::string nearest;
    double least = widest;
    for (const band::Band& band : band::bands_of(region)) {
        const double below = (band.low / frequency).value();
        const double above = (frequency / band.high).value();
        const double ratio = std::max({below, above, 1.0});
        if (ratio < least) {
            least = ratio;
            nearest = band.name;
        }
    }
    return nearest;
}

FixedCapacitor fixed_of(const design::AddedCapacitor& added, int region, std::size_t number) {
    FixedCapacitor fixed;
    fixed.capacitance = added.capacitance.value;
    fixed.in_series = added.connection == design::AddedConnection::series;
    fixed.name = "Fixed capacitor " + std::to_string(number) + ", " + units::shown(fixed.capacitance) +
                 (fixed.in_series ? " in series" : " in parallel");
    if (!added.bands.empty()) {
        fixed.in_use = [added, region](units::Frequency frequency) {
            return design::is_there(added, band_near(region, frequency));
        };
    }
    return fixed;
}

HardwarePrior prior_of(const design::Capacitor& capacitor, const DialCurve& dial) {
    HardwarePrior prior;
    constexpr double usual_pF = 3;
    prior.stray = std::max(units::picofarads(usual_pF), units::Capacitance(capacitor.stray.value / 3.0));
    const double travel = std::abs(dial.at_maximum() - dial.at_minimum());
    constexpr double least_error = 0.0005;
    prior.reading_error = std::max(least_error, std::hypot(dial.finest_step(), dial.backlash()) / 2 / travel);
    if (dial.dial().law == design::DialLaw::table) {
        prior.law = 0.005;
    }
    if (capacitor.made) {
        prior.capacitor = 0.10;
    }
    return prior;
}

} // namespace

Hardware hardware_of(const design::Design& design, std::shared_ptr<const TuningCurve> curve) {
    const design::Capacitor& capacitor = design.capacitor;
    const DialCurve dial(capacitor);
    Hardware hardware;
    hardware.frequencies = curve->range();
    hardware.needed = [curve = std::move(curve)](units::Frequency f) { return curve->needed(f); };
    hardware.reading = [dial](units::Capacitance variable) { return dial.continued_reading(variable); };
    hardware.stray = capacitor.stray.value;
    for (const design::AddedCapacitor& added : capacitor.added) {
        hardware.fixed.push_back(fixed_of(added, design.station.region, hardware.fixed.size() + 1));
    }
    hardware.first_stop = dial.at_minimum();
    hardware.last_stop = dial.at_maximum();
    hardware.prior = prior_of(capacitor, dial);
    return hardware;
}

std::shared_ptr<const TuningCurve> design_curve(const design::Design& design) {
    const auto model = loop::make_model(design, loop::Model::full_wave);
    return std::make_shared<const TuningCurve>(*model, dial_frequencies(design));
}

CalibratedDial calibrated_dial(const design::Design& design, std::shared_ptr<const TuningCurve> curve) {
    return calibrate(hardware_of(design, std::move(curve)), design.calibration
                                                                ? design.calibration->points
                                                                : std::vector<design::CalibrationPoint>{});
}

CalibratedDial calibrated_dial(const design::Design& design) {
    return calibrated_dial(design, design_curve(design));
}

std::vector<units::Frequency> measurable(const design::Design& design) {
    constexpr int steps = 4;
    std::vector<units::Frequency> frequencies;
    for (const band::Band& band : band::bands_of(design.station.region)) {
        if (planned(design, band)) {
            for (int i = 0; i <= steps; ++i) {
                frequencies.push_back(band.low + (band.high - band.low) * (static_cast<double>(i) / steps));
            }
        }
    }
    return frequencies;
}

} // namespace loopwright::tuning
