#include "survey/detail/remembered_surroundings.hpp"

#include "base/recent.hpp"
#include "base/stopped.hpp"
#include "design/soil.hpp"
#include "design/validation.hpp"
#include "loop/full_wave.hpp"
#include "loop/solved_part.hpp"

#include <algorithm>
#include <cmath>
#include <utility>

namespace loopwright::survey::detail {

namespace {

struct Key {
    design::Design design;
    double frequency_Hz, standing_level_m;
    bool operator==(const Key&) const = default;
};

/// 24 hold the bands of two designs, or of one for two emissions.
base::Recent<Key, SharedSurroundings>& remembered() {
    static base::Recent<Key, SharedSurroundings> recent(24);
    return recent;
}

std::optional<exposure::Surroundings> made(const design::Design& design, units::Frequency frequency,
                                           loop::Workload workload, const base::StopToken& stop) {
    base::leave_if_stopped(stop);
    const loop::FullWave model(design, workload);
    base::leave_if_stopped(stop);
    auto loop = model.solved(frequency);
    if (!loop) {
        return std::nullopt;
    }
    base::leave_if_stopped(stop);
    return exposure::Surroundings(*std::move(loop), design.site.standing_level.value, stop);
}

} // namespace

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

const std::optional<loop::ConductorVoltage>& SharedSurroundings::touch() const {
    if (!touch_known_ && around) {
        touch_ = loop::conductor_voltage(around->field().loop(), units::watts(1));
        touch_known_ = true;
    }
    return touch_;
}

const std::deque<SharedSurroundings::Variant>&
SharedSurroundings::variants(const design::Design& design, units::Frequency frequency,
                             const base::StopToken& stop) const {
    if (!variants_to_make_) {
        std::vector<PlaceVariant> all = variants_of(design);
        variants_to_make_.emplace(std::make_move_iterator(all.begin()), std::make_move_iterator(all.end()));
    }
    for (Variant& variant : variants_) {
        variant.around.heed(stop);
    }
    for (; !variants_to_make_->empty(); variants_to_make_->pop_front()) {
        const PlaceVariant& next = variants_to_make_->front();
        if (auto there = made(next.design, frequency, loop::Workload::passing, stop)) {
            variants_.push_back({next.cause, next.raised_m, *std::move(there)});
        }
    }
    return variants_;
}

std::shared_ptr<const SharedSurroundings>
surroundings_of(const design::Design& design, units::Frequency frequency, const base::StopToken& stop) {
    return remembered().get(
        Key{loop::solved_part(design), frequency.value(), design.site.standing_level.value.value()}, [&] {
            auto shared = std::make_shared<SharedSurroundings>();
            shared->around = made(design, frequency, loop::Workload::few_frequencies, stop);
            return shared;
        });
}

void forget_surroundings() {
    remembered().clear();
}

} // namespace loopwright::survey::detail
