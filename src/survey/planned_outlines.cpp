// Outlines of all planned bands together.
#include "base/stopped.hpp"
#include "survey/detail/remembered_surroundings.hpp"
#include "survey/keying_outlines.hpp"

#include <algorithm>
#include <cmath>
#include <functional>
#include <limits>

namespace loopwright::survey {

namespace {

constexpr int planned_azimuths = 72, planned_powers = 24;

using exposure::Held;
using exposure::Surroundings;
using exposure::Threshold;
using exposure::Tier;

constexpr double never = std::numeric_limits<double>::infinity();

/// One band of the set with its surroundings.
struct PlannedBand {
    const KeyingBand* band = nullptr;
    std::shared_ptr<const detail::SharedSurroundings> shared;
};

Threshold per_power(const KeyingDistance& d, double ratio) {
    const double root = std::sqrt(ratio * d.averaged_power.value());
    return {d.electric_limit.value() / root, d.magnetic_limit.value() / root};
}

/// Whichever is stricter.
Threshold both(const Threshold& a, const Threshold& b) {
    return {std::min(a.electric_V_m, b.electric_V_m), std::min(a.magnetic_A_m, b.magnetic_A_m)};
}

/// All surroundings at once, each held as long as one step takes.
class Set {
public:
    Set(const Keying& keying, base::StopToken stop) : stop_(std::move(stop)) {
        for (const KeyingBand& band : keying.bands) {
            if (band.verdict == KeyingVerdict::out_of_reach) {
                continue;
            }
            auto shared = detail::surroundings_of(keying.request.design, band.point.frequency, stop_);
            solved_ = solved_ && shared->around && band.point.resonance;
            bands_.push_back({&band, std::move(shared)});
        }
    }
    [[nodiscard]] bool solved() const { return solved_ && !bands_.empty(); }
    [[nodiscard]] const std::vector<PlannedBand>& bands() const { return bands_; }

