#pragma once
#include <complex>

namespace loopwright::ground {

/// The imaginary unit; time goes as exp(+j omega t).
inline constexpr std::complex<double> j{0.0, 1.0};

} // namespace loopwright::ground
