#pragma once
// Leaving deeply nested work after a stop.
#include "base/job.hpp"

namespace loopwright::base {

/// Thrown where a stop is read many calls below the door that took the token; caught at that door, which then
/// returns what it has. It never leaves the function that was given the token. What is remembered between
/// calls is left as it was.
struct Stopped {};

inline void leave_if_stopped(const StopToken& stop) {
    if (stop.stop_requested()) {
        throw Stopped{};
    }
}

} // namespace loopwright::base
