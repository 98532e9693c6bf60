#include "ui/chart_made_survey.hpp"

#include "models/survey_charts.hpp"

#include <cmath>
#include <numbers>

namespace loopwright::test {

namespace {

loop::Resonance made_resonance(double hertz, const design::Design& design, const MadeOptions& options) {
    loop::Resonance r;
    const double x = options.scale * std::pow(hertz / 14e6, 3.5);
    const double omega = 2.0 * std::numbers::pi * hertz;
    r.inductance = units::henries(2.6e-6);
    r.tuning_capacitance = units::farads(1.0 / (omega * omega * 2.6e-6) - 5e-12);
    r.in_capacitor_range = r.tuning_capacitance >= design.capacitor.minimum.value &&
                           r.tuning_capacitance <= design.capacitor.maximum.value;
    r.resistance.radiation = units::ohms(x * 0.1);
    r.resistance.conductor = units::ohms(0.06);
    r.resistance.joints = units::ohms(options.joints ? 0.01 : 0.0);
    r.resistance.capacitor = units::ohms(options.joints ? 0.03 : 0.04);
    r.efficiency = x / (1.0 + x);
    r.gain_max = units::Decibel{10.0 * std::log10(1.5 * r.efficiency)};
    r.gain_low_angle = units::Decibel{r.gain_max->value - 1.0};
    r.q_unloaded = 300.0 * std::sqrt(hertz / 10e6);
    r.bandwidth_half_power = units::hertz(hertz / r.q_loaded());
    r.bandwidth_vswr = units::hertz(hertz / r.q_unloaded * std::numbers::sqrt2 / 2.0);
    r.loop_current_rms = units::amperes(3);
    r.capacitor_voltage_peak = units::volts(1500.0 * options.scale * std::sqrt(hertz / 10e6));
    r.capacitor_voltage_rms = r.capacitor_voltage_peak / std::numbers::sqrt2;
    return r;
}

loop::OperatingPoint made_point(double hertz, const design::Design& design, const MadeOptions& options) {
    loop::OperatingPoint point;
    point.frequency = units::hertz(hertz);
    point.power = units::watts(5);
    if (hertz <= made_limit_Hz) {
        point.resonance = made_resonance(hertz, design, options);
    } else {
        point.notices.add({"perimeter_beyond_range", base::Severity::not_established,
                           "The conductor is longer than 0.35 wavelengths.", 0.4});
    }
    return point;
}

} // namespace

std::shared_ptr<const survey::Survey> made_survey(const MadeOptions& options) {
    auto survey = std::make_shared<survey::Survey>();
    design::Design& design = survey->request.design;
    design.title = "Made loop";
    design.station.bands = {"40m", "20m", "6m"};
    design.capacitor.minimum = units::picofarads(10);
    design.capacitor.maximum = units::picofarads(300);
    if (options.rating_V > 0) {
        design.capacitor.rating.peak_voltage = units::volts(options.rating_V);
    }
    survey->request.points = options.points;
    for (int i = 0; i < options.points; ++i) {
        const double share = static_cast<double>(i) / (options.points - 1);
        survey->curve.push_back(made_point(1.8e6 * std::pow(30.0, share), design, options));
    }
    const auto add_band = [&](const char* name, double low, double high, double usual,
                              survey::BandVerdict verdict, const char* text) {
        survey->bands.push_back(
            {{name, units::hertz(low), units::hertz(high), units::hertz(usual), {}, {}, {}},
             made_point(usual + 1500.0, design, options),
             verdict,
             text,
             {}});
    };
    add_band("40m", 7.0e6, 7.2e6, 7.074e6, survey::BandVerdict::worthwhile, "Radiates 8.4 % of the power");
    add_band("20m", 14.0e6, 14.35e6, 14.074e6, survey::BandVerdict::voltage_exceeded,
             "1.78 kV peak, rated 1.7 kV");
    add_band("6m", 50e6, 52e6, 50.313e6, survey::BandVerdict::not_established,
             "Not established: the conductor is longer than 0.35 wavelengths");
    survey->complete = true;
    return survey;
}

models::Charts made_charts(const MadeOptions& options) {
    return std::make_shared<const std::vector<models::ChartContent>>(
        models::survey_charts(*made_survey(options)));
}

} // namespace loopwright::test
