#pragma once
// The match of one frequency, and the sizes of coupling for several, as text, JSON and CSV.
#include "band/band.hpp"
#include "coupling/coupling_size.hpp"
#include "coupling/match_report.hpp"
#include "report/page.hpp"
#include "report/table.hpp"

#include <string>
#include <vector>

namespace loopwright::report {

/// Keys in docs/reference/cli.md; rules as of point_json.
[[nodiscard]] std::string match_json(const coupling::MatchReport& match, const design::Design& design);
[[nodiscard]] Page match_page(const coupling::MatchReport& match, const design::Design& design);
/// The curve around the match, SI.
[[nodiscard]] Table match_curve_data(const coupling::MatchReport& match);

/// Sizes of coupling for some frequencies; bands: a name for each row, empty where it is none.
struct NamedSizes {
    coupling::CouplingSizes sizes;
    std::vector<std::string> bands;
};
[[nodiscard]] std::string coupling_sizes_json(const NamedSizes& named, const design::Design& design);
[[nodiscard]] Page coupling_sizes_page(const NamedSizes& named, const design::Design& design);
[[nodiscard]] Table coupling_sizes_data(const NamedSizes& named);

/// Wire and offset that sizes of coupling loops are looked for with.
[[nodiscard]] design::Coupling kept_coupling(const design::Design& design);

struct KeyMeaning {
    const char* path;
    const char* meaning;
};
/// For the reference: the keys of match_json and of coupling_sizes_json, `schema` and `notices` left out.
[[nodiscard]] const std::vector<KeyMeaning>& match_keys();
[[nodiscard]] const std::vector<KeyMeaning>& coupling_sizes_keys();

} // namespace loopwright::report
