#pragma once
// The quantities that cross public boundaries, all SI, as Boost.Units types. Keep this header light: it is
// included everywhere.
#include <boost/units/quantity.hpp>
#include <boost/units/systems/si/area.hpp>
#include <boost/units/systems/si/base.hpp>
#include <boost/units/systems/si/capacitance.hpp>
#include <boost/units/systems/si/conductivity.hpp>
#include <boost/units/systems/si/current.hpp>
#include <boost/units/systems/si/dimensionless.hpp>
#include <boost/units/systems/si/electric_potential.hpp>
#include <boost/units/systems/si/frequency.hpp>
#include <boost/units/systems/si/inductance.hpp>
#include <boost/units/systems/si/length.hpp>
#include <boost/units/systems/si/plane_angle.hpp>
#include <boost/units/systems/si/power.hpp>
#include <boost/units/systems/si/resistance.hpp>
#include <boost/units/systems/si/temperature.hpp>
#include <boost/units/systems/si/time.hpp>
#include <complex>

namespace loopwright::units {

namespace bu = boost::units;
namespace si = boost::units::si;

using Length = bu::quantity<si::length>;
using Area = bu::quantity<si::area>;
using Frequency = bu::quantity<si::frequency>; ///< cycles a second, never radians
using Time = bu::quantity<si::time>;
using Angle = bu::quantity<si::plane_angle>; ///< radians
using Resistance = bu::quantity<si::resistance>;
using Impedance = bu::quantity<si::resistance, std::complex<double>>;
using Capacitance = bu::quantity<si::capacitance>;
using Inductance = bu::quantity<si::inductance>;
using Voltage = bu::quantity<si::electric_potential>; ///< the name says rms or peak
using Current = bu::quantity<si::current>;            ///< rms unless the name says peak
using Power = bu::quantity<si::power>;
using Conductivity = bu::quantity<si::conductivity>;
using Temperature = bu::quantity<si::temperature>; ///< absolute, kelvin

using ResistancePerLength = bu::quantity<bu::divide_typeof_helper<si::resistance, si::length>::type>;
using ImpedancePerLength =
    bu::quantity<bu::divide_typeof_helper<si::resistance, si::length>::type, std::complex<double>>;
using InductancePerLength = bu::quantity<bu::divide_typeof_helper<si::inductance, si::length>::type>;
using ElectricField = bu::quantity<bu::divide_typeof_helper<si::electric_potential, si::length>::type>;
using MagneticField = bu::quantity<bu::divide_typeof_helper<si::current, si::length>::type>;
using PerKelvin = bu::quantity<bu::divide_typeof_helper<si::dimensionless, si::temperature>::type>;

/// A level or ratio in decibels. reference: what 0 dB is ("dBi": isotropic); plain dB for ratios of power.
struct Decibel {
    double value = 0;
    auto operator<=>(const Decibel&) const = default;
};

/// Loss of a line [dB/m].
struct DecibelPerMetre {
    double dB_per_m = 0;
    [[nodiscard]] double value() const noexcept { return dB_per_m; }
    [[nodiscard]] static DecibelPerMetre from_value(double v) noexcept { return {v}; }
    auto operator<=>(const DecibelPerMetre&) const = default;
};

// Short makers, for code and tests: metres(0.9), megahertz(7.074). Quantities from bare doubles stay
// explicit.
inline Length metres(double v) {
    return v * si::meter;
}
inline Length millimetres(double v) {
    return v / 1e3 * si::meter;
}
inline Area square_metres(double v) {
    return v * si::square_meter;
}
inline Frequency hertz(double v) {
    return v * si::hertz;
}
inline Frequency kilohertz(double v) {
    return v * 1e3 * si::hertz;
}
inline Frequency megahertz(double v) {
    return v * 1e6 * si::hertz;
}
inline Time seconds(double v) {
    return v * si::second;
}
inline Angle radians(double v) {
    return v * si::radian;
}
inline Angle degrees(double v) {
    return v * 0.017453292519943295 * si::radian;
}
inline Resistance ohms(double v) {
    return v * si::ohm;
}
inline Capacitance farads(double v) {
    return v * si::farad;
}
inline Capacitance picofarads(double v) {
    return v / 1e12 * si::farad;
}
inline Inductance henries(double v) {
    return v * si::henry;
}
inline Voltage volts(double v) {
    return v * si::volt;
}
inline Current amperes(double v) {
    return v * si::ampere;
}
inline Power watts(double v) {
    return v * si::watt;
}
inline Conductivity siemens_per_metre(double v) {
    return Conductivity::from_value(v);
}
inline Temperature kelvin(double v) {
    return v * si::kelvin;
}
inline Temperature degrees_celsius(double v) {
    return (v + 273.15) * si::kelvin;
}
inline PerKelvin per_kelvin(double v) {
    return PerKelvin::from_value(v);
}
inline ResistancePerLength ohms_per_metre(double v) {
    return ResistancePerLength::from_value(v);
}

/// Two ends of an interval that the true value is expected in (the source of the interval says how surely).
template <class Quantity>
struct Interval {
    Quantity low{};
    Quantity high{};
    bool operator==(const Interval&) const = default;
};

} // namespace loopwright::units
