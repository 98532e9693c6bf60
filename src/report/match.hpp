#pragma once
// The match of one frequency, and the sizes of coupling for several, as text, JSON and CSV.
#include "band/band.hpp"
#include "coupling/feed_size.hpp"
#include "coupling/match_report.hpp"
#include "report/page.hpp"
#include "report/table.hpp"
#include "units/quantities.hpp"

#include <string>
#include <vector>

namespace loopwright::report {

/// Keys in docs/reference/cli.md; rules as of point_json.
[[nodiscard]] std::string match_json(const coupling::MatchReport& match, const design::Design& design);
[[nodiscard]] Page match_page(const coupling::MatchReport& match, const design::Design& design);
/// The curve around the match, SI.
[[nodiscard]] Table match_curve_data(const coupling::MatchReport& match);

/// Sizes of coupling for some frequencies (coupling::feed_sizes); bands: a name for each row, empty where it
/// is none. The design is the one that was sized: it has a coupling of that kind.
struct NamedSizes {
    coupling::FeedSize sizes;
    std::vector<std::string> bands;
    units::Resistance line{units::ohms(50)}; ///< what the standing-wave ratios are on
};
[[nodiscard]] std::string coupling_sizes_json(const NamedSizes& named, const design::Design& design);
[[nodiscard]] Page coupling_sizes_page(const NamedSizes& named, const design::Design& design);
[[nodiscard]] Table coupling_sizes_data(const NamedSizes& named);

struct KeyMeaning {
    const char* path;
    const char* meaning;
};
/// For the reference: the keys of match_json and of coupling_sizes_json, `schema` and `notices` left out.
[[nodiscard]] const std::vector<KeyMeaning>& match_keys();
[[nodiscard]] const std::vector<KeyMeaning>& coupling_sizes_keys();

} // namespace loopwright::report
