#pragma once
// The field of very many point sources at one place, four at a time.
#include "field/detail/source_tree.hpp"

namespace loopwright::field::detail {

/// What the packs' images or the soil add; neither in free space.
struct Below {
    const ground::FieldTable* table = nullptr; ///< soil
    bool perfect = false;
};

/// For the currents as they are (the loop's 1 A). with_free: the free-space part too. The same sums as
/// add_ground_part() and, for free space, docs/theory/wire.md: constants, signs and phases as there.
[[nodiscard]] Field field_of_packs(const std::vector<const Pack*>& packs,
                                   const std::array<double, 3>& point_m, double k_rad_m, const Below& below,
                                   bool with_free);

} // namespace loopwright::field::detail
