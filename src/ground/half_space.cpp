#include "ground/half_space.hpp"

#include "base/error.hpp"
#include "ground/imaginary_unit.hpp"
#include "units/constants.hpp"

#include <algorithm>
#include <boost/math/quadrature/gauss.hpp>
#include <cmath>

namespace loopwright::ground {

namespace {

using Complex = std::complex<double>;
using units::constants::pi;
constexpr int gauss_points = 16;
constexpr double phase_per_panel_rad = 6.0; // of J0(kr rho) at the largest rho: 16 points hold 1e-11 of it
constexpr double exponent_end = 40.0;       // exp(-40) = 4e-18
constexpr double ring_phase_per_panel_rad = 9.0; // 16 points hold 1e-8 of it
constexpr double ring_exponent_end = 20.0;       // exp(-20) = 2e-9

/// Root with the wave decaying into the soil (Im <= 0).
Complex decaying_root(Complex square) {
    const Complex root = std::sqrt(square);
    return root.imag() > 0 || (root.imag() == 0 && root.real() < 0) ? -root : root;
}

/// Panel edges of [0, end], growing by `ratio` from `first`, none wider than `widest`.
std::vector<double> graded_edges(double end, double first, double ratio, double widest) {
    std::vector<double> edges{0.0};
    double width = std::min({first, widest, end});
    while (edges.back() < end) {
        edges.push_back(std::min(end, edges.back() + width));
        width = std::min(width * ratio, widest);
    }
    if (edges.size() > 2 && edges.back() - edges[edges.size() - 2] < 1e-3 * width) {
        edges.erase(edges.end() - 2);
    }
    return edges;
}

/// Splits panels near `centre` until they are no wider than a third of their distance from it (or `finest`).
std::vector<double> graded_at(std::vector<double> edges, double centre, double finest) {
    std::vector<double> out{edges.front()};
    for (std::size_t i = 1; i < edges.size(); ++i) {
        std::vector<double> pending{edges[i]};
        while (!pending.empty()) {
            const double a = out.back();
            const double b = pending.back();
            const double distance = std::max({a - centre, centre - b, 0.0});
            if (b - a > std::max(finest, distance) && b - a > finest) {
                pending.push_back(0.5 * (a + b));
            } else {
                out.push_back(b);
                pending.pop_back();
            }
        }
    }
    return out;
}

} // namespace

HalfSpace::HalfSpace(double wavenumber_rad_m, Complex permittivity, double rho_max_m, double z_min_m,
                     double fineness)
    : k0_(wavenumber_rad_m), eps_(permittivity) {
    if (!(z_min_m > 0) || !(rho_max_m >= 0) || !(wavenumber_rad_m > 0)) {
        throw base::ProgramError(
            "HalfSpace: z_min_m and wavenumber_rad_m must be positive, rho_max_m not negative");
    }
    Plan plan;
    plan.fineness = fineness;
    plan.finest = 0.25 * k0_ / std::max(1.0, std::sqrt(std::abs(eps_))) / fineness;
    plan.widest = std::min(phase_per_panel_rad / std::max(rho_max_m, 1e-9), 1e9) / fineness;
    plan.kappa_end = exponent_end / z_min_m;
    make_nodes(plan);
}

HalfSpace::HalfSpace(double wavenumber_rad_m, Complex permittivity, Ring ring, double z_min_m)
    : k0_(wavenumber_rad_m), eps_(permittivity) {
    if (!(z_min_m > 0) || !(ring.rho_min_m >= 0) || !(ring.rho_max_m > ring.rho_min_m) ||
        !(wavenumber_rad_m > 0)) {
        throw base::ProgramError("HalfSpace: a ring needs z_min_m > 0 and 0 <= rho_min_m < rho_max_m");
    }
    Plan plan;
    plan.finest = 0.5 * k0_ / std::max(1.0, std::sqrt(std::abs(eps_)));
    plan.widest = ring_phase_per_panel_rad / ring.rho_max_m;
    plan.kappa_end = ring_exponent_end / z_min_m;
    if (ring.rho_min_m > 0) {
        const double half_width = 9.0 / ring.rho_min_m;
        const double centre = std::sqrt(std::abs(eps_)) * k0_ + 4.5 * half_width;
        const double end = centre + 4.5 * half_width;
        if (end < plan.kappa_end) {
            plan.kappa_end = end;
            plan.window_at = centre;
            plan.window = half_width;
        }
    }
    make_nodes(plan);
}

// kr dkr = -kz dkz, so that (1/2pi) Int f E/(2j kz) J0 kr dkr = (1/4pi j) Int f E J0 dkz: nothing singular.
void HalfSpace::add_node(Complex kz, double kr, Complex weight) {
    const Complex kz2 = decaying_root(eps_ * k0_ * k0_ - kr * kr);
    const Complex tm = kz2 + eps_ * kz;
    const Complex te = kz + kz2;
    const Complex w = 2.0 * (eps_ - 1.0) / (tm * te);
    const Complex ge = (kz2 - eps_ * kz) / tm;
    const Complex gh = (kz - kz2) / te;
    const Complex common = weight / (4.0 * pi * j);
    nodes_.push_back({kr, std::abs(weight * kz), kz, common * gh, common * (kz * kz * w - ge),
                      weight * w * kr * kz / (4.0 * pi), common * (ge - k0_ * k0_ * w), common * -ge});
}

std::vector<double> HalfSpace::decaying_edges(const Plan& plan) const {
    std::vector<double> edges = graded_edges(plan.kappa_end, plan.finest, 2.0, plan.widest);
    const double turn = std::sqrt(std::max(0.0, (eps_.real() - 1.0))) * k0_;
    if (turn > 0 && turn < plan.kappa_end) {
        const double blur = std::max(std::abs(eps_.imag()) * k0_ * k0_ / (2.0 * turn), 1e-4 * turn);
        edges = graded_at(std::move(edges), turn, std::max(0.5 * blur, 1e-6 * turn) / plan.fineness);
    }
    return edges;
}

void HalfSpace::make_nodes(const Plan& plan) {
    const auto& x = boost::math::quadrature::gauss<double, gauss_points>::abscissa();
    const auto& g = boost::math::quadrature::gauss<double, gauss_points>::weights();
    const auto over_panels = [&](const std::vector<double>& edges, const auto& at) {
        for (std::size_t i = 1; i < edges.size(); ++i) {
            const double half = 0.5 * (edges[i] - edges[i - 1]);
            const double mid = 0.5 * (edges[i] + edges[i - 1]);
            for (std::size_t n = 0; n < x.size(); ++n) {
                at(mid - half * x[n], half * g[n]);
                at(mid + half * x[n], half * g[n]);
            }
        }
    };
    // Waves that travel: kz from 0 (grazing) to k0.
    over_panels(graded_edges(k0_, plan.finest, 2.0, std::min(plan.widest, k0_)),
                [&](double kz, double weight) {
                    add_node(kz, std::sqrt(std::max(0.0, k0_ * k0_ - kz * kz)), weight);
                });
    // Waves that decay: kz = -j kappa; kr dkr = kappa dkappa, and 1/(2j kz) = 1/(2 kappa): weight -j for dkz.
    over_panels(decaying_edges(plan), [&](double kappa, double weight) {
        const double kept = plan.window > 0 ? 0.5 * std::erfc((kappa - plan.window_at) / plan.window) : 1.0;
        add_node(-j * kappa, std::sqrt(k0_ * k0_ + kappa * kappa), j * (kept * weight));
    });
}

PotentialKernels HalfSpace::potentials(double rho_m, double z_sum_m) const {
    PotentialKernels sum{};
    for (const Node& node : nodes_) {
        const Complex e = std::exp(-j * node.kz * z_sum_m);
        const Complex e0 = e * ::j0(node.kr * rho_m);
        sum.horizontal += node.horizontal * e0;
        sum.vertical += node.vertical * e0;
        sum.scalar += node.scalar * e0;
        sum.mixed += node.mixed * e * ::j1(node.kr * rho_m);
    }
    return sum;
}

FieldKernels HalfSpace::fields(double rho_m, double z_sum_m) const {
    FieldKernels sum{};
    sum.potential = potentials(rho_m, z_sum_m);
    for (const Node& node : nodes_) {
        const double x = node.kr * rho_m;
        const double bessel0 = ::j0(x);
        const double bessel1 = ::j1(x);
        const double bessel1_over_x = x < 1e-4 ? 0.5 - x * x / 16.0 : bessel1 / x;
        const Complex e = std::exp(-j * node.kz * z_sum_m);
        const Complex drho = -node.kr * bessel1 * e;
        const Complex dz = -j * node.kz * bessel0 * e;
        sum.scalar_drho += node.scalar * drho;
        sum.scalar_dz += node.scalar * dz;
        sum.horizontal_drho += node.horizontal * drho;
        sum.horizontal_dz += node.horizontal * dz;
        sum.vertical_true_drho += node.vertical_true * drho;
        sum.mixed_over_rho += node.mixed * (node.kr * bessel1_over_x) * e;
        sum.mixed_drho += node.mixed * node.kr * (bessel0 - bessel1_over_x) * e;
    }
    return sum;
}

} // namespace loopwright::ground
