#include "loop/detail/far_direction.hpp"

#include "loop/detail/array_kernels.hpp"

#include <cmath>

namespace loopwright::loop::detail {

using geometry::cross;
using geometry::Vector3;

FarDirection::FarDirection(const Vector3& direction, const Nodes& nodes) : direction_(unit(direction)) {
    const Vector3 helper = std::abs(direction_.z) < 0.999 ? Vector3{0, 0, 1} : Vector3{1, 0, 0};
    const Vector3 across = unit(cross(helper, direction_));
    const Vector3 up = cross(direction_, across);
    const double towards[] = {direction_.x, direction_.y, direction_.z};
    const double one[] = {up.x, up.y, up.z};
    const double other[] = {across.x, across.y, across.z};
    sum_direction(nodes.columns.data(), nodes.size(), towards, one, other, terms, moments_.data());
    // A closed path has no uniform moment of order 0.
    moments_[0] = moments_[terms * currents] = 0;
}

double FarDirection::power(double k, const CurrentVector& coefficients) const noexcept {
    double sum = 0;
    for (const std::size_t polarisation : {std::size_t{0}, terms * currents}) {
        double re = 0;
        double im = 0;
        // sum over m of (j k)^m times the moments' sum over the currents, by Horner's rule.
        for (std::size_t m = terms; m-- > 0;) {
            double term_re = 0;
            double term_im = 0;
            for (std::size_t i = 0; i < currents; ++i) {
                const double moment = moments_[polarisation + m * currents + i];
                term_re += moment * coefficients[i].real();
                term_im += moment * coefficients[i].imag();
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
