#include "base/error.hpp"
#include "wire/detail/parts.hpp"
#include "wire/solver.hpp"

#include <numeric>

namespace loopwright::wire {

using Complex = std::complex<double>;

double PowerParts::total_W() const {
    return std::accumulate(load_W.begin(), load_W.end(),
                           std::accumulate(conductor_W.begin(), conductor_W.end(), field_W));
}

const Mesh& Solution::mesh() const {
    return parts_->mesh;
}

Currents Solution::currents(std::span<const Complex> port_V) const {
    const std::size_t n = parts_->mesh.nodes();
    if (port_V.size() != parts_->ports.size()) {
        throw base::ProgramError("one voltage is needed for each port");
    }
    Currents currents{wavenumber_, std::vector<Complex>(n, 0.0), {}};
    for (std::size_t p = 0; p < port_V.size(); ++p) {
        for (std::size_t i = 0; i < n; ++i) {
            currents.unknown_A[i] += port_V[p] * per_volt_[p * n + i];
        }
    }
    currents.node_A = currents.unknown_A;
    for (std::size_t i = 0; i < n; ++i) {
        const std::size_t uniform = parts_->mesh.first_node(parts_->mesh.wire_of(i));
        if (uniform != no_node && uniform != i) {
            currents.node_A[i] += currents.unknown_A[uniform];
        }
    }
    return currents;
}

PowerParts Solution::powers(const Currents& currents) const {
    PowerParts power;
    const auto& x = currents.unknown_A;
    std::size_t at = 0;
    for (std::size_t i = 0; i < x.size(); ++i) {
        for (std::size_t k = 0; k <= i; ++k, ++at) {
            const double product = (x[i] * std::conj(x[k])).real();
            power.field_W += (i == k ? 1.0 : 2.0) * field_.re[at] * product;
        }
    }
    for (std::size_t c = 0; c < parts_->conductors.size(); ++c) {
        double sum = 0;
        for (const detail::SparseEntry& e : parts_->conductors[c]) {
            sum += (e.row == e.column ? 1.0 : 2.0) * e.value * (x[e.row] * std::conj(x[e.column])).real();
        }
        power.conductor_W.push_back(sum * loading_.conductor_ohm_per_m[c].real());
    }
    for (std::size_t l = 0; l < parts_->loads.size(); ++l) {
        power.load_W.push_back(std::norm(detail::weighted(parts_->loads[l], x.data())) *
                               loading_.load_ohm[l].real());
    }
    return power;
}

Complex Solution::current_at(const Currents& currents, const Gap& gap) const {
    Complex sum = 0;
    for (const NodeWeight& w : parts_->mesh.weights_of(gap)) {
        sum += w.weight * currents.node_A[w.node];
    }
    return sum;
}

} // namespace loopwright::wire
