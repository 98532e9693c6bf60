#pragma once
// A model that answers what a test tells it to.
#include "survey/detail/run_with.hpp"

#include <functional>
#include <memory>
#include <utility>

namespace loopwright::survey {

using Answer = std::function<loop::OperatingPoint(units::Frequency, units::Power, double)>;

class FakeModel final : public loop::LoopModel {
public:
    explicit FakeModel(Answer answer) : answer_(std::move(answer)) {}
    [[nodiscard]] loop::Model kind() const noexcept override { return loop::Model::closed_form; }
    [[nodiscard]] loop::OperatingPoint at(units::Frequency frequency, units::Power power,
                                          double vswr) const override {
        return answer_(frequency, power, vswr);
    }

private:
    Answer answer_;
};

inline detail::ModelFactory factory(const Answer& answer) {
    return [answer](const design::Design&, loop::Model) { return std::make_unique<FakeModel>(answer); };
}

/// A tuned loop of round numbers: 50 pF, 20 %, 10 kHz wide, 800 V peak; no interval known.
inline loop::OperatingPoint round_point(units::Frequency frequency, units::Power power, double vswr) {
    loop::OperatingPoint point;
    point.frequency = frequency;
    point.power = power;
    point.vswr_limit = vswr;
    loop::Resonance r;
    r.tuning_capacitance = units::picofarads(50);
    r.in_capacitor_range = true;
    r.resistance.radiation = units::ohms(0.02);
    r.resistance.conductor = units::ohms(0.08);
    r.efficiency = 0.2;
    r.q_unloaded = 500;
    r.bandwidth_vswr = units::kilohertz(10);
    r.capacitor_voltage_peak = units::volts(800);
    point.resonance = r;
    return point;
}

} // namespace loopwright::survey
