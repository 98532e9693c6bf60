#pragma once
// Wires cut into elements with a current that varies linearly on each: short where charge varies fast (gaps,
// corners, ends), long elsewhere.
#include "wire/wire_model.hpp"

#include <array>
#include <cstddef>
#include <limits>
#include <vector>

namespace loopwright::wire {

struct MeshOptions {
    int elements_around = 24;         ///< least number on the longest wire, before refinement
    double shortest_wavelength_m = 0; ///< 0: not looked at; else no element is longer than a 24th of it
    double refinement = 1.0;          ///< divides the length of every element
    bool operator==(const MeshOptions&) const = default;
};

inline constexpr std::size_t no_node = std::numeric_limits<std::size_t>::max();

/// A part of one stretch between two nodes; an open wire's end has no node, its current is zero.
struct Element {
    std::size_t wire = 0, stretch = 0, conductor = 0;
    double share_begin = 0, share_end = 0; ///< of the stretch's piece
    double begin_m = 0;                    ///< along the wire
    double length_m = 0;
    double radius_m = 0;
    std::array<std::size_t, 2> node{no_node, no_node};
};

/// A gap's share of each node: the mean over the gap of the node's triangle function.
struct NodeWeight {
    std::size_t node;
    double weight;
};
using NodeWeights = std::vector<NodeWeight>;

class Mesh {
public:
    /// Throws what check() throws; base::ProgramError for options out of range (fewer than 3 elements around,
    /// refinement not above 0); base::InputError where two wires, or two parts of one, touch.
    Mesh(WireModel model, const MeshOptions& options);

    [[nodiscard]] const WireModel& model() const noexcept { return model_; }
    [[nodiscard]] const std::vector<Element>& elements() const noexcept { return elements_; }
    [[nodiscard]] std::size_t nodes() const noexcept { return nodes_; }
    /// First node of a closed wire (no_node: open). Nodes of one wire are consecutive.
    [[nodiscard]] std::size_t first_node(std::size_t wire) const { return first_nodes_.at(wire); }
    /// The wire that a node is on.
    [[nodiscard]] std::size_t wire_of(std::size_t node) const { return wire_of_node_.at(node); }
    /// Place and direction on an element, x from 0 to 1.
    [[nodiscard]] geometry::Vector3 point(const Element& element, double x) const;
    [[nodiscard]] geometry::Vector3 tangent(const Element& element, double x) const;
    [[nodiscard]] NodeWeights weights_of(const Gap& gap) const;
    /// Diagonal of the box around all wires [m].
    [[nodiscard]] double extent_m() const noexcept { return extent_m_; }

private:
    void add_wire(std::size_t index, const std::vector<double>& places_m);

    WireModel model_;
    std::vector<Element> elements_;
    std::vector<std::size_t> first_nodes_;
    std::vector<std::size_t> wire_of_node_;
    std::size_t nodes_ = 0;
    double extent_m_ = 0;
};

} // namespace loopwright::wire
