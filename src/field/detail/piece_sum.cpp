#include "field/detail/piece_sum.hpp"

#include "units/constants.hpp"

namespace loopwright::field::detail {

namespace {

using ground::ComplexLanes;
using ground::FieldKernelLanes;
using numeric::Lanes;
using units::constants::free_space_impedance_ohm;
using units::constants::pi;
using Triple = std::array<ComplexLanes, 3>;

[[gnu::always_inline]] inline void add_product(ComplexLanes& sum, const ComplexLanes& a,
                                               const ComplexLanes& b) {
    sum.re += a.re * b.re - a.im * b.im;
    sum.im += a.re * b.im + a.im * b.re;
}
/// sum += factor * a * b, factor real.
[[gnu::always_inline]] inline void add_product(ComplexLanes& sum, const Lanes& factor, const ComplexLanes& a,
                                               const ComplexLanes& b) {
    sum.re += factor * (a.re * b.re - a.im * b.im);
    sum.im += factor * (a.re * b.im + a.im * b.re);
}
[[gnu::always_inline]] inline void multiply(ComplexLanes& product, const ComplexLanes& a,
                                            const ComplexLanes& b) {
    product.re = a.re * b.re - a.im * b.im;
    product.im = a.re * b.im + a.im * b.re;
}

struct RealLanes {
    Lanes re;
};

struct Sums {
    Triple current{}, charge{}, magnetic{};
};

/// exp(-j k R)/R and (1 + j k R)/R^2 of it.
struct Shape {
    ComplexLanes green, slope;
    Lanes inverse; ///< 1/R
    [[gnu::always_inline]] Shape(const Lanes& r_squared, double k) {
        Lanes r, sine, cosine;
        numeric::lanes_sqrt(r_squared, r);
        numeric::lanes_sin_cos(k * r, sine, cosine);
        inverse = 1.0 / r;
        const Lanes phase = k * r;
        green.re = cosine * inverse;
        green.im = -sine * inverse;
        slope.re = (green.re - green.im * phase) * inverse;
        slope.im = (green.im + green.re * phase) * inverse;
    }
};

/// mirrored: the image of perfect ground, which turns horizontal currents and charges round.
[[gnu::always_inline]] inline void add_free(Sums& sums, const Pack& pack, const std::array<double, 3>& at,
                                            double k, bool mirrored) {
    const double side = mirrored ? -1.0 : 1.0;
    const std::array<RealLanes, 3> d{{{at[0] - pack.x}, {at[1] - pack.y}, {at[2] - side * pack.z}}};
    const Shape shape(d[0].re * d[0].re + d[1].re * d[1].re + d[2].re * d[2].re, k);
    const ComplexLanes gradient{shape.slope.re * shape.inverse, shape.slope.im * shape.inverse};
    Triple m = pack.moment_A_m;
    for (std::size_t i = 0; i < 2; ++i) {
        m[i].re *= side;
        m[i].im *= side;
    }
    ComplexLanes charged;
    multiply(charged, pack.charge_current_A, gradient);
    charged.re *= side;
    charged.im *= side;
    for (std::size_t i = 0; i < 3; ++i) {
        add_product(sums.current[i], m[i], shape.green);
        sums.charge[i].re += charged.re * d[i].re;
        sums.charge[i].im += charged.im * d[i].re;
        const std::size_t b = (i + 1) % 3, c = (i + 2) % 3;
        const ComplexLanes crossed{m[b].re * d[c].re - m[c].re * d[b].re,
                                   m[b].im * d[c].re - m[c].im * d[b].re};
        add_product(sums.magnetic[i], gradient, crossed);
    }
}

/// Equations of ground/half_space.hpp, times 4 pi as the free-space part.
[[gnu::always_inline]] inline void add_soil(Sums& sums, const Pack& pack, const std::array<double, 3>& at,
                                            double k, const ground::FieldTable& table) {
    const Lanes dx = at[0] - pack.x, dy = at[1] - pack.y, z_sum = at[2] + pack.z;
    const Lanes rho_squared = dx * dx + dy * dy;
    Lanes rho;
    numeric::lanes_sqrt(rho_squared, rho);
    const auto apart = rho > 0.0;
    const Lanes one = dx * 0.0 + 1.0, none = dx * 0.0;
    const Lanes over_rho = apart ? 1.0 / rho : none;
    const Lanes ex = apart ? dx * over_rho : one, ey = dy * over_rho;
    FieldKernelLanes f;
    table.at(rho, z_sum, f);
    const Shape shape(rho_squared + z_sum * z_sum, k);
    const ComplexLanes potential{4 * pi * shape.green.re, 4 * pi * shape.green.im};
    const ComplexLanes slope{4 * pi * shape.slope.re, 4 * pi * shape.slope.im};
    Triple a, b; // moments with the shape of potentials and of derivatives
    for (std::size_t i = 0; i < 3; ++i) {
        multiply(a[i], pack.moment_A_m[i], potential);
        multiply(b[i], pack.moment_A_m[i], slope);
    }
    const ComplexLanes away_a{ex * a[0].re + ey * a[1].re, ex * a[0].im + ey * a[1].im};
    const ComplexLanes away_b{ex * b[0].re + ey * b[1].re, ex * b[0].im + ey * b[1].im};
    add_product(sums.current[0], f.horizontal, a[0]);
    add_product(sums.current[1], f.horizontal, a[1]);
    add_product(sums.current[0], -ex, f.mixed, a[2]);
    add_product(sums.current[1], -ey, f.mixed, a[2]);
    add_product(sums.current[2], f.vertical, a[2]);
    add_product(sums.current[2], f.mixed, away_a);
    ComplexLanes q; // the constant in front of charges has the other sign here
    multiply(q, pack.charge_current_A, slope);
    add_product(sums.charge[0], -ex, f.scalar_drho, q);
    add_product(sums.charge[1], -ey, f.scalar_drho, q);
    add_product(sums.charge[2], one - 2.0, f.scalar_dz, q);
    ComplexLanes round; // curl of the true vector potential
    multiply(round, f.vertical_true_drho, b[2]);
    const ComplexLanes stretch{f.mixed_drho.re - f.mixed_over_rho.re, f.mixed_drho.im - f.mixed_over_rho.im};
    add_product(round, stretch, away_b);
    const ComplexLanes across{f.mixed_over_rho.re - f.horizontal_dz.re,
                              f.mixed_over_rho.im - f.horizontal_dz.im};
    sums.magnetic[0].re += ey * round.re;
    sums.magnetic[0].im += ey * round.im;
    sums.magnetic[1].re -= ex * round.re;
    sums.magnetic[1].im -= ex * round.im;
    add_product(sums.magnetic[0], across, b[1]);
    add_product(sums.magnetic[1], one - 2.0, across, b[0]);
    add_product(sums.magnetic[2], ex, f.horizontal_drho, b[1]);
    add_product(sums.magnetic[2], -ey, f.horizontal_drho, b[0]);
}

LOOPWRIGHT_TWO_PROCESSORS
void add_all(Sums& sums, const std::vector<const Pack*>& packs, const std::array<double, 3>& at, double k,
             const Below& below, bool with_free) {
    for (const Pack* pack : packs) {
        if (with_free) {
            add_free(sums, *pack, at, k, false);
        }
        if (below.perfect) {
            add_free(sums, *pack, at, k, true);
        } else if (below.table != nullptr) {
            add_soil(sums, *pack, at, k, *below.table);
        }
    }
}

std::complex<double> total(const ComplexLanes& lanes) {
    return {lanes.re[0] + lanes.re[1] + lanes.re[2] + lanes.re[3],
            lanes.im[0] + lanes.im[1] + lanes.im[2] + lanes.im[3]};
}

} // namespace

Field field_of_packs(const std::vector<const Pack*>& packs, const std::array<double, 3>& point_m,
                     double k_rad_m, const Below& below, bool with_free) {
    Sums sums;
    add_all(sums, packs, point_m, k_rad_m, below, with_free);
    const std::complex<double> of_current(0, -k_rad_m * free_space_impedance_ohm / (4 * pi));
    const std::complex<double> of_charge(0, free_space_impedance_ohm / (4 * pi * k_rad_m));
    Field field;
    for (std::size_t i = 0; i < 3; ++i) {
        field.electric_V_m[i] = of_current * total(sums.current[i]) + of_charge * total(sums.charge[i]);
        field.magnetic_A_m[i] = total(sums.magnetic[i]) / (4 * pi);
    }
    return field;
}

} // namespace loopwright::field::detail
