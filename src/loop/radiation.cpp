#include "loop/radiation.hpp"

#include "base/error.hpp"
#include "units/constants.hpp"

#include <boost/math/quadrature/gauss.hpp>
#include <boost/math/quadrature/gauss_kronrod.hpp>
#include <boost/math/special_functions/bessel.hpp>
#include <cmath>
#include <complex>

namespace loopwright::loop {
namespace {

using units::constants::free_space_impedance_ohm;
using units::constants::pi;
using units::constants::speed_of_light_m_s;

double wave_number(units::Frequency frequency) {
    if (!(frequency.value() > 0)) {
        throw base::ProgramError("radiation: a frequency above 0");
    }
    return 2 * pi * frequency.value() / speed_of_light_m_s;
}

struct Element {
    geometry::Vector3 point, current;
};

// Gauss points along the path: ten to every part of at most a quarter of a turn or half a wavelength.
std::vector<Element> elements_of(const geometry::WirePath& path, double k) {
    using Rule = boost::math::quadrature::gauss<double, 10>;
    std::vector<Element> elements;
    for (const geometry::Piece& piece : path.pieces()) {
        const double parts =
            std::ceil(std::max(std::abs(piece.turning_angle()) / 1.6, k * piece.length_m() / 3.2));
        const int count = std::max(1, static_cast<int>(parts));
        for (int part = 0; part < count; ++part) {
            for (std::size_t i = 0; i < Rule::abscissa().size(); ++i) {
                for (const double side : {-1.0, 1.0}) {
                    const double share = (part + 0.5 + 0.5 * side * Rule::abscissa()[i]) / count;
                    const double weight = 0.5 * Rule::weights()[i] * piece.length_m() / count;
                    elements.push_back({piece.point(share), weight * piece.tangent(share)});
                }
            }
        }
    }
    return elements;
}

} // namespace

units::Resistance small_loop_radiation(units::Area turn_area, units::Frequency frequency) {
    const double k = wave_number(frequency);
    const double moment = k * k * turn_area.value();
    return units::ohms(free_space_impedance_ohm / (6 * pi) * moment * moment);
}

units::Resistance rings_radiation(const std::vector<Ring>& rings, units::Frequency frequency) {
    const double k = wave_number(frequency);
    const auto integrand = [&](double t) {
        std::complex<double> field;
        for (const Ring& ring : rings) {
            const double a = ring.radius.value();
            field += a * boost::math::cyl_bessel_j(1, k * a * std::sin(t)) *
                     std::polar(1.0, k * ring.position.value() * std::cos(t));
        }
        return std::norm(field) * std::sin(t);
    };
    using Rule = boost::math::quadrature::gauss_kronrod<double, 61>;
    const double integral = 2 * Rule::integrate(integrand, 0.0, pi / 2, 10, 1e-12);
    return units::ohms(free_space_impedance_ohm * pi / 2 * k * k * integral);
}

units::Resistance uniform_radiation(const geometry::WirePath& path, units::Frequency frequency) {
    const double k = wave_number(frequency);
    const std::vector<Element> elements = elements_of(path, k);
    double sum = 0;
    for (const Element& p : elements) {
        for (const Element& q : elements) {
            const double distance = geometry::norm(p.point - q.point);
            // sin(x)/x - 1, whose constant counts for nothing round a closed path: no digits are lost.
            const double x = k * distance;
            const double less =
                x < 0.5
                    ? x * x *
                          (-1.0 / 6 +
                           x * x *
                               (1.0 / 120 - x * x * (1.0 / 5040 - x * x * (1.0 / 362880 - x * x / 39916800))))
                    : std::sin(x) / x - 1;
            sum += less * geometry::dot(p.current, q.current);
        }
    }
    return units::ohms(free_space_impedance_ohm * k * k / (4 * pi) * sum);
}

} // namespace loopwright::loop
