#pragma once
// The unknowns of the matrix: currents at nodes, except that the first node of every closed wire stands for a
// uniform current around that wire and the others for what they carry beyond it. A uniform current has no
// charge, exactly; so the huge 1/(omega eps) terms do not drown the small inductive and radiative ones,
// however low the frequency.
#include "wire/mesh.hpp"

#include <algorithm>
#include <vector>

namespace loopwright::wire::detail {

/// What an unknown of 1 A makes on one element: current begin at x = 0 and end at x = 1.
struct LocalCurrent {
    std::size_t unknown = 0;
    double begin = 0, end = 0;
    [[nodiscard]] double charge() const noexcept { return end - begin; } ///< times -1/(j omega length)
};

/// All unknowns with current on an element: up to three.
[[nodiscard]] inline std::vector<LocalCurrent> locals_of(const Mesh& mesh, const Element& element) {
    const std::size_t uniform = mesh.first_node(element.wire);
    std::vector<LocalCurrent> locals;
    if (uniform != no_node) {
        locals.push_back({uniform, 1, 1});
    }
    for (std::size_t side = 0; side < 2; ++side) {
        const std::size_t node = element.node[side];
        if (node != no_node && node != uniform) {
            locals.push_back({node, side == 0 ? 1.0 : 0.0, side == 0 ? 0.0 : 1.0});
        }
    }
    return locals;
}

/// Weights over nodes turned into weights over unknowns (dense).
[[nodiscard]] inline std::vector<double> to_unknowns(const Mesh& mesh, const NodeWeights& weights) {
    std::vector<double> dense(mesh.nodes(), 0.0);
    for (const NodeWeight& w : weights) {
        const std::size_t uniform = mesh.first_node(mesh.wire_of(w.node));
        dense[w.node] += w.weight;
        if (uniform != no_node && w.node != uniform) {
            dense[uniform] += w.weight;
        }
    }
    return dense;
}

/// What one pair of elements adds to the packed lower triangle: take(index, u, v, factor) for each pair of
/// unknowns on them, each once where both lie on one element; factor 2 where both sides of a symmetric sum
/// fall on one diagonal entry.
template <typename Take>
void for_each_entry(const std::vector<LocalCurrent>& of_p, const std::vector<LocalCurrent>& of_q, bool same,
                    Take take) {
    for (const LocalCurrent& u : of_p) {
        for (const LocalCurrent& v : of_q) {
            if (same && v.unknown > u.unknown) {
                continue;
            }
            const std::size_t row = std::max(u.unknown, v.unknown);
            const std::size_t column = std::min(u.unknown, v.unknown);
            take(row * (row + 1) / 2 + column, u, v, !same && row == column ? 2.0 : 1.0);
        }
    }
}

} // namespace loopwright::wire::detail
