#pragma once
// What every member of the capacitor carries (sections in series, fixed capacitors added, stray), what each
// stands, and which of them decides. docs/theory/capacitor.md, (K8) to (K12).
#include "base/notice.hpp"
#include "capacitor/breakdown.hpp"
#include "capacitor/capacitor.hpp"
#include "units/quantities.hpp"

#include <cstddef>
#include <optional>
#include <vector>

namespace loopwright::capacitor {

/// What the variable capacitor stands; whatever is given counts, the lowest decides.
struct VariableRating {
    std::optional<units::Voltage> peak_voltage; ///< of the whole variable capacitor, all sections together
    std::optional<units::Length> gap;           ///< of one section
    PlateEdges edges = PlateEdges::plain;
    double safety_factor = 1.5;
    std::optional<units::Current> current; ///< rms
};

struct NetworkSpec {
    CapacitorSpec capacitor;
    int sections = 1; ///< 1, or 2 equal ones in series
    VariableRating rating;
    units::Length altitude{units::metres(0)};
    units::Temperature air_temperature{units::degrees_celsius(20)};
};

enum class MemberKind { section, added, stray };
enum class RatedBy { nothing, peak_voltage, gap };

/// One member at a setting. Nominal voltages follow from the capacitances alone: loss is small beside
/// reactance.
struct MemberLoad {
    MemberKind kind = MemberKind::section;
    std::size_t index = 0; ///< of sections, or FixedCapacitor::number
    units::Capacitance capacitance{};
    units::Voltage voltage_peak{};
    units::Current current_rms{};
    units::Power loss{}; ///< contacts with the sections, half in each of two
    RatedBy rated_by = RatedBy::nothing;
    std::optional<units::Voltage> usable_peak; ///< of this member; a gap's with its safety factor
    units::Interval<units::Voltage> usable_peak_range{};
    std::optional<units::Current> current_rating;
};

struct NetworkLoad {
    std::vector<MemberLoad> members; ///< sections, added ones, stray (where there is any)
    units::Voltage voltage_peak{};   ///< across the whole
    units::Current current_rms{};    ///< into the whole
    /// Volts across the whole at which the first rated member reaches what it stands; nothing where none is
    /// rated.
    std::optional<units::Voltage> usable_peak;
    units::Interval<units::Voltage> usable_peak_range{};
    std::size_t weakest = 0; ///< that member, by the unfavourable end
    /// Volts across the whole at which the first current rating is reached; nothing where none is given.
    std::optional<units::Voltage> current_limited_peak;
    std::size_t hottest = 0; ///< that member
    /// A fixed capacitor or the variable one carries volts and has no rating.
    bool unrated_members = false;
    base::Notices notices;

    /// The lower of both, unfavourable end: what a verdict holds the voltage against.
    [[nodiscard]] std::optional<units::Voltage> allowed_peak() const;
};

/// A prepared network; immutable.
class Network {
public:
    /// Throws as Capacitor, and for a rating that cannot be (see gap_rating()); sections 1 or 2:
    /// base::ProgramError.
    explicit Network(NetworkSpec spec);

    /// For a peak voltage across the whole, the capacitance the whole is set to and the frequency. Nothing
    /// where no setting of the variable capacitor gives that capacitance. Throws base::ProgramError for
    /// values that are not above 0 (a voltage of 0 is allowed).
    [[nodiscard]] std::optional<NetworkLoad> load(units::Voltage peak, units::Capacitance whole,
                                                  units::Frequency frequency) const;

    /// The gap that a section needs for a voltage across it, with the edges, air and safety factor of the
    /// design; see gap_for().
    [[nodiscard]] std::optional<units::Length> gap_needed(units::Voltage section_peak) const;

    [[nodiscard]] const Capacitor& capacitor() const { return capacitor_; }

private:
    struct Unit;
    void add_sections(NetworkLoad& load, units::Capacitance variable, const Unit& unit) const;
    void add_fixed(NetworkLoad& load, std::size_t index, const Unit& unit) const;
    void add_stray(NetworkLoad& load, const Unit& unit) const;
    static void scale(NetworkLoad& load, double volts);
    void rate_section(MemberLoad& member) const;
    void conclude(NetworkLoad& load) const;

    NetworkSpec spec_;
    Capacitor capacitor_;
    std::optional<GapRating> gap_;
    base::Notices notices_;
};

/// The power at which a voltage that goes with its root reaches another: power (allowed/peak)^2. peak > 0.
[[nodiscard]] units::Power power_at_voltage(units::Power power, units::Voltage peak, units::Voltage allowed);

} // namespace loopwright::capacitor
