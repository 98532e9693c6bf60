#pragma once
// The ports of a loop with coupling loops of several sizes, interpolated between them.
#include "base/job.hpp"
#include "coupling/detail/coupling_wire.hpp"
#include "coupling/detail/tuner.hpp"

#include <array>
#include <optional>
#include <vector>

namespace loopwright::coupling::detail {

class SizeTable {
public:
    /// design with a coupling, whose diameter is not read. own: the loop's resonances at the frequencies;
    /// where there is none nothing is solved. Throws base::InputError where no size fits.
    SizeTable(const design::Design& design, const std::vector<units::Frequency>& frequencies,
              const std::vector<std::optional<loop::Resonance>>& own, units::Resistance line,
              const base::StopToken& stop, const base::Progress& progress);

    [[nodiscard]] bool complete() const noexcept { return complete_; }
    [[nodiscard]] double low_m() const noexcept { return low_m_; }
    [[nodiscard]] double high_m() const noexcept { return high_m_; }
    /// Least over the capacitance, at frequency number i, which has a resonance.
    [[nodiscard]] double reflected_power(double diameter_m, std::size_t i) const;

private:
    static constexpr std::size_t nodes = 9;
    void solve_node(std::size_t node, const design::Design& design, const loop::FullWave& alone,
                    const base::StopToken& stop);

    const std::vector<units::Frequency>& frequencies_;
    const std::vector<std::optional<loop::Resonance>>& own_;
    Tuner tuner_;
    double low_m_ = 0, high_m_ = 0;
    std::array<double, nodes> diameter_m_{};
    std::array<std::vector<OpenTwoPort>, nodes> ports_; ///< by frequency
    bool complete_ = false;
};

} // namespace loopwright::coupling::detail
