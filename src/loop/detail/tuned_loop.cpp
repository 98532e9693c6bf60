#include "loop/detail/tuned_loop.hpp"

#include "units/constants.hpp"

#include <cmath>

namespace loopwright::loop::detail {
namespace {

using Complex = std::complex<double>;
using units::constants::pi;
using units::constants::speed_of_light_m_s;

constexpr Complex j{0, 1};

// Quotient without the library's care for infinities, which costs more than all the rest.
Complex over(const Complex& a, const Complex& b) {
    const double scale = 1 / std::norm(b);
    return {(a.real() * b.real() + a.imag() * b.imag()) * scale,
            (a.imag() * b.real() - a.real() * b.imag()) * scale};
}

// sum over i and k of m_ik c_i c_k*, real.
double power_form(const Symmetric<double>& m, const CurrentVector& c) {
    double sum = 0;
    for (std::size_t i = 0; i < currents; ++i) {
        for (std::size_t k = i; k < currents; ++k) {
            sum += (i == k ? 1.0 : 2.0) * m[entry(i, k)] * std::real(c[i] * std::conj(c[k]));
        }
    }
    return sum;
}

// Currents for 1 A opposite the capacitor, driven there, and the impedance found there.
struct Driven {
    CurrentVector currents{};
    Complex impedance;
};

// Solves Z c = V (1, 1, 0) for c0 + c1 = 1. The last current is eliminated first: nothing drives it.
Driven drive_opposite(const Symmetric<Complex>& z) {
    const Complex a = over(z[entry(0, 2)], z[entry(2, 2)]);
    const Complex b = over(z[entry(1, 2)], z[entry(2, 2)]);
    const Complex z00 = z[entry(0, 0)] - a * z[entry(0, 2)];
    const Complex z01 = z[entry(0, 1)] - a * z[entry(1, 2)];
    const Complex z11 = z[entry(1, 1)] - b * z[entry(1, 2)];
    const Complex sum = z11 - 2.0 * z01 + z00;
    Driven driven;
    driven.currents[0] = over(z11 - z01, sum);
    driven.currents[1] = over(z00 - z01, sum);
    driven.currents[2] = -a * driven.currents[0] - b * driven.currents[1];
    driven.impedance = over(z00 * z11 - z01 * z01, sum);
    return driven;
}

// Reactance of the loop at the capacitor's place.
double reactance_at_gap(const Symmetric<Complex>& z) {
    const Complex a = over(z[entry(0, 2)], z[entry(2, 2)]);
    const Complex b = over(z[entry(1, 2)], z[entry(2, 2)]);
    const Complex z01 = z[entry(0, 1)] - a * z[entry(1, 2)];
    return std::imag(z[entry(0, 0)] - a * z[entry(0, 2)] -
                     over(z01 * z01, z[entry(1, 1)] - b * z[entry(1, 2)]));
}

capacitor::SeriesLoss capacitor_loss(const capacitor::Capacitor& capacitor, double omega, double x_ohm,
                                     double frequency_Hz) {
    return capacitor.series_loss(units::farads(1 / (omega * x_ohm)), units::hertz(frequency_Hz));
}

} // namespace

// The conductor's impedance per metre, neighbouring turns included.
std::complex<double> LoopCircuit::wire_ohm_m(double frequency_Hz) const {
    const Complex straight = losses_.conductor->internal_impedance_ohm_per_m(frequency_Hz);
    return {straight.real() * losses_.factor(frequency_Hz), straight.imag()};
}

LoopCircuit::Matrix LoopCircuit::loop_matrix(double k, const Symmetric<double>& r,
                                             const std::complex<double>& wire_ohm_m) const {
    const Symmetric<double> x = series_.reactance_ohm(k);
    const Complex wire = series_.length_m * wire_ohm_m + losses_.joints_ohm;
    Matrix z;
    for (std::size_t e = 0; e < z.size(); ++e) {
        z[e] = Complex(r[e], x[e]) + series_.mean[e] * wire;
    }
    return z;
}

std::complex<double> LoopCircuit::impedance(double frequency_Hz, double capacitance_F) const {
    const double omega = 2 * pi * frequency_Hz;
    const double x = 1 / (omega * capacitance_F);
    const double k = omega / speed_of_light_m_s;
    Matrix z = loop_matrix(k, series_.radiation_ohm(k), wire_ohm_m(frequency_Hz));
    z[0] += capacitor_loss(capacitor_, omega, x, frequency_Hz).total.value() - j * x;
    return drive_opposite(z).impedance;
}

std::optional<TunedLoop> LoopCircuit::tune(double frequency_Hz) const {
    const double omega = 2 * pi * frequency_Hz;
    const double k = omega / speed_of_light_m_s;
    const Complex internal = wire_ohm_m(frequency_Hz);
    const Symmetric<double> radiation = series_.radiation_ohm(k);
    const Matrix z = loop_matrix(k, radiation, internal);
    // Seen at the capacitor; losses shift the resonance opposite it by a little more, found by Newton's rule:
    // an impedance added where the current is c0 counts c0^2.
    double x = reactance_at_gap(z);
    TunedLoop tuned;
    capacitor::SeriesLoss loss;
    for (int step = 0; step < 8; ++step) {
        if (!(x > 0)) {
            return std::nullopt;
        }
        loss = capacitor_loss(capacitor_, omega, x, frequency_Hz);
        Matrix with_capacitor = z;
        with_capacitor[0] += loss.total.value() - j * x;
        const Driven driven = drive_opposite(with_capacitor);
        tuned.currents = driven.currents;
        const double slope = std::real(tuned.currents[0] * tuned.currents[0]);
        if (std::abs(driven.impedance.imag()) < 1e-12 * x || !(slope > 0)) {
            break;
        }
        x += driven.impedance.imag() / slope;
    }
    if (!(x > 0)) {
        return std::nullopt;
    }
    tuned.capacitor_reactance_ohm = x;
    tuned.radiation_ohm = power_form(radiation, tuned.currents);
    const double square = power_form(series_.mean, tuned.currents);
    tuned.conductor_ohm = internal.real() * series_.length_m * square;
    tuned.joints_ohm = losses_.joints_ohm * square;
    const double at_capacitor = std::norm(tuned.currents[0]);
    tuned.capacitor_ohm = loss.total.value() * at_capacitor;
    tuned.capacitor_low_ohm = loss.range.low.value() * at_capacitor;
    tuned.capacitor_high_ohm = loss.range.high.value() * at_capacitor;
    tuned.internal_reactance_ohm_m = internal.imag();
    tuned.reactance_slope_ohm_s = reactance_slope(k, tuned, internal);
    return tuned;
}

// d/d omega of the conductor's internal reactance per metre. With a thin skin it goes with the root of the
// frequency; the internal part is about a thousandth of the whole slope.
double LoopCircuit::internal_slope_ohm_s_m(double omega, const std::complex<double>& internal) const {
    const double frequency_Hz = omega / (2 * pi);
    if (losses_.conductor->radius_over_skin_depth(frequency_Hz) > 30) {
        return internal.imag() / (2 * omega);
    }
    const double step = 1e-3;
    const double ahead = losses_.conductor->internal_impedance_ohm_per_m(frequency_Hz * (1 + step)).imag();
    const double behind = losses_.conductor->internal_impedance_ohm_per_m(frequency_Hz * (1 - step)).imag();
    return (ahead - behind) / (2 * step * omega);
}

// The impedance opposite the capacitor is c^T Z c with the currents that solve the circuit, and stationary in
// them: its derivative is c^T (dZ/d omega) c.
double LoopCircuit::reactance_slope(double k, const TunedLoop& tuned,
                                    const std::complex<double>& internal) const {
    const double omega = k * speed_of_light_m_s;
    const double wire = series_.length_m * internal_slope_ohm_s_m(omega, internal);
    const Symmetric<double> r = series_.radiation_slope(k);
    const Symmetric<double> x = series_.reactance_slope(k);
    const CurrentVector& c = tuned.currents;
    Complex sum = c[0] * c[0] * j * (tuned.capacitor_reactance_ohm / omega);
    for (std::size_t i = 0; i < currents; ++i) {
        for (std::size_t n = i; n < currents; ++n) {
            const std::size_t e = entry(i, n);
            const Complex slope = Complex(r[e], x[e]) / speed_of_light_m_s + j * (series_.mean[e] * wire);
            sum += (i == n ? 1.0 : 2.0) * slope * c[i] * c[n];
        }
    }
    return std::imag(sum);
}

} // namespace loopwright::loop::detail
