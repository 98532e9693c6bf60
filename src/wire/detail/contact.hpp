#pragma once
#include "wire/mesh.hpp"

namespace loopwright::wire::detail {

/// Throws base::InputError where the surfaces of two wires meet, or of two parts of one wire that lie more
/// than four times the sum of their radii apart along it.
void refuse_contact(const Mesh& mesh);

} // namespace loopwright::wire::detail
