#include "loop/detail/far_direction.hpp"

#include <cmath>

namespace loopwright::loop::detail {

using geometry::cross;
using geometry::dot;
using geometry::Vector3;

FarDirection::FarDirection(const Vector3& direction, const Vector3& centre, const Nodes& nodes)
    : direction_(unit(direction)) {
    const Vector3 helper = std::abs(direction_.z) < 0.999 ? Vector3{0, 0, 1} : Vector3{1, 0, 0};
    const Vector3 across = unit(cross(helper, direction_));
    const Vector3 up = cross(direction_, across);
    for (std::size_t n = 0; n < nodes.point.size(); ++n) {
        const double along = dot(direction_, nodes.point[n] - centre);
        std::array<double, 2> part{dot(nodes.current[n], up), dot(nodes.current[n], across)};
        for (std::size_t m = 0; m < terms; ++m) {
            for (std::size_t p = 0; p < 2; ++p) {
                for (std::size_t i = 0; i < currents; ++i) {
                    moments_[p][m][i] += part[p] * nodes.shape[i][n];
                }
                part[p] *= along / double(m + 1);
            }
        }
    }
    // A closed path has no uniform moment of order 0.
    moments_[0][0][0] = moments_[1][0][0] = 0;
}

double FarDirection::power(double k, const CurrentVector& coefficients) const noexcept {
    double sum = 0;
    for (const auto& polarisation : moments_) {
        double re = 0;
        double im = 0;
        // sum over m of (j k)^m times the moments' sum over the currents, by Horner's rule.
        for (std::size_t m = terms; m-- > 0;) {
            double term_re = 0;
            double term_im = 0;
            for (std::size_t i = 0; i < currents; ++i) {
                term_re += polarisation[m][i] * coefficients[i].real();
                term_im += polarisation[m][i] * coefficients[i].imag();
            }
            const double next = term_re - k * im;
            im = term_im + k * re;
            re = next;
        }
        sum += re * re + im * im;
    }
    return sum;
}

} // namespace loopwright::loop::detail
