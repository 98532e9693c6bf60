#pragma once
// The surroundings of solved loops, kept over edits that change no current for 1 W.
#include "design/design.hpp"
#include "exposure/surroundings.hpp"
#include "loop/conductor_voltage.hpp"

#include <memory>
#include <mutex>

namespace loopwright::survey::detail {

/// One at a time: lock, then ask. Empty where the model does not solve the loop there.
struct SharedSurroundings {
    mutable std::mutex mutex;
    mutable std::optional<exposure::Surroundings> around;
    /// For 1 W; asked for once (it costs as much as the fields of a thousand points).
    [[nodiscard]] const std::optional<loop::ConductorVoltage>& touch() const;

private:
    mutable bool touch_known_ = false;
    mutable std::optional<loop::ConductorVoltage> touch_;
};

/// kept: remember them (the last 24), or make them for this once. Throws base::Stopped after a stop, read
/// between the steps of the making. Who asks them brings a token of its own: Surroundings::heed().
[[nodiscard]] std::shared_ptr<const SharedSurroundings> surroundings_of(const design::Design& design,
                                                                        units::Frequency frequency, bool kept,
                                                                        const base::StopToken& stop);

} // namespace loopwright::survey::detail