    void step(const std::function<void()>& work) const {
        base::leave_if_stopped(stop_);
        // In one order always, so that two sets cannot wait for each other.
        std::vector<const detail::SharedSurroundings*> order;
        for (const PlannedBand& one : bands_) {
            order.push_back(one.shared.get());
        }
        std::sort(order.begin(), order.end());
        order.erase(std::unique(order.begin(), order.end()), order.end());
        std::vector<std::unique_lock<std::mutex>> locks;
        for (const auto* shared : order) {
            locks.emplace_back(shared->mutex);
            shared->around->heed(stop_);
        }
        work();
    }

private:
    base::StopToken stop_;
    std::vector<PlannedBand> bands_;
    bool solved_ = true;
};

/// What one tier asks for on every band, as entered and with the upper ends.
struct TierHeld {
    std::vector<Held> nominal, upper;
    bool established = true; ///< false: a distance of it is not
};

/// The distances of a band that count.
std::vector<const KeyingDistance*> counted(const KeyingBand& band, const std::string& limit, Tier tier) {
    std::vector<const KeyingDistance*> some;
    for (const KeyingDistance& d : band.distances) {
        if (d.tier == tier && (limit.empty() || d.limit == limit)) {
            some.push_back(&d);
        }
    }
    return some;
}

TierHeld held_by(const Set& set, const std::string& limit, Tier tier) {
    TierHeld held;
    for (const PlannedBand& one : set.bands()) {
        const auto distances = counted(*one.band, limit, tier);
        Threshold nominal{never, never}, upper{never, never};
        Surroundings& around = *one.shared->around;
        for (const KeyingDistance* d : distances) {
            if (!d->farthest) {
                held.established = false;
                continue;
            }
            // The power at which the nominal fields meet the limit at the upper end, over the power.
            const double share = around.worst_share(per_power(*d, 1), d->range.high);
            nominal = both(nominal, per_power(*d, 1));
            upper = both(upper, per_power(*d, share > 0 && share < 1 ? 1 / share : 1));
        }
        if (!distances.empty()) {
            held.nominal.push_back({&around, nominal});
            held.upper.push_back({&around, upper});
        }
    }
    return held;
}

/// Names, the farthest of all, whether figures stand from memory.
void describe(TierOutlines& tier, const Set& set, const std::string& limit, bool intervals) {
    for (const PlannedBand& one : set.bands()) {
        for (const KeyingDistance* d : counted(*one.band, limit, tier.tier)) {
            tier.from_memory = tier.from_memory || d->from_memory;
            tier.duty = std::max(tier.duty, d->duty);
            if (!d->farthest) {
                continue;
            }
            if (!tier.farthest || d->farthest->distance > tier.farthest->distance) {
                tier.farthest = d->farthest;
            }
            if (intervals) {
                tier.upper_distance = std::max(tier.upper_distance.value_or(d->range.high), d->range.high);
            }
        }
    }
}

std::optional<units::Length> farthest_of(const std::vector<Held>& all, double power_ratio) {
    units::Length most{};
    for (const Held& held : all) {
        const double root = std::sqrt(power_ratio);
        const auto found =
            held.around->farthest({held.threshold.electric_V_m / root, held.threshold.magnetic_A_m / root});
        if (!found) {
            return std::nullopt;
        }
        most = std::max(most, found->distance);
    }
    return most;
}

void fill_planned_power(TierOutlines& tier, const TierHeld& held, bool intervals, double power_W) {
    for (int i = 0; i < planned_powers; ++i) {
        const double watts =
            lowest_power_W * std::pow(highest_power_W / lowest_power_W, i / (planned_powers - 1.0));
        tier.over_power.push_back({units::watts(watts), farthest_of(held.nominal, watts / power_W),
                                   intervals ? farthest_of(held.upper, watts / power_W) : std::nullopt});
    }
}

void fill_planned(Outline& outline, const Set& set, const std::vector<Held>& held, units::Angle azimuth) {
    set.step([&] { outline.from_above = exposure::outline_from_above(held, planned_azimuths); });
    set.step([&] { outline.side = exposure::outline_from_the_side(held, azimuth); });
}

void add_planned_tier(KeyingOutlines& all, const Set& set, const Keying& keying, Tier which) {
    TierOutlines tier;
    tier.tier = which;
    tier.duty = 0;
    const bool intervals = keying.request.intervals;
    describe(tier, set, all.limit, intervals);
    TierHeld held;
    set.step([&] { held = held_by(set, all.limit, which); });
    if (held.nominal.empty() && held.established) {
        return; // no row on any band
    }
    if (!held.established) {
        tier.farthest.reset();
        tier.upper_distance.reset();
        all.tiers.push_back(std::move(tier));
        return;
    }
    if (all.tiers.empty()) {
        all.side_azimuth = tier.farthest->azimuth;
    }
    fill_planned(tier.nominal, set, held.nominal, all.side_azimuth);
    if (intervals) {
        fill_planned(tier.upper.emplace(), set, held.upper, all.side_azimuth);
    }
    set.step([&] {
        fill_planned_power(tier, held, intervals, keying.request.design.station.power.value.value());
    });
    all.tiers.push_back(std::move(tier));
}

/// Empty where there are several.
std::string one_standard(const Keying& keying, const std::string& limit) {
    std::string standard;
    for (const KeyingBand& band : keying.bands) {
        for (const KeyingDistance& d : band.distances) {
            if (limit.empty() || d.limit == limit) {
                if (!standard.empty() && standard != d.standard) {
                    return {};
                }
                standard = d.standard;
            }
        }
    }
    return standard;
}

} // namespace

std::optional<KeyingOutlines> planned_outlines(const Keying& keying, const std::string& limit,
                                               const base::StopToken& stop) {
    KeyingOutlines all;
    all.design = keying.request.design;
    all.limit = limit;
    all.standard = one_standard(keying, limit);
    try {
        const Set set(keying, stop);
        if (!set.solved()) {
            return std::nullopt;
        }
        for (const PlannedBand& one : set.bands()) {
            all.bands.push_back(one.band->band);
        }
        for (const Tier tier : {Tier::general_public, Tier::occupational}) {
            add_planned_tier(all, set, keying, tier);
        }
        all.complete = true;
    } catch (const base::Stopped&) {
        all.complete = false;
    }
    return all;
}

} // namespace loopwright::survey
