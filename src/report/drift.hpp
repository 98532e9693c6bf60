#pragma once
// Drift as text, JSON and CSV.
#include "report/match.hpp"
#include "report/page.hpp"
#include "report/table.hpp"
#include "tuning/drift.hpp"

#include <string>
#include <vector>

namespace loopwright::report {

struct NamedDrift {
    std::string band; ///< empty: none
    tuning::DriftReport report;
};
struct DriftAnswer {
    std::vector<NamedDrift> rows;
    double rise_K = 0;
};

/// Keys in docs/reference/cli.md.
[[nodiscard]] std::string drift_json(const DriftAnswer& answer, const design::Design& design);
[[nodiscard]] Page drift_page(const DriftAnswer& answer, const design::Design& design);
/// A row for each frequency and cause, SI.
[[nodiscard]] Table drift_data(const DriftAnswer& answer);
[[nodiscard]] const std::vector<KeyMeaning>& drift_keys();

} // namespace loopwright::report
