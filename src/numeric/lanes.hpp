#pragma once
// Four numbers at once: elementary functions without branches, for sums over very many short pieces.
//
// GCC's and clang's vector extension: one instruction each where the function that uses them is compiled for
// AVX2 (target_clones), two otherwise. Only references cross calls, and everything is inlined.
#include <cstdint>

namespace loopwright::numeric {

inline constexpr int lane_count = 4;
// Aligned as SSE wants: without AVX the compiler gives structures no more, and the other half must not count
// on it.
using Lanes = double __attribute__((vector_size(32), aligned(16)));
using LaneBits = std::int64_t __attribute__((vector_size(32), aligned(16)));
using LaneWords = std::uint64_t __attribute__((vector_size(32), aligned(16)));

// For functions that work on lanes: compiled for two processors, chosen when the program starts. (The
// sanitizers are not ready yet at that moment.)
#if defined(__x86_64__) && defined(__GNUC__) && !defined(__clang__) && !defined(__SANITIZE_ADDRESS__)
#define LOOPWRIGHT_TWO_PROCESSORS __attribute__((target_clones("avx2,fma", "default")))
#else
#define LOOPWRIGHT_TWO_PROCESSORS
#endif

/// root = sqrt(x), x >= 0.
[[gnu::always_inline]] inline void lanes_sqrt(const Lanes& x, Lanes& root) {
    for (int i = 0; i < lane_count; ++i) {
        root[i] = __builtin_sqrt(x[i]);
    }
}

/// value = log(x), x > 0 and normal; to 1e-10. Series of the inverse hyperbolic tangent, M. Abramowitz and
/// I. A. Stegun, Handbook of Mathematical Functions, 4.1.27.
[[gnu::always_inline]] inline void lanes_log(const Lanes& x, Lanes& value) {
    constexpr std::uint64_t mantissa = 0x000FFFFFFFFFFFFF, one = 0x3FF0000000000000,
                            two_to_52 = 0x4330000000000000;
    const LaneWords bits = __builtin_bit_cast(LaneWords, x);
    Lanes exponent = __builtin_bit_cast(Lanes, (bits >> 52) | two_to_52) - (4503599627370496.0 + 1023.0);
    Lanes m = __builtin_bit_cast(Lanes, (bits & mantissa) | one);
    const LaneBits above = m > 1.4142135623730951;
    m = above ? 0.5 * m : m;
    exponent = above ? exponent + 1.0 : exponent;
    const Lanes f = (m - 1.0) / (m + 1.0), s = f * f;
    const Lanes series =
        1.0 + s * (1.0 / 3 + s * (1.0 / 5 + s * (1.0 / 7 + s * (1.0 / 9 + s * (1.0 / 11 + s / 13.0)))));
    value = exponent * 0.6931471805599453 + 2.0 * f * series;
}

/// sin(x) and cos(x), |x| up to 1e5; to 1e-9. Taylor series (Abramowitz and Stegun 4.3.65, 4.3.66) within an
/// eighth of a turn.
[[gnu::always_inline]] inline void lanes_sin_cos(const Lanes& x, Lanes& sine, Lanes& cosine) {
    constexpr double to_whole = 6755399441055744.0; // 1.5 * 2^52: adding it rounds
    const Lanes shifted = x * 0.6366197723675814 + to_whole;
    const LaneBits quarter = __builtin_bit_cast(LaneBits, shifted);
    const Lanes n = shifted - to_whole;
    const Lanes r = x - n * 1.5707963267948966 - n * 6.123233995736766e-17, s = r * r;
    const Lanes sin_r =
        r *
        (1.0 + s * (-1.0 / 6 + s * (1.0 / 120 + s * (-1.0 / 5040 + s * (1.0 / 362880 - s / 39916800.0)))));
    const Lanes cos_r =
        1.0 + s * (-0.5 + s * (1.0 / 24 + s * (-1.0 / 720 +
                                               s * (1.0 / 40320 + s * (-1.0 / 3628800 + s / 479001600.0)))));
    const LaneBits odd = (quarter & 1) == 1;
    const Lanes sin_q = odd ? cos_r : sin_r, cos_q = odd ? sin_r : cos_r;
    sine = __builtin_bit_cast(Lanes, __builtin_bit_cast(LaneBits, sin_q) ^ ((quarter & 2) << 62));
    cosine = __builtin_bit_cast(Lanes, __builtin_bit_cast(LaneBits, cos_q) ^ (((quarter + 1) & 2) << 62));
}

} // namespace loopwright::numeric
