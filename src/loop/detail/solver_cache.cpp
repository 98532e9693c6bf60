#include "loop/detail/solver_cache.hpp"

#include "base/recent.hpp"
#include "wire/wire_model.hpp"

#include <vector>

namespace loopwright::loop::detail {

namespace {

using Numbers = std::vector<double>;

Numbers numbers_of(const geometry::Winding& w, double radius_m, double refinement) {
    return {static_cast<double>(w.outline),
            static_cast<double>(w.sides),
            w.size.value(),
            static_cast<double>(w.measure),
            w.width.value(),
            w.height.value(),
            w.corner_down ? 1.0 : 0.0,
            static_cast<double>(w.turns),
            static_cast<double>(w.arrangement),
            w.spacing.value(),
            w.lead.value(),
            w.gap.value(),
            radius_m,
            refinement};
}

struct GroundKey {
    std::shared_ptr<const wire::Solver> solver; ///< held, so that its address stays its own
    wire::Underground underground;
    Numbers stand;
    bool operator==(const GroundKey&) const = default;
};

struct SolvedKey {
    std::shared_ptr<const wire::Solver> solver;
    std::shared_ptr<const wire::GroundMatrices> ground;
    bool ground_directly;
    bool operator==(const SolvedKey&) const = default;
};

Numbers numbers_of(const geometry::Frame& f) {
    return {f.origin.x, f.origin.y, f.origin.z, f.right.x, f.right.y, f.right.z,
            f.up.x,     f.up.y,     f.up.z,     f.rise.x,  f.rise.y,  f.rise.z};
}

} // namespace

std::shared_ptr<const wire::Solver> solver_of(const geometry::Winding& winding, double radius_m,
                                              double refinement) {
    static base::Recent<Numbers, wire::Solver> recent(8);
    return recent.get(numbers_of(winding, radius_m, refinement), [&] {
        const geometry::WirePath path = geometry::wire_path(winding);
        wire::WireModel model;
        model.wires.push_back(wire::wire_along(path, radius_m));
        model.ports = {wire::opposite_gap(path), wire::capacitor_gap(path)};
        wire::MeshOptions options;
        options.refinement = refinement;
        return std::make_shared<const wire::Solver>(std::move(model), options,
                                                    units::hertz(highest_series_Hz));
    });
}

std::shared_ptr<const wire::GroundMatrices> ground_of(const std::shared_ptr<const wire::Solver>& solver,
                                                      const wire::Underground& underground,
                                                      const geometry::Frame& stand, Workload workload) {
    static base::Recent<GroundKey, wire::GroundMatrices> recent(8), passing(8);
    return (workload == Workload::passing ? passing : recent)
        .get({solver, underground, numbers_of(stand)},
             [&] { return std::make_shared<const wire::GroundMatrices>(*solver, underground, stand); });
}

std::shared_ptr<const SolvedFrequencies>
solved_frequencies_of(const std::shared_ptr<const wire::Solver>& solver,
                      const std::shared_ptr<const wire::GroundMatrices>& ground, Workload workload) {
    const bool ground_directly = workload != Workload::many_frequencies;
    if (workload == Workload::passing) {
        return std::make_shared<const SolvedFrequencies>(solver, ground, ground_directly);
    }
    static base::Recent<SolvedKey, SolvedFrequencies> recent(3); // up to 30 MB each
    return recent.get({solver, ground, ground_directly}, [&] {
        return std::make_shared<const SolvedFrequencies>(solver, ground, ground_directly);
    });
}

} // namespace loopwright::loop::detail
