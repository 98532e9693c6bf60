// The ground's matrix: perfect ground against an image made of wire, soil against the independent cases and
// by the balance of power.
#include "ground/power_flux.hpp"
#include "ground/soil.hpp"
#include "support/compared.hpp"
#include "support/fullwave_cases.hpp"
#include "units/constants.hpp"
#include "wire/ground_hook.hpp"
#include "wire/loops.hpp"
#include "wire/samples.hpp"

#include <cmath>
#include <gtest/gtest.h>

namespace loopwright::wire::testing {
namespace {

using units::constants::free_space_impedance_ohm;
using units::constants::pi;

double wavenumber(double f_Hz) {
    return 2 * pi * f_Hz / units::constants::speed_of_light_m_s;
}

TEST(PerfectGround, IsAnImageMadeOfWire) {
    const support::Compared table("theory", "Perfect ground is an image made of wire");
    const double f = 21.2e6, height = 1.1, slope = 0.6; // tilted: all three kernels
    const geometry::Vector3 up{0, std::sin(slope), std::cos(slope)};
    const geometry::Vector3 mirrored{0, std::sin(slope), -std::cos(slope)};
    WireModel alone{
        {circle({0, 0, height}, {1, 0, 0}, up, 1.0, 0.004)}, {{0, 0, 0.02}, {0, pi / 3, 0.02}}, {}};
    WireModel both = alone;
    both.wires.push_back(circle({0, 0, -height}, {1, 0, 0}, mirrored, 1.0, 0.004));
    both.ports.push_back({1, 0, 0.02});
    both.ports.push_back({1, pi / 3, 0.02});
    const Solver one(alone, {}, units::hertz(f));
    const Solver two(both, {}, units::hertz(f));
    const GroundPairs pairs(one.mesh());
    const FieldMatrix image = pairs.matrix(wavenumber(f), PerfectGround(wavenumber(f)));
    const PortMatrix over = one.solve(units::hertz(f), {{{0.01, 0.01}}, {}}, &image).admittance();
    const PortMatrix pair = two.solve(units::hertz(f), {{{0.01, 0.01}}, {}}).admittance();
    for (std::size_t i = 0; i < 2; ++i) {
        for (std::size_t k = 0; k < 2; ++k) {
            // The mirrored wire runs the same way in x and y: its current is the opposite one.
            const Complex wanted = pair.at(i, k) - pair.at(i, k + 2);
            const std::string ports = std::to_string(i + 1) + std::to_string(k + 1);
            table.share("tilted loop at 21.2 MHz", "B" + ports + " [S]", over.at(i, k).imag(), wanted.imag(),
                        1e-5);
            table.share("tilted loop at 21.2 MHz", "G" + ports + " [S]", over.at(i, k).real(), wanted.real(),
                        1e-4);
        }
    }
}

class GroundCase : public ::testing::TestWithParam<support::FullwaveCase> {
protected:
    void SetUp() override {
        const auto& one = GetParam();
        const units::Frequency frequency = units::hertz(one.in("f"));
        const double k = wavenumber(one.in("f"));
        soil_ = ground::complex_permittivity({one.in("eps_r"), units::siemens_per_metre(one.in("sigma_g"))},
                                             frequency);
        const Solver solver(model_of(one), {}, frequency);
        const GroundPairs pairs(solver.mesh());
        const ground::HalfSpaceTable table(k, soil_, pairs.greatest_rho_m() * 1.001, pairs.least_z_sum_m(),
                                           pairs.greatest_z_sum_m());
        const FieldMatrix added = pairs.matrix(k, TabulatedGround(table));
        solution_ = solver.solve(frequency, loading_of(one), &added);
        tuned_ = tune(solution_, one.in("cap_Q"), one.in("r_contact"));
        pieces_ = current_elements(solver.mesh(), tuned_.per_ampere);
        sky_ohm_ = ground::sky_power_W(pieces_, k, soil_);
    }
    Complex soil_;
    Solution solution_;
    Tuned tuned_; // its radiation_ohm is sky and ground together
    std::vector<ground::CurrentElement> pieces_;
    double sky_ohm_ = 0;
};

TEST_P(GroundCase, CapacitanceAndWhereThePowerGoes) {
    const support::Compared table("full-wave-cases", "Wire solver over ground");
    const auto& one = GetParam();
    const bool coupled = one.has("Dc");
    const double wanted_pF = one.out(coupled ? "C_drive_port_open_pF" : "C_pF");
    table.amount(one.id, coupled ? "C, drive open [pF]" : "C [pF]", tuned_.capacitance_F * 1e12, wanted_pF,
                 0.003 * wanted_pF + 0.4);
    if (coupled) {
        return;
    }
    table.share(one.id, "R total [ohm]", tuned_.total_ohm(), one.out("R_total"), 0.005);
    table.share(one.id, "R to the sky [ohm]", sky_ohm_, one.out("R_rad_sky"), 0.005);
    table.share(one.id, "R of the ground [ohm]", (tuned_.radiation_ohm - sky_ohm_), one.out("R_ground"),
                0.01);
    const double amperes = std::sqrt(10.0 / tuned_.total_ohm());
    table.share(one.id, "V rms at 10 W", tuned_.capacitor_V_per_A * amperes, one.out("Vcap_rms_10W"), 0.005);
}

TEST_P(GroundCase, SkyAndSoilTakeWhatTheWireGivesUp) {
    const double soil_ohm = ground::ground_power_W(pieces_, solution_.wavenumber_rad_m(), soil_);
    const support::Compared table("power-balance", "Independent cases over ground");
    table.share(GetParam().id, "sky + ground [ohm]", sky_ohm_ + soil_ohm, tuned_.radiation_ohm, 1e-4);
}

TEST_P(GroundCase, GainInEveryDirection) {
    const support::Compared table("full-wave-cases", "Gain over ground");
    const auto& one = GetParam();
    if (one.has("Dc")) {
        return;
    }
    for (const auto& gain : one.gains()) {
        const auto field =
            ground::far_field(pieces_, solution_.wavenumber_rad_m(), soil_,
                              (90 - gain.elevation_deg) * pi / 180, gain.azimuth_deg * pi / 180);
        const double intensity = std::norm(field.e_theta_V) + std::norm(field.e_phi_V);
        const double ours =
            10 * std::log10(4 * pi * intensity / free_space_impedance_ohm / one.out("R_total"));
        table.amount(one.id, support::direction_text(gain), ours, gain.gain_dBi, 0.05);
    }
}

std::vector<support::FullwaveCase> ground_cases() {
    std::vector<support::FullwaveCase> chosen;
    for (const auto& one : support::fullwave_cases()) {
        if (!one.free_space()) {
            chosen.push_back(one);
        }
    }
    return chosen;
}

INSTANTIATE_TEST_SUITE_P(All, GroundCase, ::testing::ValuesIn(ground_cases()), [](const auto& chosen) {
    std::string name = chosen.param.id;
    std::erase(name, '-');
    return name;
});

} // namespace
} // namespace loopwright::wire::testing
