#include "loop/detail/tuned_loop.hpp"

#include "units/constants.hpp"

#include <cmath>

namespace loopwright::loop::detail {
namespace {

using Complex = std::complex<double>;
using units::constants::pi;
using units::constants::speed_of_light_m_s;

constexpr Complex j{0, 1};

// sum of f_i f_k* over the conductor per metre, for real weights: uniform 1, mixed mean, charge mean square.
double form(double uniform, double mixed, double charge, const Complex& c0, const Complex& c1) {
    return uniform * std::norm(c0) + 2 * mixed * std::real(c0 * std::conj(c1)) + charge * std::norm(c1);
}

capacitor::SeriesLoss capacitor_loss(const capacitor::Capacitor& capacitor, double omega, double x_ohm,
                                     double frequency_Hz) {
    return capacitor.series_loss(units::farads(1 / (omega * x_ohm)), units::hertz(frequency_Hz));
}

} // namespace

LoopCircuit::Matrix LoopCircuit::loop_matrix(double k, std::complex<double> internal_ohm_m) const {
    const Pair<double> r = series_.radiation_ohm(k);
    const Pair<double> x = series_.reactance_ohm(k);
    const Complex wire =
        series_.length_m * Complex(internal_ohm_m.real() * losses_.proximity_factor, internal_ohm_m.imag()) +
        losses_.joints_ohm;
    return {Complex(r.uniform, x.uniform) + wire, Complex(r.mixed, x.mixed) + series_.mean_shape * wire,
            Complex(r.charge, x.charge) + series_.mean_square_shape * wire};
}

std::complex<double> LoopCircuit::impedance(double frequency_Hz, double capacitance_F) const {
    const double omega = 2 * pi * frequency_Hz;
    const double k = omega / speed_of_light_m_s;
    const double x = 1 / (omega * capacitance_F);
    const Matrix z = loop_matrix(k, losses_.conductor->internal_impedance_ohm_per_m(frequency_Hz));
    const Complex with_capacitor =
        z.uniform + capacitor_loss(capacitor_, omega, x, frequency_Hz).total.value() - j * x;
    return (with_capacitor * z.charge - z.mixed * z.mixed) / (z.charge - 2.0 * z.mixed + with_capacitor);
}

std::optional<TunedLoop> LoopCircuit::tune(double frequency_Hz) const {
    const double omega = 2 * pi * frequency_Hz;
    const double k = omega / speed_of_light_m_s;
    const Complex internal = losses_.conductor->internal_impedance_ohm_per_m(frequency_Hz);
    const Matrix z = loop_matrix(k, internal);
    // Seen at the capacitor; losses shift the resonance opposite it by a little more, found by Newton's rule:
    // an impedance added where the current is c0 counts c0^2.
    double x = std::imag(z.uniform - z.mixed * z.mixed / z.charge);
    TunedLoop tuned;
    capacitor::SeriesLoss loss;
    for (int step = 0; step < 8; ++step) {
        if (!(x > 0)) {
            return std::nullopt;
        }
        loss = capacitor_loss(capacitor_, omega, x, frequency_Hz);
        const Complex with_capacitor = z.uniform + loss.total.value() - j * x;
        const Complex sum = z.charge - 2.0 * z.mixed + with_capacitor;
        tuned.capacitor_current = (z.charge - z.mixed) / sum;
        tuned.charge_current = (with_capacitor - z.mixed) / sum;
        const double left = std::imag((with_capacitor * z.charge - z.mixed * z.mixed) / sum);
        const double slope = std::real(tuned.capacitor_current * tuned.capacitor_current);
        if (std::abs(left) < 1e-12 * x || !(slope > 0)) {
            break;
        }
        x += left / slope;
    }
    if (!(x > 0)) {
        return std::nullopt;
    }
    tuned.capacitor_reactance_ohm = x;
    const Complex& c0 = tuned.capacitor_current;
    const Complex& c1 = tuned.charge_current;
    const Pair<double> r = series_.radiation_ohm(k);
    tuned.radiation_ohm = form(r.uniform, r.mixed, r.charge, c0, c1);
    const double square = form(1, series_.mean_shape, series_.mean_square_shape, c0, c1);
    tuned.conductor_ohm = internal.real() * losses_.proximity_factor * series_.length_m * square;
    tuned.joints_ohm = losses_.joints_ohm * square;
    tuned.capacitor_ohm = loss.total.value() * std::norm(c0);
    tuned.capacitor_low_ohm = loss.range.low.value() * std::norm(c0);
    tuned.capacitor_high_ohm = loss.range.high.value() * std::norm(c0);
    tuned.reactance_slope_ohm_s = reactance_slope(k, tuned);
    return tuned;
}

// The impedance opposite the capacitor is c^T Z c with the currents that solve the circuit, and stationary in
// them: its derivative is c^T (dZ/d omega) c.
double LoopCircuit::reactance_slope(double k, const TunedLoop& tuned) const {
    const double omega = k * speed_of_light_m_s;
    const double frequency_Hz = omega / (2 * pi);
    const double step = 1e-3;
    const double ahead = losses_.conductor->internal_impedance_ohm_per_m(frequency_Hz * (1 + step)).imag();
    const double behind = losses_.conductor->internal_impedance_ohm_per_m(frequency_Hz * (1 - step)).imag();
    const Complex wire = j * (series_.length_m * (ahead - behind) / (2 * step * omega));
    const Pair<double> r = series_.radiation_slope(k);
    const Pair<double> x = series_.reactance_slope(k);
    const auto slope = [&](double dr, double dx) { return Complex(dr, dx) / speed_of_light_m_s; };
    const Complex& c0 = tuned.capacitor_current;
    const Complex& c1 = tuned.charge_current;
    const Complex capacitor = j * (tuned.capacitor_reactance_ohm / omega);
    const Complex sum = c0 * c0 * (slope(r.uniform, x.uniform) + wire + capacitor) +
                        2.0 * c0 * c1 * (slope(r.mixed, x.mixed) + series_.mean_shape * wire) +
                        c1 * c1 * (slope(r.charge, x.charge) + series_.mean_square_shape * wire);
    return std::imag(sum);
}

} // namespace loopwright::loop::detail
