#pragma once
// The pieces of explain.cpp that belong to one topic each.
#include "conductor/conductor.hpp"
#include "geometry/winding.hpp"
#include "loop/explain.hpp"

namespace loopwright::loop::detail {

/// What explanations need of a point, gathered once.
struct Facts {
    const design::Design& design;
    const OperatingPoint& point;
    const Resonance& resonance;
    units::UnitSystem system;
    geometry::Winding winding;
    conductor::Conductor conductor;
    double length_m = 0; ///< of the conductor
    double omega = 0;
    bool closed_form = true;

    template <class Quantity>
    [[nodiscard]] std::string show(Quantity quantity, int digits = 4) const {
        return units::shown(quantity, digits, system);
    }
    [[nodiscard]] std::string plain(double value, int digits = 4) const {
        return units::shown(value, units::Dimension::number, digits, system);
    }
};

[[nodiscard]] Explanation explain_inductance(const Facts& facts);
[[nodiscard]] Explanation explain_capacitance(const Facts& facts);
[[nodiscard]] Explanation explain_radiation(const Facts& facts);
[[nodiscard]] Explanation explain_ground(const Facts& facts);
[[nodiscard]] Explanation explain_conductor(const Facts& facts);
[[nodiscard]] Explanation explain_joints(const Facts& facts);
[[nodiscard]] Explanation explain_capacitor(const Facts& facts);

} // namespace loopwright::loop::detail
