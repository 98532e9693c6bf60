#pragma once
// The loops over arrays that a geometry's preparation spends its time in. Plain pointers: compiled for wider
// vector units too.
#include <array>
#include <cstddef>

namespace loopwright::loop::detail {

/// Spans as columns of equal length, one after the other. Lengths in m.
enum SpanColumn : std::size_t {
    first_sample,        ///< x, y, z and tangent x, y, z of the first Gauss point
    second_sample = 6,   ///< the same of the second
    middle_of_span = 12, ///< x, y, z
    length_of_span = 15,
    span_columns = 16
};

/// Where a row of span pairs goes, by the number of the second span.
struct PairRow {
    double* scalar_m;     ///< double integral of 1 / sqrt(R^2 + shift), two Gauss points in each span
    double* vector_m;     ///< the same times the cosine between the directions
    double* clearance_m2; ///< at most 0 where the middles are nearer than 2.4 lengths of the longer span or
                          ///< one of them and `margin`
};

/// Pairs of span `row` with the spans from `from` to `to` - 1. columns: as above, each `count` long.
void sum_pairs(const double* columns, std::size_t count, std::size_t row, std::size_t from, std::size_t to,
               double shift_m2, double margin_m, const PairRow& out);

/// Nodes of a path as columns of equal length, one after the other: place, current element (x, y, z each),
/// the two currents that are not uniform, and their charges.
enum NodeColumn : std::size_t {
    place_of_node = 0,
    element_of_node = 3,
    shapes_of_node = 6,
    charges_of_node = 8,
    node_columns = 10
};

/// Pairs of nodes, one block of them: their distances with the elements and charges that belong to each.
struct PairBlock {
    static constexpr std::size_t capacity = 256;
    static constexpr std::size_t current_products = 6, charge_products = 3;
    using Column = std::array<double, capacity>;
    std::size_t size = 0;
    Column distance_m, image_m;          ///< R of the pair, and of the first with the second's image
    Column element_m2, image_element_m2; ///< product of the current elements
    /// f_i f_k + f_k f_i by entry(), q_i q_k + q_k q_i of 11 12 22: both orders of a pair; once for a node
    /// with itself.
    std::array<Column, current_products> current;
    std::array<Column, charge_products> charge;
};

/// Adds the pairs of node `row` with the nodes from `from` to `to` - 1 to a block that has room for them.
/// columns: as above, each `count` long. images: 0, or how many rows below a node its image stands.
void add_pairs(PairBlock& block, const double* columns, std::size_t count, std::size_t images,
               std::size_t row, std::size_t from, std::size_t to, double shift_m2);

/// Sums over a block of element R^p f_i f_k and R^p q_i q_k (the images' added for currents, taken off for
/// charges), p from 0 to `powers` - 1, added to current[p * 6 ...] and charge[p * 3 ...].
void sum_powers(const PairBlock& block, bool images, std::size_t powers, double* current, double* charge);

/// Sums over all nodes of (element . e) (n . place)^m / m! times 1 and the two shapes, for m from 0 to
/// `terms` - 1 and the polarisations e = up, across: to[(polarisation * terms + m) * 3 ...]. n, up, across:
/// x, y, z each.
void sum_direction(const double* columns, std::size_t count, const double* n, const double* up,
                   const double* across, std::size_t terms, double* to);

} // namespace loopwright::loop::detail
