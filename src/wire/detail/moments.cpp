#include "wire/detail/moments.hpp"

#include "wire/detail/clones.hpp"
#include "wire/detail/kernel.hpp"
#include "wire/detail/site_pairs.hpp"
#include "wire/detail/unknowns.hpp"

#include <algorithm>
#include <array>
#include <cmath>

namespace loopwright::wire::detail {

namespace {

constexpr std::size_t width = highest_power_possible + 1;
constexpr std::size_t half_width = width / 2;
using Half = std::array<double, half_width>; ///< of the even or of the odd powers: power n at n / 2

constexpr std::array<double, width + 2> inverse = [] {
    std::array<double, width + 2> made{};
    for (std::size_t n = 1; n < made.size(); ++n) {
        made[n] = 1.0 / static_cast<double>(n);
    }
    return made;
}();

// Integrals over one pair of elements of the kernels R^(n-1)/n! of all powers n of one parity: with tangents
// and one of the four products of the two linear functions, and alone (charges).
struct PairSums {
    std::array<Half, 4> current; ///< begin-begin, begin-end, end-begin, end-end
    Half charge;
};

LOOPWRIGHT_WIDE void add(PairSums& sums, const Half& kernel, const Site& s, const Site& t,
                         std::size_t count) {
    const double along = dot(s.tangent, t.tangent);
    const std::array<double, 4> products{along * (1 - s.x) * (1 - t.x), along * (1 - s.x) * t.x,
                                         along * s.x * (1 - t.x), along * s.x * t.x};
    for (std::size_t n = 0; n < count; ++n) {
        sums.charge[n] += kernel[n];
        for (std::size_t i = 0; i < 4; ++i) {
            sums.current[i][n] += products[i] * kernel[n];
        }
    }
}

// Even powers: odd powers of the distance, and the static kernel.
class EvenSums {
public:
    explicit EvenSums(std::size_t powers) : powers_(powers) {}

    void begin(double radius1_m, double radius2_m) {
        radius1_ = radius1_m;
        radius2_ = radius2_m;
        sums_ = {};
    }

    void operator()(const Site& s, const Site& t, double weight) {
        const geometry::Vector3 between = s.point - t.point;
        const double square = dot(between, between) + radius1_ * radius1_ + radius2_ * radius2_;
        Half kernel;
        kernel[0] = weight * static_kernel(between, s.tangent, t.tangent, radius1_, radius2_);
        double power = 0.5 * weight * std::sqrt(square);
        for (std::size_t n = 2; n < powers_; n += 2) {
            kernel[n / 2] = power;
            power *= square * inverse[n + 1] * inverse[n + 2];
        }
        add(sums_, kernel, s, t, (powers_ + 1) / 2);
    }

    // The rule of an element with itself covers half of the square.
    void add_mirror_half() {
        for (std::size_t i = 0; i < half_width; ++i) {
            const double mixed = sums_.current[1][i] + sums_.current[2][i];
            sums_.current[0][i] *= 2;
            sums_.current[3][i] *= 2;
            sums_.current[1][i] = sums_.current[2][i] = mixed;
            sums_.charge[i] *= 2;
        }
    }

