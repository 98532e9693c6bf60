#pragma once
// How much of the peak power an exposure limit may be held against: the emission's own timing, the operator's
// habit, and the worst window of the limit's averaging time.
#include "units/quantities.hpp"

#include <string>
#include <string_view>
#include <vector>

namespace loopwright::exposure {

/// A transmission inside a schedule: power is sent from `start` for `length`.
struct Pulse {
    units::Time start{}, length{};
};

/// What repeats on the air: pulses within one period, each with this average power over peak envelope power.
struct Schedule {
    units::Time period{};
    std::vector<Pulse> pulses; ///< ascending, not overlapping, within the period
    double average_to_peak = 1;
};

/// What the operator does with the emission.
enum class Habit {
    alternate_slots, ///< sends every second slot, listens in the other: the usual exchange
    every_slot,      ///< sends in every slot (a beacon at 100 %)
    share_of_slots,  ///< beacons: sends this share of the slots, spread evenly
    continuous,      ///< key down, as when tuning: the worst case of every emission
    listening_turns, ///< voice, telegraphy, teletype: sends for `over`, listens for the same time
};

struct Use {
    Habit habit = Habit::alternate_slots;
    double share = 0.2;                    ///< share_of_slots only, above 0 to 1
    units::Time over{units::seconds(180)}; ///< listening_turns only: how long one over lasts
};

/// The schedule of an emission ("ft8", "ft4", "wspr", "js8", "rtty", "psk31", "cw", "ssb", "ssb_processed",
/// "carrier"). Timing of the slot modes from their published protocols (12.64 of 15 s; 5.04 of 7.5 s; 110.6
/// of 120 s); power while keyed over peak from FCC OET Bulletin 65 Supplement B, Table 2 (telegraphy 0.4,
/// voice 0.2, processed voice 0.5, teletype and carrier 1). Slot habits with an emission without slots:
/// base::InputError, and for an unknown emission.
[[nodiscard]] Schedule schedule_of(std::string_view emission, const Use& use);

/// The habit people usually have with an emission: alternate slots for exchanges, a fifth of the slots for
/// beacons, turns for voice and keys, continuous for a carrier.
[[nodiscard]] Use usual_use(std::string_view emission);

/// Largest average power over peak envelope power in any window of that length [1]: exact, from the pulse
/// edges (the average of a window is piecewise linear in its start). A window of 0 gives the peak, 1.
[[nodiscard]] double worst_window_average(const Schedule& schedule, units::Time window);

/// Long-term mean over peak envelope power [1], what a heating model uses; never what a limit is held
/// against.
[[nodiscard]] double long_term_average(const Schedule& schedule);

} // namespace loopwright::exposure
