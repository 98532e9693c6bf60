#pragma once
// What the distance, the voltage and the powers of one band may be when soil, height and losses are not those
// entered: the causes one by one, their ends taken together.
#include "exposure/limits.hpp"
#include "exposure/surroundings.hpp"
#include "survey/detail/remembered_surroundings.hpp"
#include "survey/keying.hpp"

#include <deque>
#include <vector>

namespace loopwright::survey::detail {

/// The unfavourable and the favourable shifts of each cause, added: all at once.
struct Shifts {
    double less = 0, more = 0;
    /// Of several values of one cause.
    void add(const std::vector<double>& values);
};

/// For `power` of averaged power.
[[nodiscard]] exposure::Threshold threshold_of(const exposure::FieldLimit& fields, units::Power power);

/// The band as it may be. Without intervals asked for (request.intervals) every end is the nominal value.
/// Keeps references to what it is given.
class Unfavourable {
public:
    /// The band's point must have a resonance, the surroundings be solved, locked and heeding `stop`. Throws
    /// base::Stopped after a stop.
    Unfavourable(const KeyingRequest& request, const KeyingBand& band, const SharedSurroundings& shared,
                 const base::StopToken& stop);

    /// Of a distance [m] that is `nominal` for that limit and averaged power. To first order in the distance,
    /// by the field at the nominal place and its slope there; the worst height goes with the loop, direction
    /// and height are not looked for anew (against searches anew: within 1 mm of 2 m in the test's case).
    [[nodiscard]] Shifts distance_m(const exposure::FieldLimit& fields, units::Power averaged,
                                    const exposure::Farthest& nominal) const;
    /// Of the capacitor's peak voltage [V], losses not counted (the point has theirs).
    [[nodiscard]] Shifts volts() const;

    /// Averaged power [W] at which the upper end of the distance is `people`, never above it: what the
    /// verdict would pass. 0 where the model says nothing that near.
    [[nodiscard]] units::Power power_for_people(const exposure::FieldLimit& fields,
                                                units::Length people) const;
    /// Averaged power [W] that the limit allows a body at `reach` from the capacitor.
    [[nodiscard]] units::Power power_for_tuning(const exposure::FieldLimit& fields,
                                                units::Length reach) const;

private:
    /// What a function of the variant gives, by cause.
    template <class Value>
    [[nodiscard]] std::vector<std::vector<double>> by_cause(const Value& value) const;
    [[nodiscard]] units::Power power_for_people_anew(const exposure::FieldLimit& fields,
                                                     units::Length people) const;
    [[nodiscard]] bool within(const exposure::FieldLimit& fields, units::Power averaged,
                              units::Length people) const;

    const KeyingBand& band_;
    const SharedSurroundings& shared_;
    exposure::Surroundings& around_;
    bool varied_;
    double level_m_;                         ///< on which people stand
    double more_power_ = 1, less_power_ = 1; ///< left for the currents, losses at their ends
    const std::deque<SharedSurroundings::Variant>* variants_ = nullptr;
};

} // namespace loopwright::survey::detail
