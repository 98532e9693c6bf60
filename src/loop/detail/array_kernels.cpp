// Compiled without the library's error number for roots, which would keep them out of the vector unit: see
// src/CMakeLists.txt.
#include "loop/detail/array_kernels.hpp"

#include <cmath>

#if defined(__GNUC__) && !defined(__clang__) && defined(__x86_64__) && !defined(__SANITIZE_ADDRESS__)
#define LOOPWRIGHT_WIDE __attribute__((target_clones("avx2,fma", "default")))
#else
#define LOOPWRIGHT_WIDE
#endif

namespace loopwright::loop::detail {

namespace {

// Of one Gauss point of the first span with one of the second: 1/R and the cosine.
struct Term {
    double inverse, cosine;
};

} // namespace

LOOPWRIGHT_WIDE void sum_pairs(const double* columns, std::size_t count, std::size_t row, std::size_t from,
                               std::size_t to, double shift_m2, double margin_m, const PairRow& out) {
    double* __restrict scalar = out.scalar_m;
    double* __restrict vector = out.vector_m;
    double* __restrict clearance = out.clearance_m2;
    const double* const __restrict second = columns + second_sample * count;
    const double* const __restrict middle = columns + middle_of_span * count;
    const double* const __restrict lengths = columns + length_of_span * count;
    double own[span_columns];
    for (std::size_t c = 0; c < span_columns; ++c) {
        own[c] = columns[c * count + row];
    }
    const double own_length = own[length_of_span];
#pragma omp simd
    for (std::size_t j = from; j < to; ++j) {
        const auto term = [&](const double* at, const double* p) {
            const double x = at[j] - p[0];
            const double y = at[count + j] - p[1];
            const double z = at[2 * count + j] - p[2];
            return Term{1 / std::sqrt(x * x + y * y + z * z + shift_m2),
                        at[3 * count + j] * p[3] + at[4 * count + j] * p[4] + at[5 * count + j] * p[5]};
        };
        const Term t00 = term(columns, own);
        const Term t01 = term(second, own);
        const Term t10 = term(columns, own + second_sample);
        const Term t11 = term(second, own + second_sample);
        const double weight = 0.25 * lengths[j] * own_length;
        scalar[j] = weight * (t00.inverse + t01.inverse + t10.inverse + t11.inverse);
        vector[j] = weight * (t00.inverse * t00.cosine + t01.inverse * t01.cosine + t10.inverse * t10.cosine +
                              t11.inverse * t11.cosine);
        const double x = middle[j] - own[middle_of_span];
        const double y = middle[count + j] - own[middle_of_span + 1];
        const double z = middle[2 * count + j] - own[middle_of_span + 2];
        const double longer = lengths[j] > own_length ? lengths[j] : own_length;
        const double by_length = 2.4 * longer;
        const double by_margin = longer + margin_m;
        const double least = by_length > by_margin ? by_length : by_margin;
        clearance[j] = x * x + y * y + z * z - least * least;
    }
}

LOOPWRIGHT_WIDE void add_pairs(PairBlock& block, const double* columns, std::size_t count, std::size_t images,
                               std::size_t row, std::size_t from, std::size_t to, double shift_m2) {
    double own[node_columns];
    for (std::size_t c = 0; c < node_columns; ++c) {
        own[c] = columns[c * count + row];
    }
    const std::size_t size = to - from;
    const auto distances = [&](const double* at, double* __restrict distance, double* __restrict element) {
#pragma omp simd
        for (std::size_t n = 0; n < size; ++n) {
            const double x = at[n] - own[0];
            const double y = at[count + n] - own[1];
            const double z = at[2 * count + n] - own[2];
            distance[n] = std::sqrt(x * x + y * y + z * z + shift_m2);
            element[n] = at[3 * count + n] * own[3] + at[4 * count + n] * own[4] + at[5 * count + n] * own[5];
        }
    };
    distances(columns + from, block.distance_m.data() + block.size, block.element_m2.data() + block.size);
    if (images > 0) {
        distances(columns + from + images, block.image_m.data() + block.size,
                  block.image_element_m2.data() + block.size);
    }
    const auto both_orders = [&](std::size_t one, std::size_t other, double* __restrict product) {
        const double* const a = columns + one * count + from;
        const double* const b = columns + other * count + from;
        const double own_a = own[one];
        const double own_b = own[other];
#pragma omp simd
        for (std::size_t n = 0; n < size; ++n) {
            product[n] = own_a * b[n] + own_b * a[n];
        }
        product[0] *= from == row ? 0.5 : 1.0;
    };
    const auto with_uniform = [&](std::size_t one, double* __restrict product) {
        const double* const a = columns + one * count + from;
        const double own_a = own[one];
#pragma omp simd
        for (std::size_t n = 0; n < size; ++n) {
            product[n] = own_a + a[n];
        }
        product[0] *= from == row ? 0.5 : 1.0;
    };
    double* const uniform = block.current[0].data() + block.size;
    for (std::size_t n = 0; n < size; ++n) {
        uniform[n] = 2;
    }
    uniform[0] = from == row ? 1.0 : 2.0;
    constexpr std::size_t u = shapes_of_node;
    constexpr std::size_t q = charges_of_node;
    with_uniform(u, block.current[1].data() + block.size);
    with_uniform(u + 1, block.current[2].data() + block.size);
    both_orders(u, u, block.current[3].data() + block.size);
    both_orders(u, u + 1, block.current[4].data() + block.size);
    both_orders(u + 1, u + 1, block.current[5].data() + block.size);
    both_orders(q, q, block.charge[0].data() + block.size);
    both_orders(q, q + 1, block.charge[1].data() + block.size);
    both_orders(q + 1, q + 1, block.charge[2].data() + block.size);
    block.size += size;
}

LOOPWRIGHT_WIDE void sum_powers(const PairBlock& block, bool images, std::size_t powers, double* current,
                                double* charge) {
    const std::size_t size = block.size;
    PairBlock::Column power;
    PairBlock::Column image_power;
    PairBlock::Column element;
    PairBlock::Column potential;
    for (std::size_t n = 0; n < size; ++n) {
        power[n] = image_power[n] = 1;
    }
    for (std::size_t p = 0; p < powers; ++p) {
        if (images) {
#pragma omp simd
            for (std::size_t n = 0; n < size; ++n) {
                element[n] = block.element_m2[n] * power[n] + block.image_element_m2[n] * image_power[n];
                potential[n] = power[n] - image_power[n];
                power[n] *= block.distance_m[n];
                image_power[n] *= block.image_m[n];
            }
        } else {
#pragma omp simd
            for (std::size_t n = 0; n < size; ++n) {
                element[n] = block.element_m2[n] * power[n];
                potential[n] = power[n];
                power[n] *= block.distance_m[n];
            }
        }
        double* const to = current + p * PairBlock::current_products;
        double s0 = 0, s1 = 0, s2 = 0, s3 = 0, s4 = 0, s5 = 0, q0 = 0, q1 = 0, q2 = 0;
#pragma omp simd reduction(+ : s0, s1, s2, s3, s4, s5, q0, q1, q2)
        for (std::size_t n = 0; n < size; ++n) {
            s0 += element[n] * block.current[0][n];
            s1 += element[n] * block.current[1][n];
            s2 += element[n] * block.current[2][n];
            s3 += element[n] * block.current[3][n];
            s4 += element[n] * block.current[4][n];
            s5 += element[n] * block.current[5][n];
            q0 += potential[n] * block.charge[0][n];
            q1 += potential[n] * block.charge[1][n];
            q2 += potential[n] * block.charge[2][n];
        }
        const double sums[] = {s0, s1, s2, s3, s4, s5};
        for (std::size_t e = 0; e < PairBlock::current_products; ++e) {
            to[e] += sums[e];
        }
        charge[p * PairBlock::charge_products] += q0;
        charge[p * PairBlock::charge_products + 1] += q1;
        charge[p * PairBlock::charge_products + 2] += q2;
    }
}

LOOPWRIGHT_WIDE void sum_direction(const double* columns, std::size_t count, const double* n,
                                   const double* up, const double* across, std::size_t terms, double* to) {
    constexpr std::size_t block = 128;
    double along[block], first[block], second[block];
    const double* const u = columns + shapes_of_node * count;
    const double* const v = u + count;
    for (std::size_t from = 0; from < count; from += block) {
        const std::size_t size = count - from < block ? count - from : block;
        const double* const at = columns + from;
#pragma omp simd
        for (std::size_t i = 0; i < size; ++i) {
            along[i] = at[i] * n[0] + at[count + i] * n[1] + at[2 * count + i] * n[2];
            first[i] = at[3 * count + i] * up[0] + at[4 * count + i] * up[1] + at[5 * count + i] * up[2];
            second[i] =
                at[3 * count + i] * across[0] + at[4 * count + i] * across[1] + at[5 * count + i] * across[2];
        }
        for (std::size_t m = 0; m < terms; ++m) {
            const double share = 1 / double(m + 1);
            double a0 = 0, a1 = 0, a2 = 0, b0 = 0, b1 = 0, b2 = 0;
#pragma omp simd reduction(+ : a0, a1, a2, b0, b1, b2)
            for (std::size_t i = 0; i < size; ++i) {
                a0 += first[i];
                a1 += first[i] * u[from + i];
                a2 += first[i] * v[from + i];
                b0 += second[i];
                b1 += second[i] * u[from + i];
                b2 += second[i] * v[from + i];
                first[i] *= along[i] * share;
                second[i] *= along[i] * share;
            }
            double* const one = to + 3 * m;
            double* const other = to + 3 * (terms + m);
            one[0] += a0;
            one[1] += a1;
            one[2] += a2;
            other[0] += b0;
            other[1] += b1;
            other[2] += b2;
        }
    }
}

} // namespace loopwright::loop::detail
