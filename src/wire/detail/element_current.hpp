#pragma once
#include "wire/solver.hpp"

#include <array>
#include <complex>

namespace loopwright::wire::detail {

/// Currents at the two ends of an element; zero at an open wire's end [A].
[[nodiscard]] inline std::array<std::complex<double>, 2> end_currents(const Element& element,
                                                                      const Currents& currents) {
    const auto at = [&](std::size_t node) {
        return node == no_node ? std::complex<double>(0) : currents.node_A[node];
    };
    return {at(element.node[0]), at(element.node[1])};
}

} // namespace loopwright::wire::detail
