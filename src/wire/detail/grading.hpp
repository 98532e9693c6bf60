#pragma once
// How long the elements of one wire are: short at the places that ask for it, growing evenly away from them.
#include <vector>

namespace loopwright::wire::detail {

/// Between from_m and to_m elements of about size_m are wanted.
struct Focus {
    double from_m = 0, to_m = 0, size_m = 0;
};

struct Grading {
    double length_m = 0;
    bool closed = true;
    std::vector<double> breaks_m; ///< places that have to be nodes, 0 and the length understood
    std::vector<Focus> foci;
    double base_m = 0;     ///< no element is longer
    double growth = 0.8;   ///< of an element's length per metre of distance from a focus
    double refinement = 1; ///< divides all lengths
};

/// Ascending node places from 0 to the length, both included.
[[nodiscard]] std::vector<double> graded_nodes(const Grading& grading);

} // namespace loopwright::wire::detail