    [[nodiscard]] const PairSums& sums() const { return sums_; }

private:
    std::size_t powers_;
    double radius1_ = 0, radius2_ = 0;
    PairSums sums_{};
};

// Odd powers: even powers of the distance, polynomials. All pairs take the same points of an element, so that
// the part that must vanish around a closed wire (a constant kernel) does, and radiation is not lost in it.
// The distance is that of the axes: radiation is that of the axes' currents, and the wire's thickness, of
// order (k a)^2, is left out of it here as in the far field.
PairSums odd_sums(const std::vector<Site>& one, const std::vector<Site>& other, std::size_t powers) {
    PairSums sums{};
    for (const Site& s : one) {
        for (const Site& t : other) {
            const geometry::Vector3 between = s.point - t.point;
            const double square = dot(between, between);
            Half kernel;
            double power = s.weight_m * t.weight_m;
            for (std::size_t n = 1; n < powers; n += 2) {
                kernel[n / 2] = power;
                power *= square * inverse[n + 1] * inverse[n + 2];
            }
            add(sums, kernel, s, t, powers / 2);
        }
    }
    return sums;
}

// B_n of one pair and one pair of unknowns: charges of power n, currents of power n - 2.
void add_entry(double* to, const PairSums& even, const PairSums& odd, const LocalCurrent& u,
               const LocalCurrent& v, double inverse_area, double factor, std::size_t powers) {
    const double charge = factor * u.charge() * v.charge() * inverse_area;
    const std::array<double, 4> c{factor * u.begin * v.begin, factor * u.begin * v.end,
                                  factor * u.end * v.begin, factor * u.end * v.end};
    to[0] += charge * even.charge[0];
    for (std::size_t n = 2; n < powers; ++n) {
        const PairSums& sums = n % 2 == 0 ? even : odd;
        double currents = 0;
        for (std::size_t i = 0; i < 4; ++i) {
            currents += c[i] * sums.current[i][n / 2 - 1];
        }
        to[n] += charge * sums.charge[n / 2] + currents;
    }
}

Moments unpack(const std::vector<double>& entries, std::size_t unknowns, std::size_t powers) {
    Moments moments{unknowns, std::vector<Packed>(powers)};
    const std::size_t count = unknowns * (unknowns + 1) / 2;
    for (std::size_t n = 0; n < powers; ++n) {
        if (n == 1) {
            continue; // a constant kernel between charges that sum to zero
        }
        moments.series[n].resize(count);
        for (std::size_t e = 0; e < count; ++e) {
            moments.series[n][e] = entries[e * powers + n];
        }
    }
    return moments;
}

} // namespace

Moments moments_of(const Mesh& mesh, int highest_power) {
    const std::size_t unknowns = mesh.nodes();
    const auto powers = static_cast<std::size_t>(highest_power) + 1;
    std::vector<double> entries(unknowns * (unknowns + 1) / 2 * powers, 0.0);
    const SiteCache cache(mesh);
    EvenSums even(powers);
    PairWalk walk(mesh, cache, even);
    const auto& elements = mesh.elements();
    std::vector<std::vector<LocalCurrent>> locals;
    locals.reserve(elements.size());
    for (const Element& element : elements) {
        locals.push_back(locals_of(mesh, element));
    }
    for (std::size_t p = 0; p < elements.size(); ++p) {
        for (std::size_t q = 0; q <= p; ++q) {
            even.begin(elements[p].radius_m, elements[q].radius_m);
            walk.walk(p, q);
            if (p == q) {
                even.add_mirror_half();
            }
            const PairSums odd = odd_sums(cache.sites(p, 4), cache.sites(q, 4), powers);
            const double inverse_area = 1.0 / (elements[p].length_m * elements[q].length_m);
            for_each_entry(locals[p], locals[q], p == q,
                           [&](std::size_t at, const LocalCurrent& u, const LocalCurrent& v, double factor) {
                               add_entry(&entries[at * powers], even.sums(), odd, u, v, inverse_area, factor,
                                         powers);
                           });
        }
    }
    return unpack(entries, unknowns, powers);
}

int power_needed(double wavenumber_rad_m, double extent_m) {
    const double kr = wavenumber_rad_m * extent_m;
    const double wanted = 1e-11 * std::min(1.0, std::pow(kr, 5) / 120);
    double term = kr * kr / 2;
    for (int n = 2; n < highest_power_possible; n += 2) {
        if (term * kr / (n + 1) < wanted) {
            return n;
        }
        term *= kr * kr / ((n + 1) * (n + 2));
    }
    return 0;
}

double farthest_wavenumber(double extent_m) {
    double reached = 0, beyond = highest_power_possible; // k R: far beyond every series of that many powers
    while (beyond - reached > 1e-3) {
        const double middle = 0.5 * (reached + beyond);
        (power_needed(middle, 1) > 0 ? reached : beyond) = middle;
    }
    return reached / extent_m;
}

} // namespace loopwright::wire::detail
