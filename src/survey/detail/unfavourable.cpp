#include "survey/detail/unfavourable.hpp"

#include <algorithm>
#include <cmath>
#include <map>

namespace loopwright::survey::detail {

namespace {

using exposure::Surroundings;
using exposure::Threshold;

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

/// How the distance moves with the largest share at its place: by the slope of the share there, since the
/// field falls as a power of the distance over a few per cent.
class Slope {
public:
    Slope(const exposure::Farthest& place, const Threshold& threshold, const Surroundings& around)
        : distance_m_(place.distance.value()), here_(around.share_at(threshold, place)) {
        exposure::Farthest farther = place;
        farther.distance = 1.05 * place.distance;
        const double there = around.share_at(threshold, farther);
        if (distance_m_ > 0 && !std::isinf(here_) && here_ > there) {
            power_ = std::log(here_ / there) / std::log(1.05);
        }
    }
    /// Where the share becomes `changed`.
    [[nodiscard]] double moved_m(double changed) const {
        if (power_ == 0 || std::isinf(changed)) {
            return 0; // set by the nearness of the conductor, which moves with nothing here
        }
        return distance_m_ * (std::pow(changed / here_, 1 / power_) - 1);
    }

private:
    double distance_m_, here_;
    double power_ = 0;
};

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

Unfavourable::Unfavourable(const KeyingRequest& request, const KeyingBand& band,
                           const SharedSurroundings& shared, const base::StopToken& stop)
    : band_(band), shared_(shared), around_(*shared.around), varied_(request.intervals),
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
    variants_ = &shared.variants(request.design, band.point.frequency, stop);
}

template <class Value>
std::vector<std::vector<double>> Unfavourable::by_cause(const Value& value) const {
    std::map<int, std::vector<double>> found;
    if (variants_ != nullptr) {
        for (const SharedSurroundings::Variant& variant : *variants_) {
            found[variant.cause].push_back(value(variant));
        }
    }
    std::vector<std::vector<double>> all;
    all.reserve(found.size());
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
    if (variants_ == nullptr || variants_->empty()) {
        return shifts;
    }
    const Threshold threshold = threshold_of(fields, averaged);
    const Slope slope(nominal, threshold, around_);
    for (const auto& cause : by_cause([&](const SharedSurroundings::Variant& variant) {
             return slope.moved_m(
                 worst_share_there(variant.around, threshold, nominal, variant.raised_m, level_m_));
         })) {
        shifts.add(cause);
    }
    return shifts;
}

Shifts Unfavourable::volts() const {
    Shifts shifts;
    const double peak_V = band_.point.resonance->capacitor_voltage_peak.value();
    // The same power splits otherwise: currents go with the root of the resistance, and so do volts.
    for (const auto& cause : by_cause([&](const SharedSurroundings::Variant& variant) {
             return peak_V * (volts_per_watt(variant.around) / volts_per_watt(around_) - 1);
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
    if (!varied_) {
        return power_for_people_anew(fields, people);
    }
    auto& kept = shared_.powers_for_people_W;
    const std::array<double, 5> key{fields.electric.value(), fields.magnetic.value(), people.value(),
                                    more_power_, less_power_};
    if (const auto found = kept.find(key); found != kept.end()) {
        return units::watts(found->second);
    }
    const units::Power power = power_for_people_anew(fields, people);
    if (kept.size() >= SharedSurroundings::most_powers) {
        kept.clear();
    }
    kept.emplace(key, power.value());
    return power;
}

units::Power Unfavourable::power_for_people_anew(const exposure::FieldLimit& fields,
                                                 units::Length people) const {
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
    const auto here = [&](Surroundings& around) {
        return allowed(around.worst_around_capacitor(reach), fields).value();
    };
    const double nominal_W = here(around_);
    if (!(nominal_W > 0)) {
        return units::watts(0);
    }
    double power_W = nominal_W / more_power_;
    for (const std::vector<double>& cause :
         by_cause([&](const SharedSurroundings::Variant& variant) { return here(variant.around); })) {
        power_W *= std::min(1.0, *std::min_element(cause.begin(), cause.end()) / nominal_W);
    }
    return units::watts(power_W);
}

} // namespace loopwright::survey::detail
