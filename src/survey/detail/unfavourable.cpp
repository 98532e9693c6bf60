#include "survey/detail/unfavourable.hpp"

#include "design/soil.hpp"
#include "design/validation.hpp"

#include <algorithm>
#include <cmath>
#include <map>

namespace loopwright::survey::detail {

namespace {

using exposure::Surroundings;
using exposure::Threshold;

struct PlaceVariant {
    int cause = 0;
    double raised_m = 0; ///< the loop
    design::Design design;
};

/// What the place may be instead: soil drier and wetter, the loop a little lower and higher.
std::vector<PlaceVariant> variants_of(const design::Design& design) {
    std::vector<PlaceVariant> all;
    const design::Site& site = design.site;
    if (site.ground.kind == design::GroundKind::free_space) {
        return all;
    }
    if (site.ground.kind == design::GroundKind::soil) {
        const ground::Soil soil = design::soil_of(site.ground);
        for (const double factor : {0.5, 2.0}) {
            design::Design other = design;
            other.site.ground.class_name.clear();
            other.site.ground.relative_permittivity =
                std::max(1.0, soil.relative_permittivity * std::pow(factor, 0.5));
            other.site.ground.conductivity = factor * soil.conductivity;
            all.push_back({0, 0.0, other});
        }
    }
    const double lowest = site.lowest_point.value.value();
    for (const double by : {-1.0, 1.0}) {
        design::Design other = design;
        const double there = std::max(0.05, lowest + by * std::max(0.05, 0.1 * lowest));
        other.site.lowest_point = units::metres(there);
        if (design::refusals(other).empty()) {
            all.push_back({1, there - lowest, other});
        }
    }
    return all;
}

/// Capacitor voltage for 1 W, but for a factor that variants share: its current over omega C.
double volts_per_watt(const Surroundings& around) {
    const loop::SolvedLoop& loop = around.field().loop();
    const wire::Gap& gap = loop.solution.mesh().model().ports.at(1); // the capacitor's
    return std::abs(loop.solution.current_at(loop.currents, gap)) /
           (loop.tuning_capacitance.value() * std::sqrt(loop.total.value()));
}

/// The largest share of a threshold on the person at the place's distance and azimuth: at its height and
/// where that height goes with a loop raised by so much.
double worst_share_there(const Surroundings& around, const Threshold& threshold, exposure::Farthest place,
                         double raised_m, double level_m) {
    const double here = around.share_at(threshold, place);
    if (raised_m == 0) {
        return here;
    }
    place.height = units::metres(
        std::clamp(place.height.value() + raised_m, level_m, level_m + exposure::person_height_m));
    return std::max(here, around.share_at(threshold, place));
}

/// How far the distance moves when the largest share there changes from `here` to `changed`: by the slope of
/// the share at the place, since the field falls as a power of the distance over a few per cent.
double moved_m(const exposure::Farthest& place, const Threshold& threshold, const Surroundings& around,
               double changed) {
    exposure::Farthest farther = place;
    farther.distance = 1.05 * place.distance;
    const double here = around.share_at(threshold, place), there = around.share_at(threshold, farther);
    if (place.distance.value() <= 0 || std::isinf(here) || std::isinf(changed) || here <= there) {
        return 0; // set by the nearness of the conductor, which moves with nothing here
    }
    const double power = std::log(here / there) / std::log(1.05);
    return place.distance.value() * (std::pow(changed / here, 1 / power) - 1);
}

units::Power allowed(const Surroundings::Squares& worst, const exposure::FieldLimit& fields) {
    return units::watts(1 / worst.over(threshold_of(fields, units::watts(1))));
}

} // namespace

void Shifts::add(const std::vector<double>& values) {
    double least = 0, most = 0;
    for (const double value : values) {
        least = std::min(least, value);
        most = std::max(most, value);
    }
    less += least;
    more += most;
}

Threshold threshold_of(const exposure::FieldLimit& fields, units::Power power) {
    const double root = std::sqrt(power.value());
    return {fields.electric.value() / root, fields.magnetic.value() / root};
}

Unfavourable::Unfavourable(const KeyingRequest& request, const KeyingBand& band, Surroundings& around,
                           const base::StopToken& stop)
    : band_(band), around_(around), varied_(request.intervals),
      level_m_(request.design.site.standing_level.value.value()) {
    if (!varied_) {
        return;
    }
    const loop::Resonance& r = *band.point.resonance;
    const units::Resistance total = r.resistance.total();
    const units::Interval<units::Resistance>& range = r.total_resistance_range;
    // The same currents with more or less power left for them.
    more_power_ = range.low.value() > 0 ? std::max(1.0, (total / range.low).value()) : 1.0;
    less_power_ = range.high > total ? (total / range.high).value() : 1.0;
    for (const PlaceVariant& variant : variants_of(request.design)) {
        auto shared = surroundings_of(variant.design, band.point.frequency, false, stop);
        if (shared->around) {
            variants_.push_back({variant.cause, variant.raised_m, std::move(shared)});
        }
    }
}

template <class Value>
std::vector<std::vector<double>> Unfavourable::by_cause(const Value& value) const {
    std::map<int, std::vector<double>> found;
    for (const Variant& variant : variants_) {
        found[variant.cause].push_back(value(variant));
    }
    std::vector<std::vector<double>> all;
    for (auto& cause : found) {
        all.push_back(std::move(cause.second));
    }
    return all;
}

Shifts Unfavourable::distance_m(const exposure::FieldLimit& fields, units::Power averaged,
                                const exposure::Farthest& nominal) const {
    Shifts shifts;
    const double nominal_m = nominal.distance.value();
    if (more_power_ != 1 || less_power_ != 1) {
        const auto with = [&](double factor) {
            const auto found = around_.farthest(threshold_of(fields, factor * averaged));
            return found ? std::optional(found->distance.value()) : std::nullopt;
        };
        shifts.add({with(more_power_).value_or(2 * exposure::farthest_established_m) - nominal_m,
                    with(less_power_).value_or(nominal_m) - nominal_m});
    }
    const Threshold threshold = threshold_of(fields, averaged);
    for (const auto& cause : by_cause([&](const Variant& variant) {
             return moved_m(
                 nominal, threshold, around_,
                 worst_share_there(*variant.shared->around, threshold, nominal, variant.raised_m, level_m_));
         })) {
        shifts.add(cause);
    }
    return shifts;
}

Shifts Unfavourable::volts() const {
    Shifts shifts;
    const double peak_V = band_.point.resonance->capacitor_voltage_peak.value();
    // The same power splits otherwise: currents go with the root of the resistance, and so do volts.
    for (const auto& cause : by_cause([&](const Variant& variant) {
             return peak_V * (volts_per_watt(*variant.shared->around) / volts_per_watt(around_) - 1);
         })) {
        shifts.add(cause);
    }
    return shifts;
}

bool Unfavourable::within(const exposure::FieldLimit& fields, units::Power averaged,
                          units::Length people) const {
    const auto nominal = around_.farthest(threshold_of(fields, averaged));
    return nominal &&
           nominal->distance.value() + distance_m(fields, averaged, *nominal).more <= people.value();
}

units::Power Unfavourable::power_for_people(const exposure::FieldLimit& fields, units::Length people) const {
    const double share = around_.worst_share(threshold_of(fields, units::watts(1)), people);
    units::Power high = units::watts(1 / share), low = high;
    if (!varied_ || !(high.value() > 0) || within(fields, high, people)) {
        return high;
    }
    constexpr double step = 1.5;
    for (int i = 0; i < 14 && !within(fields, low, people); ++i) {
        high = low;
        low = low / step;
    }
    if (!within(fields, low, people)) {
        return units::watts(0); // what is left is the nearness of the conductor
    }
    for (int i = 0; i < 7; ++i) { // to a third of a per cent
        const units::Power middle = units::watts(std::sqrt(low.value() * high.value()));
        (within(fields, middle, people) ? low : high) = middle;
    }
    return low;
}

units::Power Unfavourable::power_for_tuning(const exposure::FieldLimit& fields, units::Length reach) const {
    const auto here = [&](const Surroundings& around) {
        const auto at = around.capacitor_place_m();
        return allowed(around.worst_around({at[0], at[1]}, reach), fields).value();
    };
    const double nominal_W = here(around_);
    if (!(nominal_W > 0)) {
        return units::watts(0);
    }
    double power_W = nominal_W / more_power_;
    for (const std::vector<double>& cause :
         by_cause([&](const Variant& variant) { return here(*variant.shared->around); })) {
        power_W *= std::min(1.0, *std::min_element(cause.begin(), cause.end()) / nominal_W);
    }
    return units::watts(power_W);
}

} // namespace loopwright::survey::detail
