// The solver against the independent full-wave cases in free space (tests/reference/data, provenance there),
// within the limits that file states.
#include "support/compared.hpp"
#include "support/fullwave_cases.hpp"
#include "units/constants.hpp"
#include "wire/far_field.hpp"
#include "wire/loops.hpp"
#include "wire/near_field.hpp"
#include "wire/samples.hpp"

#include <cmath>
#include <gtest/gtest.h>

namespace loopwright::wire::testing {
namespace {

using units::constants::free_space_impedance_ohm;
using units::constants::pi;
constexpr double accepted_W = 10.0; // all fields of the cases are at this power

class FreeSpaceCase : public ::testing::TestWithParam<support::FullwaveCase> {
protected:
    void SetUp() override {
        const auto& one = GetParam();
        const Solver solver(model_of(one), {}, units::hertz(one.in("f")));
        solution_ = solver.solve(units::hertz(one.in("f")), loading_of(one));
        tuned_ = tune(solution_, one.in("cap_Q"), one.in("r_contact"));
    }
    /// Proximity between turns is left out of the case; its powers at 10 W hold for our own losses then.
    [[nodiscard]] bool series_drive() const { return GetParam().text("drive") != "coupling loop"; }

    Solution solution_;
    Tuned tuned_;
};

TEST_P(FreeSpaceCase, CapacitanceResistanceAndVoltage) {
    const support::Compared table("full-wave-cases", "Wire solver in free space");
    const auto& one = GetParam();
    const double c_pF = tuned_.capacitance_F * 1e12;
    const double wanted_pF = one.out(series_drive() ? "C_pF" : "C_drive_port_open_pF");
    table.amount(one.id, series_drive() ? "C [pF]" : "C, drive open [pF]", c_pF, wanted_pF,
                 0.003 * wanted_pF + 0.4);
    if (!series_drive()) {
        return; // its resistances include what the coupling loop adds
    }
    table.share(one.id, "R total [ohm]", tuned_.total_ohm(), one.out("R_total"), 0.005);
    table.share(one.id, "R radiation [ohm]", tuned_.radiation_ohm, one.out("R_rad_sky"), 0.005);
    table.share(one.id, "R conductor [ohm]", tuned_.conductor_ohm, one.out("R_conductor"), 0.005);
    table.share(one.id, "efficiency", tuned_.efficiency(), one.out("efficiency"), 0.005);
    const double amperes = std::sqrt(accepted_W / tuned_.total_ohm());
    table.share(one.id, "V rms at 10 W", tuned_.capacitor_V_per_A * amperes, one.out("Vcap_rms_10W"), 0.005);
    table.share(one.id, "I rms at 10 W", amperes, one.out("I_ref_rms_10W"), 0.005);
}

TEST_P(FreeSpaceCase, FieldsNearBy) {
    const support::Compared table("full-wave-cases", "Near fields in free space");
    const auto& one = GetParam();
    if (!series_drive()) {
        return;
    }
    const double amperes = std::sqrt(accepted_W / one.out("R_total"));
    for (const auto& near : one.near_fields()) {
        const std::string at = support::place_text(near.position_m);
        const auto& [x, y, z] = near.position_m;
        const NearField field = near_field(solution_.mesh(), tuned_.per_ampere, {x, y, z});
        table.share(one.id, "E" + at, field.electric_rms_V_m() * amperes, near.electric_rms, 0.015);
        table.share(one.id, "H" + at, field.magnetic_rms_A_m() * amperes, near.magnetic_rms, 0.01);
    }
}

TEST_P(FreeSpaceCase, GainInEveryDirection) {
    const support::Compared table("full-wave-cases", "Gain in free space");
    const auto& one = GetParam();
    if (!series_drive()) {
        return;
    }
    const auto pieces = current_elements(solution_.mesh(), tuned_.per_ampere);
    const double k = solution_.wavenumber_rad_m();
    for (const auto& gain : one.gains()) {
        const auto field =
            far_field(pieces, k, (90 - gain.elevation_deg) * pi / 180, gain.azimuth_deg * pi / 180);
        const double intensity = std::norm(field.e_theta_V) + std::norm(field.e_phi_V);
        const double ours =
            10 * std::log10(4 * pi * intensity / free_space_impedance_ohm / one.out("R_total"));
        table.amount(one.id, support::direction_text(gain), ours, gain.gain_dBi, 0.05);
    }
}

TEST_P(FreeSpaceCase, PowerBalance) {
    const auto& one = GetParam();
    EXPECT_NEAR(tuned_.input_ohm.real() / tuned_.total_ohm(), 1, 1e-10);
    const auto pieces = current_elements(solution_.mesh(), tuned_.per_ampere);
    EXPECT_NEAR(radiated_power_W(pieces, solution_.wavenumber_rad_m()) / tuned_.radiation_ohm, 1, 2e-6)
        << one.id;
}

/// A drive at the coupling loop, the capacitor set for the least VSWR.
TEST(CoupledDrive, VoltageCurrentAndVswr) {
    const support::Compared table("full-wave-cases", "Coupling loop: wire solver");
    for (const auto& one : support::fullwave_cases()) {
        if (!one.free_space() || !one.has("Dc")) {
            continue;
        }
        const units::Frequency frequency = units::hertz(one.in("f"));
        const double omega = 2 * pi * one.in("f");
        const Solver solver(model_of(one), {}, frequency);
        const Solution solution = solver.solve(frequency, loading_of(one));
        const auto load = [&](double c) {
            return capacitor_S(omega, c, one.in("cap_Q"), one.in("r_contact"));
        };
        const auto input = [&](double c) { // port 0 is only a place to look at: shorted
            const PortMatrix& y = solution.admittance();
            return 1.0 / (y.at(2, 2) - y.at(2, 1) * y.at(1, 2) / (y.at(1, 1) + load(c)));
        };
        const auto mismatch = [&](double c) { return std::abs((input(c) - 50.0) / (input(c) + 50.0)); };
        const double near = one.out("C_pF") * 1e-12; // a dip much narrower than the span searched
        double best = near;
        double least = 1;
        for (int i = -2000; i <= 2000; ++i) {
            const double c = near * (1 + 5e-6 * i);
            if (const double here = mismatch(c); here < least) {
                least = here;
                best = c;
            }
        }
        table.amount(one.id, "C [pF]", best * 1e12, one.out("C_pF"), 0.003 * one.out("C_pF") + 0.4);

        const std::vector<Complex> volts{
            0.0, solution.admittance().terminated_voltage({0.0, 0.0, 1.0}, 1, load(best)), 1.0};
        const Currents currents = solution.currents(volts);
        const Complex amperes = solution.current_at(currents, solver.mesh().model().ports[2]);
        const double accepted = amperes.real();
        const double reference = std::abs(solution.current_at(currents, solver.mesh().model().ports[0]));
        const double scale = std::sqrt(accepted_W / accepted);
        table.share(one.id, "V rms at 10 W", std::abs(volts[1]) * scale, one.out("Vcap_rms_10W"), 0.005);
        table.share(one.id, "I rms at 10 W", reference * scale, one.out("I_ref_rms_10W"), 0.005);
        const PowerParts power = solution.powers(currents);
        table.share(one.id, "R radiation [ohm]", power.field_W / (reference * reference),
                    one.out("R_rad_sky"), 0.005);
        table.share(one.id, "efficiency", power.field_W / accepted, one.out("efficiency"), 0.005);
        // The mutual part of two wires side by side is taken at their axes here, coaxially in the case: 2 %
        // in the square of the mutual inductance at these distances.
        const double vswr = (1 + least) / (1 - least);
        table.share(one.id, "VSWR", vswr, one.out("SWR_Z0"), 0.04);
    }
}

std::vector<support::FullwaveCase> free_space_cases() {
    std::vector<support::FullwaveCase> chosen;
    for (const auto& one : support::fullwave_cases()) {
        if (one.free_space()) {
            chosen.push_back(one);
        }
    }
    return chosen;
}

INSTANTIATE_TEST_SUITE_P(All, FreeSpaceCase, ::testing::ValuesIn(free_space_cases()), [](const auto& chosen) {
    std::string name = chosen.param.id;
    std::erase(name, '-');
    return name;
});

} // namespace
} // namespace loopwright::wire::testing
