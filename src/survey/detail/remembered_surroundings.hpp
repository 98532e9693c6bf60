#pragma once
// The surroundings of solved loops, of the design as entered and of what its place may be instead, kept over
// edits that change no current for 1 W.
#include "design/design.hpp"
#include "exposure/surroundings.hpp"
#include "loop/conductor_voltage.hpp"

#include <array>
#include <deque>
#include <map>
#include <memory>
#include <mutex>
#include <optional>
#include <vector>

namespace loopwright::survey::detail {

/// What the place may be instead: soil drier and wetter, the loop a little lower and higher.
struct PlaceVariant {
    int cause = 0;
    double raised_m = 0; ///< the loop
    design::Design design;
};
[[nodiscard]] std::vector<PlaceVariant> variants_of(const design::Design& design);

/// One at a time: lock, then ask. Empty where the model does not solve the loop there. What it gives depends
/// on the design's solved part, the frequency and the standing level, and on nothing asked before.
struct SharedSurroundings {
    mutable std::mutex mutex;
    mutable std::optional<exposure::Surroundings> around;
    /// For 1 W; asked for once (it costs as much as the fields of a thousand points).
    [[nodiscard]] const std::optional<loop::ConductorVoltage>& touch() const;

    struct Variant {
        int cause = 0;
        double raised_m = 0;
        mutable exposure::Surroundings around;
    };
    /// The variants the model solves, made when first asked for; they heed `stop` from now on. design: whose
    /// surroundings these are. Throws base::Stopped after a stop, what is made by then stays.
    [[nodiscard]] const std::deque<Variant>&
    variants(const design::Design& design, units::Frequency frequency, const base::StopToken& stop) const;

    /// Powers for people at their unfavourable end [W], by all that they depend on besides; see Unfavourable.
    static constexpr std::size_t most_powers = 128;
    mutable std::map<std::array<double, 5>, double> powers_for_people_W;

private:
    mutable bool touch_known_ = false;
    mutable std::optional<loop::ConductorVoltage> touch_;
    mutable std::optional<std::deque<PlaceVariant>> variants_to_make_;
    mutable std::deque<Variant> variants_;
};

/// Remembered (the last 24), or made. Throws base::Stopped after a stop, read between the steps of the
/// making. Who asks them brings a token of its own: Surroundings::heed().
[[nodiscard]] std::shared_ptr<const SharedSurroundings>
surroundings_of(const design::Design& design, units::Frequency frequency, const base::StopToken& stop);

/// All are made anew when next asked for: what tests compare with.
void forget_surroundings();

} // namespace loopwright::survey::detail
