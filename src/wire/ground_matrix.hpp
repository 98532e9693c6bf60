#pragma once
// What the ground adds to the impedance matrix of wires above it.
#include "ground/soil.hpp"
#include "units/quantities.hpp"
#include "wire/ground_hook.hpp"
#include "wire/solver.hpp"

#include <array>
#include <mutex>
#include <vector>

namespace loopwright::wire {

/// The half-space under the wires: soil, or a perfect conductor.
struct Underground {
    bool perfect = false;
    ground::Soil soil;
    bool operator==(const Underground&) const = default;
};

/// Matrices of a mesh over one ground at any frequency. direct() evaluates the Sommerfeld kernels through a
/// table; at() interpolates direct() in ln f, Chebyshev nodes in panels of a factor 3, filled when first
/// asked for. Thread safe. Equations: docs/theory/ground.md. Range: the lowest point of every centre line at
/// least 5 cm and three wire radii above the ground.
class GroundMatrices {
public:
    /// stand: where the mesh's own coordinates are set up above the ground: its x along right, y along rise,
    /// z along up, from origin; so a mesh is filled once for every height and tilt. Throws base::InputError
    /// ("site.lowest_point") where a wire is too near to the ground.
    GroundMatrices(const Solver& solver, const Underground& underground, const geometry::Frame& stand = {});

    /// Relative error of entries against direct(): below 1e-5 of the largest entry of their kind.
    [[nodiscard]] FieldMatrix at(units::Frequency frequency) const;
    [[nodiscard]] FieldMatrix direct(units::Frequency frequency) const;
    [[nodiscard]] const Underground& underground() const noexcept { return underground_; }

private:
    static constexpr int panels = 17; ///< from 10 kHz, an octave each
    struct Panel {
        std::once_flag filled;
        std::vector<FieldMatrix> at_node;
    };
    void fill(Panel& panel, int number) const;

    GroundPairs pairs_;
    Underground underground_;
    mutable std::array<Panel, panels> panels_;
};

} // namespace loopwright::wire
