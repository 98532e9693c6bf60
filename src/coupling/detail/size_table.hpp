#pragma once
// The ports of a loop with couplings of several sizes, interpolated between them.
#include "base/job.hpp"
#include "coupling/detail/fed_loop.hpp"
#include "coupling/detail/size_search.hpp"
#include "coupling/detail/tuner.hpp"
#include "loop/full_wave.hpp"

#include <array>
#include <functional>
#include <memory>
#include <vector>

namespace loopwright::coupling::detail {

struct SizeRange {
    double low = 0, high = 0; ///< [m]
};

/// A feed of a size [m]; called by several threads.
using FeedOfSize = std::function<std::unique_ptr<const FedLoop>(double size)>;

/// Diameters that a coupling loop is looked for in, and the coupling loop of such a diameter. The range
/// throws base::InputError where no size fits; alone and design outlive the feeds.
[[nodiscard]] SizeRange diameters(const design::Design& design);
[[nodiscard]] FeedOfSize coupling_loops(const design::Design& design, const loop::FullWave& alone);

/// The same for the length of a tap.
[[nodiscard]] SizeRange tap_lengths(const design::Design& design);
[[nodiscard]] FeedOfSize taps(const design::Design& design, const loop::FullWave& alone);

/// Where a size is to match. own: the loop's resonances at the frequencies; where there is none nothing is
/// solved.
struct MatchPlaces {
    const std::vector<units::Frequency>& frequencies;
    const Resonances& own;
    Tuner tuner;
};

class SizeTable {
public:
    SizeTable(const SizeRange& range, const FeedOfSize& make, const MatchPlaces& places,
              const base::StopToken& stop, const base::Progress& progress);

    [[nodiscard]] bool complete() const noexcept { return complete_; }
    [[nodiscard]] const SizeRange& range() const noexcept { return range_; }
    /// Least over the capacitance, at frequency number i, which has a resonance.
    [[nodiscard]] double reflected_power(double size, std::size_t i) const;

private:
    static constexpr std::size_t nodes = 9;
    void solve_node(std::size_t node, const FeedOfSize& make, const base::StopToken& stop);

    SizeRange range_;
    MatchPlaces places_;
    std::array<double, nodes> size_{};
    std::array<std::vector<OpenTwoPort>, nodes> ports_; ///< by frequency
    bool complete_ = false;
};

} // namespace loopwright::coupling::detail
