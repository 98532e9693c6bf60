#include "survey/detail/remembered_surroundings.hpp"

#include "base/recent.hpp"
#include "base/stopped.hpp"
#include "loop/full_wave.hpp"
#include "loop/solved_part.hpp"

namespace loopwright::survey::detail {

namespace {

struct Key {
    design::Design design;
    double frequency_Hz, standing_level_m;
    bool operator==(const Key&) const = default;
};

std::shared_ptr<const SharedSurroundings> made(const design::Design& design, units::Frequency frequency,
                                               const base::StopToken& stop) {
    auto shared = std::make_shared<SharedSurroundings>();
    base::leave_if_stopped(stop);
    const loop::FullWave model(design, loop::Workload::few_frequencies);
    base::leave_if_stopped(stop);
    if (auto loop = model.solved(frequency)) {
        base::leave_if_stopped(stop);
        shared->around.emplace(*std::move(loop), design.site.standing_level.value, stop);
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
                                                          units::Frequency frequency, bool kept,
                                                          const base::StopToken& stop) {
    if (!kept) {
        return made(design, frequency, stop);
    }
    static base::Recent<Key, SharedSurroundings> recent(24);
    return recent.get(
        Key{loop::solved_part(design), frequency.value(), design.site.standing_level.value.value()},
        [&] { return made(design, frequency, stop); });
}

} // namespace loopwright::survey::detail
