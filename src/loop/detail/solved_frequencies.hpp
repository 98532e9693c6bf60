#pragma once
// The wire solved at the frequencies asked for lately. The capacitor has no part in it: its loss and its
// range can change without another solution.
#include "loop/detail/nearby_ports.hpp"
#include "wire/ground_matrix.hpp"
#include "wire/solver.hpp"

#include <complex>
#include <cstddef>
#include <deque>
#include <functional>
#include <memory>
#include <mutex>
#include <unordered_map>
#include <vector>

namespace loopwright::loop::detail {

/// One frequency with what was in the conductor then.
struct SolvedFrequency {
    std::complex<double> conductor_ohm_per_m;
    wire::Solution solution;
    wire::FieldMatrix change; ///< field matrix at (1 + slope_step) f less that at (1 - slope_step) f [ohm]
};

/// Relative step of `change`.
inline constexpr double slope_step = 1e-3;

/// Of one wire over one ground, or in free space. May be asked from several threads; two that ask for the
/// same frequency at once both solve it.
class SolvedFrequencies {
public:
    SolvedFrequencies(std::shared_ptr<const wire::Solver> solver,
                      std::shared_ptr<const wire::GroundMatrices> ground, bool ground_directly);

    /// Kept, or solved now. Throws what wire::Solver::solve throws.
    [[nodiscard]] std::shared_ptr<const SolvedFrequency> at(units::Frequency frequency,
                                                            std::complex<double> conductor_ohm_per_m) const;
    /// The ports' admittances beside it, kept like the solutions. conductor_ohm_per_m(f): at any frequency
    /// [Hz].
    [[nodiscard]] std::shared_ptr<const NearbyPorts>
    near(units::Frequency frequency,
         const std::function<std::complex<double>(double)>& conductor_ohm_per_m) const;
    /// Solved now and not kept: for frequencies that nobody asks for again.
    [[nodiscard]] wire::Solution solve(units::Frequency frequency,
                                       std::complex<double> conductor_ohm_per_m) const;

private:
    /// 60 kB each with 60 unknowns.
    static constexpr std::size_t most_kept = 512;

    /// With what was in the conductor at the nodes then.
    struct Nearby {
        std::vector<std::complex<double>> conductor_ohm_per_m;
        std::shared_ptr<const NearbyPorts> ports;
    };

    [[nodiscard]] wire::FieldMatrix of_ground(units::Frequency frequency) const;
    [[nodiscard]] wire::FieldMatrix field_matrix(double frequency_Hz) const;

    std::shared_ptr<const wire::Solver> solver_;
    std::shared_ptr<const wire::GroundMatrices> ground_; ///< null in free space
    bool directly_;
    mutable std::mutex mutex_;
    mutable std::unordered_map<double, std::shared_ptr<const SolvedFrequency>> kept_; ///< by Hz
    mutable std::unordered_map<double, Nearby> nearby_;                               ///< by Hz
    mutable std::deque<double> order_;                                                ///< oldest first
};

} // namespace loopwright::loop::detail
