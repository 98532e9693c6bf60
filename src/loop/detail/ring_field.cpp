#include "loop/detail/ring_field.hpp"

#include "units/constants.hpp"

#include <cmath>

namespace loopwright::loop::detail {
namespace {

using units::constants::pi;

constexpr std::size_t terms = FarDirection::terms;

// B_{p,n}, p and n up to `terms`, both even or both odd.
using CosinePowers = std::array<std::array<double, terms + 1>, terms + 1>;

constexpr CosinePowers cosine_powers() {
    CosinePowers b{};
    b[0][0] = 2 * pi;
    for (std::size_t p = 1; p <= terms; ++p) {
        for (std::size_t n = p % 2; n <= p; n += 2) {
            // cos t times cos(n t): half of each neighbour.
            const double below = n > 0 ? b[p - 1][n - 1] : b[p - 1][1];
            const double above = n < p ? b[p - 1][n + 1] : 0.0;
            b[p][n] = 0.5 * (below + above);
        }
    }
    return b;
}

constexpr CosinePowers cosine_power = cosine_powers();

// cos n psi and sin n psi.
struct Turned {
    std::array<double, terms + 1> cosine, sine;
    Turned(double cosine_1, double sine_1) noexcept {
        cosine[0] = 1;
        sine[0] = 0;
        for (std::size_t n = 1; n <= terms; ++n) {
            cosine[n] = cosine[n - 1] * cosine_1 - sine[n - 1] * sine_1;
            sine[n] = sine[n - 1] * cosine_1 + cosine[n - 1] * sine_1;
        }
    }
};

} // namespace

FarDirection ring_direction(const geometry::Vector3& direction, double radius_m,
                            const RingWaves& waves) noexcept {
    const geometry::Vector3 n = unit(direction);
    const double rho = std::sqrt(n.x * n.x + n.z * n.z);
    const Turned turned = rho > 0 ? Turned(n.z / rho, n.x / rho) : Turned(1, 0);
    FarDirection::Moments moments{};
    double factor = radius_m;
    for (std::size_t m = 0; m < terms; ++m) {
        const std::size_t p = m + 1;
        double* const across = moments.data() + m * currents;
        double* const along = across + terms * currents;
        across[0] = factor * cosine_power[p][0];
        for (std::size_t i = 1; i < currents; ++i) {
            const RingWave& wave = waves.wave[i - 1];
            double sum = wave.level * cosine_power[p][0];
            double other = 0;
            for (std::size_t order = p % 2 == 1 ? 1 : 2; order <= p; order += 2) {
                const double part = wave.of[order - 1] * cosine_power[p][order];
                sum += part * turned.cosine[order];
                other += part * double(order) * turned.sine[order];
            }
            across[i] = factor * sum;
            along[i] = factor * n.y * other / double(p);
        }
        factor *= radius_m * rho / double(p);
    }
    return {n, moments};
}

} // namespace loopwright::loop::detail
