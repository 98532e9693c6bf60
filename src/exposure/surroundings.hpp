#pragma once
// Where around a loop people may be: the field on a standing person in every direction, and the distances
// beyond which it stays under a limit.
//
// A person stands on the standing level and counts from 0 to 2 m above it; distances are horizontal, from the
// loop's vertical axis. In free space every direction counts, from the loop's centre. Fields are those of the
// full-wave model (field::QuickField). Nearer than 0.2 m to a conductor the model says nothing (capacitor's
// body, touch, sparks): such places count as exceeding every limit.
#include "base/job.hpp"
#include "exposure/detail/worst_curve.hpp"
#include "field/quick_field.hpp"
#include "units/quantities.hpp"

#include <array>
#include <map>
#include <optional>
#include <vector>

namespace loopwright::exposure {

enum class Cause { electric, magnetic };

inline constexpr double person_height_m = 2.0;
inline constexpr double nearest_established_m = 0.2;  ///< to a conductor's surface
inline constexpr double farthest_established_m = 100; ///< from the axis

/// The fields that may not be exceeded, for 1 W of power averaged as the limit asks: the limit's own field
/// over the root of that power.
struct Threshold {
    double electric_V_m = 0, magnetic_A_m = 0;
};

struct Farthest {
    units::Length distance{}; ///< 0: exceeded nowhere
    units::Angle azimuth{};   ///< of the worst direction, from +x toward +y, -180 to 180 degrees
    units::Length height{};   ///< of the worst place above the ground (free space: above the centre)
    Cause cause = Cause::magnetic;
    bool at_model_edge = false; ///< set by the 0.2 m to the conductor, not by a field
};

/// Not for several threads at once: it remembers what it has looked at. No answer depends on what was asked
/// before.
class Surroundings {
public:
    /// stop: as of heed().
    Surroundings(loop::SolvedLoop loop, units::Length standing_level, const base::StopToken& stop = {});

    /// From now on the token is read before each field point and while tables are made; after a stop every
    /// function that computes fields throws base::Stopped, what it remembers unharmed. Each user of shared
    /// surroundings brings its own.
    void heed(const base::StopToken& stop) {
        stop_ = stop;
        field_.heed(stop);
    }

    /// The largest distance at which a threshold is exceeded anywhere on a standing person, found to 2 mm or
    /// a thousandth. Nothing where that lies beyond 100 m. Threshold fields > 0.
    [[nodiscard]] std::optional<Farthest> farthest(const Threshold& threshold);

    /// The same for the mean of the squared fields from 0 to 2 m above the standing level. Nothing in free
    /// space or beyond 100 m.
    [[nodiscard]] std::optional<Farthest> farthest_body_average(const Threshold& threshold);

    /// Squared field over squared threshold at one place. Infinite within 0.2 m of a conductor.
    [[nodiscard]] double share_at(const Threshold& threshold, const Farthest& place) const;

    /// Largest squared field over squared threshold for people at that distance or farther; infinite where
    /// the model says nothing (0.2 m). Its inverse is the averaged power [W] that the limit allows there.
    [[nodiscard]] double worst_share(const Threshold& threshold, units::Length distance);

    /// For maps (exposure/outlines.hpp): whether a threshold is exceeded at one place, up to highest_m(), or
    /// anywhere on a person at a distance in one azimuth, at the heights that a shell is made of.
    [[nodiscard]] bool exceeds(const Threshold& threshold, const std::array<double, 3>& point_m) const;
    [[nodiscard]] bool exceeds_on_person(const Threshold& threshold, double distance_m,
                                         double azimuth_rad) const;
    /// A horizontal distance from which the fields of the loop's two moments, taken three times, stay below:
    /// where a search may start. Not a bound in the strict sense.
    [[nodiscard]] double rough_reach_m(const Threshold& threshold) const;
    /// Fields are known to 12 m above loop and people; in free space at any height.
    [[nodiscard]] double highest_m() const noexcept { return top_m_; }

    [[nodiscard]] const field::QuickField& field() const noexcept { return field_; }
    /// Where the capacitor sits [m].
    [[nodiscard]] std::array<double, 3> capacitor_place_m() const;

