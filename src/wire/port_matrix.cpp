#include "wire/port_matrix.hpp"

#include "base/error.hpp"

#include <cmath>

namespace loopwright::wire {

using Complex = std::complex<double>;

PortMatrix PortMatrix::terminated(std::size_t p, Complex load) const {
    PortMatrix rest{ports - 1, {}};
    const Complex across = at(p, p) + load;
    for (std::size_t i = 0; i < ports; ++i) {
        for (std::size_t k = 0; k < ports; ++k) {
            if (i != p && k != p) {
                rest.y.push_back(at(i, k) - at(i, p) * at(p, k) / across);
            }
        }
    }
    return rest;
}

Complex PortMatrix::terminated_voltage(const std::vector<Complex>& port_V, std::size_t p,
                                       Complex load) const {
    Complex current = 0;
    for (std::size_t k = 0; k < ports; ++k) {
        if (k != p) {
            current += at(p, k) * port_V.at(k);
        }
    }
    return -current / (at(p, p) + load);
}

TwoPort two_port(const PortMatrix& matrix) {
    if (matrix.ports != 2) {
        throw base::ProgramError("two ports are needed");
    }
    return {matrix.at(0, 0), matrix.at(0, 1), matrix.at(1, 1)};
}

Complex TwoPort::input_impedance(Complex load) const {
    const Complex u = y22 + load;
    return u / (y11 * u - y12 * y12);
}

Complex TwoPort::second_voltage(Complex first_V, Complex load) const {
    return -y12 * first_V / (y22 + load);
}

namespace {

// Susceptance b of u = g + jb with Im[u / (y11 u - d)] = 0, d = y12^2: -B11 (g^2 + b^2) - b Re d + g Im d =
// 0, the root near b = 0.
std::optional<double> resonant_susceptance(const TwoPort& port, double g) {
    const Complex d = port.y12 * port.y12;
    const double a = port.y11.imag();
    const double c = a * g * g - g * d.imag();
    const double root = d.real() * d.real() - 4 * a * c;
    if (!(root >= 0) || d.real() == 0) {
        return std::nullopt;
    }
    return -2 * c / (d.real() + std::copysign(std::sqrt(root), d.real()));
}

} // namespace

std::optional<double> resonating_capacitance_F(const TwoPort& port, double omega_rad_s,
                                               const std::function<Complex(double)>& load_S) {
    double capacitance = -port.y22.imag() / omega_rad_s;
    for (int step = 0; step < 50; ++step) {
        if (!(capacitance > 0)) {
            return std::nullopt;
        }
        const Complex load = load_S(capacitance);
        const auto wanted = resonant_susceptance(port, port.y22.real() + load.real());
        if (!wanted) {
            return std::nullopt;
        }
        // The load's own susceptance is close to omega C; correct C by what is missing.
        const double next = capacitance + (*wanted - port.y22.imag() - load.imag()) / omega_rad_s;
        const bool settled = std::abs(next - capacitance) <= 1e-14 * capacitance;
        capacitance = next;
        if (settled) {
            break;
        }
    }
    return capacitance;
}

} // namespace loopwright::wire
