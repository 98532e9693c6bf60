#include "wire/solver.hpp"

#include "base/error.hpp"
#include "units/constants.hpp"
#include "wire/detail/direct.hpp"
#include "wire/detail/parts.hpp"
#include "wire/detail/port_solve.hpp"
#include "wire/detail/unknowns.hpp"

#include <algorithm>
#include <cmath>

namespace loopwright::wire {

namespace {

using Complex = std::complex<double>;
using units::constants::free_space_impedance_ohm;
using units::constants::pi;

double wavenumber_of(units::Frequency frequency) {
    const double k = 2 * pi * frequency.value() / units::constants::speed_of_light_m_s;
    if (!(k > 0 && std::isfinite(k))) {
        throw base::ProgramError("a frequency must be above 0");
    }
    return k;
}

std::vector<std::vector<detail::SparseEntry>> conductor_forms(const Mesh& mesh) {
    std::vector<std::vector<detail::SparseEntry>> forms(conductor_count(mesh.model()));
    for (const Element& element : mesh.elements()) {
        const auto locals = detail::locals_of(mesh, element);
        for (const auto& u : locals) {
            for (const auto& v : locals) {
                if (v.unknown > u.unknown) {
                    continue;
                }
                const double value = element.length_m * ((u.begin * v.begin + u.end * v.end) / 3 +
                                                         (u.begin * v.end + u.end * v.begin) / 6);
                forms[element.conductor].push_back({u.unknown, v.unknown, value});
            }
        }
    }
    return forms;
}

std::vector<std::vector<double>> weights_of(const Mesh& mesh, const std::vector<Gap>& gaps) {
    std::vector<std::vector<double>> all;
    all.reserve(gaps.size());
    for (const Gap& gap : gaps) {
        all.push_back(detail::to_unknowns(mesh, mesh.weights_of(gap)));
    }
    return all;
}

// The matrix w w^T of a load's weights.
std::vector<detail::SparseEntry> square_form(const std::vector<double>& weights) {
    std::vector<detail::SparseEntry> form;
    for (std::size_t i = 0; i < weights.size(); ++i) {
        for (std::size_t k = 0; k <= i && weights[i] != 0; ++k) {
            if (weights[k] != 0) {
                form.push_back({i, k, weights[i] * weights[k]});
            }
        }
    }
    return form;
}

void check_loading(const Loading& loading, std::size_t conductors, std::size_t loads) {
    if (loading.conductor_ohm_per_m.size() != conductors || loading.load_ohm.size() != loads) {
        throw base::ProgramError("a loading has an entry for every conductor and every load");
    }
    for (const auto* list : {&loading.conductor_ohm_per_m, &loading.load_ohm}) {
        for (const Complex z : *list) {
            if (!(z.real() >= 0 && std::isfinite(z.real()) && std::isfinite(z.imag()))) {
                throw base::ProgramError("a loading's resistances must not be negative");
            }
        }
    }
}

void add_multiple(FieldMatrix& to, Complex factor, const std::vector<detail::SparseEntry>& form) {
    for (const detail::SparseEntry& entry : form) {
        to.re[entry.at()] += factor.real() * entry.value;
        to.im[entry.at()] += factor.imag() * entry.value;
    }
}

void add(FieldMatrix& to, const FieldMatrix& added) {
    if (added.unknowns != to.unknowns || added.re.size() != to.re.size() || added.im.size() != to.im.size()) {
        throw base::ProgramError("an added matrix belongs to another mesh");
    }
    for (std::size_t e = 0; e < to.re.size(); ++e) {
        to.re[e] += added.re[e];
        to.im[e] += added.im[e];
    }
}

} // namespace

Solver::Solver(WireModel model, const MeshOptions& options, units::Frequency highest) {
    auto parts = std::make_shared<Solution::Parts>(
        Solution::Parts{Mesh(std::move(model), options), {}, wavenumber_of(highest), {}, {}, {}, {}});
    const double extent_m = parts->mesh.extent_m();
    // Of a wide loop the series serves the lower frequencies only, but those it does.
    parts->highest_wavenumber = std::min(parts->highest_wavenumber, detail::farthest_wavenumber(extent_m));
    const int power = detail::power_needed(parts->highest_wavenumber, extent_m);
    parts->moments = detail::moments_of(parts->mesh, std::max(2, power));
    parts->conductors = conductor_forms(parts->mesh);
    parts->ports = weights_of(parts->mesh, parts->mesh.model().ports);
    parts->loads = weights_of(parts->mesh, parts->mesh.model().loads);
    for (const std::vector<double>& load : parts->loads) {
        parts->load_forms.push_back(square_form(load));
    }
    parts_ = std::move(parts);
}

const Mesh& Solver::mesh() const {
    return parts_->mesh;
}

FieldMatrix Solver::free_space(units::Frequency frequency) const {
    const double k = wavenumber_of(frequency);
    if (k > parts_->highest_wavenumber * (1 + 1e-12)) {
        return free_space_direct(frequency);
    }
    const detail::Moments& moments = parts_->moments;
    const std::size_t count = moments.unknowns * (moments.unknowns + 1) / 2;
    FieldMatrix field{moments.unknowns, std::vector<double>(count, 0.0), std::vector<double>(count, 0.0)};
    double scale = free_space_impedance_ohm / (4 * pi * k); // times k^n
    for (std::size_t n = 0; n < moments.series.size(); ++n, scale *= k) {
        if (n == 1) {
            continue;
        }
        // -j (-j)^n: -j, -1, +j, +1, ...
        const double factor = n % 4 == 0 || n % 4 == 1 ? -scale : scale;
        std::vector<double>& to = n % 2 == 0 ? field.im : field.re;
        const detail::Packed& from = moments.series[n];
        for (std::size_t e = 0; e < count; ++e) {
            to[e] += factor * from[e];
        }
    }
    return field;
}

FieldMatrix Solver::free_space_direct(units::Frequency frequency) const {
    return detail::direct_matrix(parts_->mesh, parts_->moments, wavenumber_of(frequency));
}

Solution Solver::solve(units::Frequency frequency, const Loading& loading, const FieldMatrix* added) const {
    const Solution::Parts& parts = *parts_;
    check_loading(loading, parts.conductors.size(), parts.loads.size());
    Solution solution;
    solution.parts_ = parts_;
    solution.wavenumber_ = wavenumber_of(frequency);
    solution.loading_ = loading;
    solution.field_ = free_space(frequency);
    if (added != nullptr) {
        add(solution.field_, *added);
    }
    FieldMatrix z = solution.field_;
    for (std::size_t c = 0; c < parts.conductors.size(); ++c) {
        add_multiple(z, loading.conductor_ohm_per_m[c], parts.conductors[c]);
    }
    for (std::size_t l = 0; l < parts.loads.size(); ++l) {
        add_multiple(z, loading.load_ohm[l], parts.load_forms[l]);
    }
    detail::PortCurrents currents = detail::solve_ports(z, parts.ports);
    solution.per_volt_ = std::move(currents.per_volt);
    solution.residual_ = currents.residual;
    solution.admittance_.ports = parts.ports.size();
    for (const std::vector<double>& port : parts.ports) {
        for (std::size_t k = 0; k < parts.ports.size(); ++k) {
            solution.admittance_.y.push_back(detail::weighted(port, &solution.per_volt_[k * z.unknowns]));
        }
    }
    return solution;
}

} // namespace loopwright::wire