    /// A place on the person: azimuth, and the share of the way from feet to head (free space: from straight
    /// up to straight down).
    struct Place {
        double azimuth_rad = 0, share = 0;
    };
    /// Squared fields for 1 W; `touch` where the model says nothing.
    struct Squares {
        double electric = 0, magnetic = 0;
        bool touch = false;
        [[nodiscard]] double over(const Threshold& t) const;
    };
    [[nodiscard]] Squares squares(double distance_m, const Place& place) const;
    /// The largest of each on a person whose body stands at `reach`, horizontally, from the capacitor, on any
    /// side.
    [[nodiscard]] Squares worst_around_capacitor(units::Length reach);
    [[nodiscard]] Squares body_mean(double distance_m, double azimuth_rad) const;

private:
    /// Weighted by the rule, of as many as there are shares.
    [[nodiscard]] Squares mean_of(const Squares* by_share) const;
    static constexpr std::array<Cause, 2> causes{Cause::electric, Cause::magnetic};
    /// What is asked for on the person: the largest value, or the mean over the body.
    enum class Taken { largest, mean };
    struct Shell {
        std::vector<Squares> nodes; ///< azimuths x shares
        std::vector<Squares> means; ///< by azimuth, empty in free space
    };
    static constexpr int edge_shell = -1;         ///< just outside what the model says nothing about
    static constexpr double just_outside = 1.002; ///< of its distance
    [[nodiscard]] double shell_distance_m(int index) const;
    const Shell& shell(int index);
    [[nodiscard]] static double part(const Squares& squares, Cause cause);
    /// Index of the largest of a cause.
    [[nodiscard]] static std::size_t largest(const std::vector<Squares>& all, Cause cause);
    [[nodiscard]] const std::vector<Squares>& seen(Taken taken, int index);
    [[nodiscard]] detail::WorstCurve& curve(Taken taken, Cause cause);
    [[nodiscard]] detail::WorstCurve::Make maker(Taken taken, Cause cause);
    [[nodiscard]] detail::WorstSample worst_largest(double distance_m, Cause cause, Place from, double finer);
    [[nodiscard]] detail::WorstSample worst_mean_on_shell(int index, Cause cause);
    /// On the shell's own curve, or `least` where its nodes are so far below that it need not be looked for.
    [[nodiscard]] double worst_on_shell(Taken taken, Cause cause, int index, double least);
    struct Found {
        double distance_m = 0;
        Cause cause = Cause::magnetic;
        detail::WorstSample place;
        bool at_touch = false;
    };
    /// Nothing beyond 100 m.
    [[nodiscard]] std::optional<Found> outermost(Taken taken, const Threshold& threshold);
    [[nodiscard]] std::optional<Found> crossing_between(Taken taken, const Threshold& threshold, int inner,
                                                        int outer);
    [[nodiscard]] std::optional<Found> lobe_between(Taken taken, const Threshold& threshold, int inner,
                                                    int outer);
    void take_farther(std::optional<Found>& found, Taken taken, Cause cause, double inside_m,
                      double outside_m, double square);
    [[nodiscard]] std::optional<Farthest> described(Taken taken, const Threshold& threshold);
    void find_symmetry();
    [[nodiscard]] int first_shell(const Threshold& threshold) const;
    [[nodiscard]] std::array<double, 3> point(double distance_m, const Place& place) const;
    [[nodiscard]] Squares squares_at(const std::array<double, 3>& point_m) const;

    base::StopToken stop_;
    double level_m_, top_m_;
    field::QuickField field_;
    std::vector<double> azimuths_rad_;
    std::vector<double> shares_, share_weights_; ///< Clenshaw-Curtis
    double azimuth_step_rad_ = 0;
    double electric_moment_C_m_ = 0, magnetic_moment_A_m2_ = 0; ///< for 1 W
    field::QuickField::Nearness touch_; ///< how far from the axis the 0.2 m to a conductor reach
    std::map<int, Shell> shells_;
    static constexpr std::size_t most_reaches = 16;
    std::map<double, Squares> around_capacitor_; ///< by reach [m]
    std::array<detail::WorstCurve, 4> curves_;   ///< Taken x Cause
};

} // namespace loopwright::exposure
