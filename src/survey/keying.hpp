#pragma once
// Before keying: does the capacitor hold, and are people far enough away, band by band, for the power, the
// emission and the duty of the design. Full-wave model only.
#include "band/band.hpp"
#include "base/job.hpp"
#include "capacitor/network.hpp"
#include "design/design.hpp"
#include "exposure/limits.hpp"
#include "exposure/surroundings.hpp"
#include "loop/conductor_voltage.hpp"
#include "loop/heating.hpp"
#include "loop/operating_point.hpp"

#include <functional>
#include <optional>
#include <string>
#include <vector>

namespace loopwright::survey {

enum class KeyingVerdict {
    within,          ///< within the limits and the rating as computed, unfavourable ends taken
    out_of_reach,    ///< the capacitor cannot tune the band: nothing to key
    not_established, ///< a limit, a rating or the model is missing
    exceeded,        ///< a limit or the rating is exceeded
};

/// Stable word for files and scripts: "within_as_computed", "out_of_reach", "not_established", "exceeded".
[[nodiscard]] const char* name_of(KeyingVerdict verdict) noexcept;

struct KeyingRequest {
    design::Design design;
    std::vector<std::string> limits;           ///< ids; empty: those of the design; own limits besides
    std::vector<units::Frequency> frequencies; ///< empty: the planned bands
    bool intervals = true;                     ///< soil, height and losses varied: some ten times the work
};

/// One limit and tier, held against the fields of one band.
struct KeyingDistance {
    std::string limit;    ///< id; "own_1" for the first own limit
    std::string standard; ///< for people
    std::string table;    ///< of the standard, for this tier: "Table 5"; "own" for an own limit
    exposure::Tier tier = exposure::Tier::general_public;
    bool from_memory = false; ///< the limit's figures
    units::ElectricField electric_limit{};
    units::MagneticField magnetic_limit{};
    double duty = 1;               ///< average over the limit's time, worst window, over peak power
    units::Power averaged_power{}; ///< what the limit is held against
    /// Nothing: beyond 100 m, or the model does not stand behind it.
    std::optional<exposure::Farthest> farthest;
    std::optional<units::Length> body_average;
    units::Interval<units::Length> range; ///< of the distance; both ends the distance where not varied
    /// Peak power at which the upper end of `range` is the people's distance of the design: what the verdict
    /// would still pass. 0 where the model says nothing that near.
    std::optional<units::Power> power_for_people;
    /// Peak power for the hand that tunes: a carrier, no credit for averaging, the body at the design's
    /// reach from the capacitor, unfavourable ends taken. 0 where the model says nothing that near.
    std::optional<units::Power> power_for_tuning;
};

struct KeyingReason {
    KeyingVerdict verdict = KeyingVerdict::not_established;
    std::string text; ///< one sentence in words with its margin
    std::string fix;  ///< the one thing that would mend it; empty where nothing is to be mended
};

struct KeyingBand {
    std::string band; ///< "40m"; empty where no band of the region holds the frequency
    loop::OperatingPoint point;
    units::Interval<units::Voltage> voltage_peak;    ///< all causes together
    std::optional<capacitor::NetworkLoad> load;      ///< what each member of the capacitor carries
    std::optional<units::Voltage> usable_voltage;    ///< peak across the whole, volts and current ratings
    std::optional<units::Power> power_for_capacitor; ///< at which the unfavourable voltage reaches it
    /// Steady state, for the average of the worst half hour: an upper bound for short sessions.
    std::optional<loop::LoopHeating> heating;
    std::optional<loop::ConductorVoltage> touch; ///< along the conductor; nothing where not established
    /// The highest of it at places within hand_reach_m; nothing where no place is, or not established.
    std::optional<units::Voltage> touch_in_reach_rms;
    std::vector<KeyingDistance> distances;      ///< limits in the order asked, public before occupational
    std::optional<units::Power> fcc_exempt_erp; ///< at the people's distance
    units::Power erp{};
    KeyingVerdict verdict = KeyingVerdict::not_established;
    /// `within`, but only if people keep the distance: how near they come was not entered, so nothing was
    /// checked against it. Must not be shown as a clearance.
    bool on_condition = false;
    std::vector<KeyingReason> reasons; ///< worst first, never empty
    /// Sentences without a full stop on what decides nothing and still must be known: how hot parts become.
    std::vector<std::string> remarks;
};

/// A hand reaches what is no higher than this above where people stand: the arm's reach of electrical codes
/// (IEC 60364-4-41, from memory). In free space it reaches everything.
inline constexpr double hand_reach_m = 2.5;

/// A rise over the air from which a remark warns: with air at 20 °C a part is then at 60 °C, hot to the touch
/// and near where customary plastics begin to soften (common practice, no source). Upper end of the interval.
inline constexpr double hot_rise_K = 40;

struct Keying {
    KeyingRequest request;
    std::vector<KeyingBand> bands; ///< ascending in frequency
    bool complete = false;
};

/// Throws base::InputError for a design with refusals, an unknown limit id, a frequency not above 0.
[[nodiscard]] Keying keying(const KeyingRequest& request, const base::StopToken& stop = {},
                            const base::Progress& progress = {},
                            const std::function<void(const KeyingBand&)>& band_ready = {});

/// Whether keying() of one design asks for the fields of the other: a sheet of the second, with intervals or
/// without, is then a matter of milliseconds where one of the first was asked for just before.
[[nodiscard]] bool same_fields(const design::Design& one, const design::Design& other);

/// The public limit with the largest distance (upper end) of those established; null where there is none.
[[nodiscard]] const KeyingDistance* widest_known(const KeyingBand& band) noexcept;
/// The same, but null where a public limit has no distance: nothing may then be called the largest.
[[nodiscard]] const KeyingDistance* widest(const KeyingBand& band) noexcept;

/// The least of the public limits; nothing where one has none, or none was held.
[[nodiscard]] std::optional<units::Power> least_power_for_people(const KeyingBand& band);
[[nodiscard]] std::optional<units::Power> least_power_for_tuning(const KeyingBand& band);

/// The peak power that both the capacitor and people at the design's distance allow, unfavourable ends taken,
/// and which of them sets it. Nothing where either is not established or entered, or the band out of reach.
struct GreatestPower {
    units::Power power{};
    bool by_people = false; ///< false: the capacitor
};
[[nodiscard]] std::optional<GreatestPower> greatest_power(const KeyingBand& band);

/// The band and tier with the largest distance for the general public (upper end), or nothing.
struct LargestDistance {
    const KeyingBand* band = nullptr;
    const KeyingDistance* distance = nullptr;
    bool complete = true; ///< false: on some reached band no distance is established
};
[[nodiscard]] LargestDistance largest_distance(const Keying& keying);

} // namespace loopwright::survey
