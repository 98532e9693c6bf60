#include "survey/detail/remembered_surroundings.hpp"

#include "base/recent.hpp"
#include "loop/full_wave.hpp"
#include "loop/solved_part.hpp"

namespace loopwright::survey::detail {

namespace {

struct Key {
    design::Design design;
    double frequency_Hz, standing_level_m;
    bool operator==(const Key&) const = default;
};

std::shared_ptr<const SharedSurroundings> made(const design::Design& design, units::Frequency frequency) {
    auto shared = std::make_shared<SharedSurroundings>();
    if (auto loop = loop::FullWave(design, loop::Workload::few_frequencies).solved(frequency)) {
        shared->around.emplace(*std::move(loop), design.site.standing_level.value);
    }
    return shared;
}

} // namespace

const std::optional<loop::ConductorVoltage>& SharedSurroundings::touch() const {
    if (!touch_known_ && around) {
        touch_ = loop::conductor_voltage(around->field().loop(), units::watts(1));
        touch_known_ = true;
    }
    return touch_;
}

std::shared_ptr<const SharedSurroundings> surroundings_of(const design::Design& design,
                                                          units::Frequency frequency, bool kept) {
    if (!kept) {
        return made(design, frequency);
    }
    static base::Recent<Key, SharedSurroundings> recent(24);
    return recent.get(
        Key{loop::solved_part(design), frequency.value(), design.site.standing_level.value.value()},
        [&] { return made(design, frequency); });
}

} // namespace loopwright::survey::detail
