#pragma once
// The keys of one operating point in JSON that scripts may rely on, written out on purpose a second time.
#include <nlohmann/json_fwd.hpp>

namespace loopwright::support {

/// Fails the running test for each key that is missing.
void expect_promised(const nlohmann::json& point);

} // namespace loopwright::support
