#include "base/error.hpp"
#include "geometry/winding.hpp"
#include "loop/closed_form.hpp"
#include "loop/designs.hpp"
#include "loop/detail/loop_series.hpp"
#include "loop/resonator.hpp"
#include "support/compared.hpp"
#include "units/constants.hpp"

#include <fstream>
#include <gtest/gtest.h>
#include <nlohmann/json.hpp>

namespace loopwright::loop {
namespace {

using support::Case;
using units::constants::pi;

void expect_relative(double value, double wanted, double tolerance, const std::string& what) {
    EXPECT_NEAR(value / wanted - 1, 0, tolerance) << what << ": " << value << " against " << wanted;
}

OperatingPoint point_of(const design::Design& design, double frequency_Hz, double power_W = 10,
                        double vswr = 2) {
    return make_model(design, Model::closed_form)
        ->at(units::hertz(frequency_Hz), units::watts(power_W), vswr);
}

} // namespace

// Reference: independent Fourier series solution of the tuned circular loop (independent_cases.json,
// fullwave-01 to -09). Its resistances are referred to the capacitor's current. Demanded are 1 % + 0.5 pF in
// C and 1.5 % in R up to 0.15 wavelengths; what the model states of itself is narrower and is tested here up
// to 0.30 wavelengths, together with the thin-wire inductance of the reference (0.1 % of C).
TEST(ClosedForm, AgreesWithTheSeriesTheoryOfCircularLoops) {
    const support::Compared table("independent-cases", "Closed form and the Fourier series of tuned loops");
    int compared = 0;
    for (const Case& c : support::independent_cases("fullwave")) {
        if (!c.has_output("R_total_at_capacitor")) {
            continue;
        }
        ++compared;
        design::Design design = design_of(c);
        design.loop.gap = units::metres(c.input("gap_width"));
        const OperatingPoint point = point_of(design, c.input("frequency"), c.input("power"));
        ASSERT_TRUE(point.resonance) << c.id;
        const Resonance& r = *point.resonance;
        const double ratio = c.output("I_cap_rms") / c.output("I_opposite_rms");
        table.amount(c.id, "C [pF]", r.tuning_capacitance.value() * 1e12, c.output("C") * 1e12,
                     0.001 * c.output("C") * 1e12 + 0.1);
        const double tolerance = closed_form_relative_error(point.perimeter_in_wavelengths, 1);
        table.share(c.id, "R", r.resistance.total().value(), c.output("R_total_at_capacitor") * ratio * ratio,
                    tolerance);
        table.share(c.id, "radiation", r.resistance.radiation.value(),
                    c.output("R_rad_at_capacitor") * ratio * ratio, tolerance);
        table.share(c.id, "conductor", r.resistance.conductor.value(),
                    c.output("R_loss_at_capacitor") * ratio * ratio, tolerance);
        table.share(c.id, "efficiency", r.efficiency, c.output("efficiency"), 0.0005);
        table.share(c.id, "V", r.capacitor_voltage_rms.value(), c.output("V_cap_rms"), tolerance);
        table.share(c.id, "I", r.loop_current_rms.value(), c.output("I_opposite_rms"), tolerance);
        table.share(c.id, "ratio", r.loop_current_rms / r.capacitor_current_rms, 1 / ratio, tolerance);
        table.share(c.id, "Q", r.q_unloaded, c.output("Q_Z"), tolerance);
    }
    EXPECT_EQ(compared, 9);
}

// fullwave-13 and -14: polygons by an independent method of moments, its gap one segment wide.
TEST(ClosedForm, AgreesWithTheMethodOfMomentsOnPolygons) {
    const support::Compared table("independent-cases", "Closed form and polygons by the method of moments");
    int compared = 0;
    for (const Case& c : support::independent_cases("fullwave")) {
        if (!c.has_input("n")) {
            continue;
        }
        ++compared;
        design::Design design = design_of(c);
        design.loop.gap = units::metres(c.input("n") == 8 ? 0.100 : 0.125);
        const OperatingPoint point = point_of(design, c.input("frequency"), c.input("power"));
        ASSERT_TRUE(point.resonance) << c.id;
        const Resonance& r = *point.resonance;
        table.amount(c.id, "C [pF]", r.tuning_capacitance.value() * 1e12, c.output("C") * 1e12,
                     0.01 * c.output("C") * 1e12 + 0.4);
        table.share(c.id, "efficiency", r.efficiency, c.output("efficiency"), 0.003);
        table.share(c.id, "Q", r.q_unloaded, c.output("Q_Z"), 0.003);
        table.share(c.id, "V", r.capacitor_voltage_rms.value(), c.output("V_cap_rms"), 0.003);
    }
    EXPECT_EQ(compared, 2);
}

// independent_fullwave_cases.json, the ones in free space driven opposite the capacitor: circles, an octagon,
// a square, a two-turn stack (whose conductor loss has no proximity there). Limits of that file for the same
// gap: C 0.3 % + 0.4 pF, resistance and voltage 0.5 %, gain 0.05 dB; held tighter where the closed form does
// so.
TEST(ClosedForm, AgreesWithTheFullWaveCasesInFreeSpace) {
    std::ifstream file(LOOPWRIGHT_SOURCE_DIR "/tests/reference/data/independent_fullwave_cases.json");
    const auto all = nlohmann::json::parse(file);
    const support::Compared table("full-wave-cases", "Closed form in free space");
    int compared = 0;
    for (const auto& c : all.at("cases")) {
        const auto& in = c.at("in");
        const auto& out = c.at("out");
        if (in.at("ground") != "free" || in.at("drive") == "coupling loop") {
            continue;
        }
        ++compared;
        const std::string shape = in.at("shape");
        design::Design d;
        if (shape != "circle") {
            d.loop.outline = design::Outline::polygon;
            d.loop.sides = shape == "square" ? 4 : 8;
            d.loop.size_is = design::SizeMeaning::across_flats;
        }
        d.loop.size = units::metres(in.at("D"));
        d.loop.gap = units::metres(in.at("gap"));
        d.loop.turns = in.value("turns", 1);
        d.loop.turn_spacing = units::metres(in.value("turn_spacing", 0.03));
        d.loop.lead = units::metres(in.value("lead", 0.05));
        d.conductor.form = design::ConductorForm::wire;
        d.conductor.diameter = units::metres(2 * in.at("a").get<double>());
        d.conductor.metal.name = "";
        d.capacitor.loss.q = in.at("cap_Q").get<double>();
        d.capacitor.contact_resistance = units::ohms(in.at("r_contact"));
        const OperatingPoint point = point_of(d, in.at("f"));
        const std::string id = c.at("id");
        ASSERT_TRUE(point.resonance) << id;
        const Resonance& r = *point.resonance;
        const double capacitance = out.at("C_pF").get<double>() * 1e-12;
        table.amount(id, "C [pF]", r.tuning_capacitance.value() * 1e12, capacitance * 1e12,
                     0.001 * capacitance * 1e12 + 0.1);
        table.share(id, "radiation", r.resistance.radiation.value(), out.at("R_rad_sky"), 0.001);
        table.share(id, "conductor", r.resistance.conductor.value(), out.at("R_conductor"), 0.0025);
        table.share(id, "capacitor", r.resistance.capacitor.value(), out.at("R_cap"), 0.0015);
        table.share(id, "R", r.resistance.total().value(), out.at("R_total"), 0.001);
        table.share(id, "V", r.capacitor_voltage_rms.value(), out.at("Vcap_rms_10W"), 0.001);
        table.share(id, "bandwidth", r.bandwidth_vswr.value(), out.at("bw_swr2_Hz"), 0.0015);
        ASSERT_TRUE(r.gain_max && r.gain_low_angle);
        table.amount(id, "gain [dBi]", r.gain_max->value, out.at("gain_max_dBi").get<double>(), 0.01);
        const auto& gains = out.at("gain_dBi"); // the third elevation is 15 degrees
        const double low =
            std::max(gains.at("az0").at(2).get<double>(), gains.at("az90").at(2).get<double>());
        table.amount(id, "gain at 15 degrees [dBi]", r.gain_low_angle->value, low, 0.02);
    }
    EXPECT_EQ(compared, 9);
}

// lumped-01 to -05: a textbook chain with one uniform current, which this model is at low frequency: its
// inductance, its conductor loss with proximity, and the Q and bandwidth that follow.
TEST(ClosedForm, IsTheTextbookChainAtLowFrequency) {
    const std::vector<Case> cases = support::independent_cases("lumped");
    ASSERT_EQ(cases.size(), 5U);
    const support::Compared table("independent-cases", "Lumped chain at low frequency");
    for (const Case& c : cases) {
        design::Design d = design_of(c);
        if (c.has_input("r_extra")) {
            d.joints = {{1, units::ohms(c.input("r_extra"))}};
        }
        const OperatingPoint point = point_of(d, c.input("frequency") / 20, c.input("power"));
        ASSERT_TRUE(point.resonance) << c.id;
        const Resonance& r = *point.resonance;
        // Inductance, with its internal part at the case's frequency: corners as tubes (0.4 % of the
        // rectangle), leads and redistribution of several turns against the chain's plain forms.
        const OperatingPoint there = point_of(d, c.input("frequency"), c.input("power"));
        const bool several = d.loop.turns > 1;
        table.share(c.id, "L [H]", there.resonance->inductance.value(), c.output("L"),
                    several ? 0.006 : 0.005);
        const double omega = 2 * pi * point.frequency.value();
        // The loop's own capacitance counts for little here.
        expect_relative(1 / (omega * omega * r.inductance.value()), r.tuning_capacitance.value(), 1e-3,
                        c.id + " C");
        expect_relative(r.loop_current_rms.value(),
                        std::sqrt(c.input("power") / r.resistance.total().value()), 1e-12, c.id + " I");
        expect_relative(r.q_unloaded, omega * r.inductance.value() / r.resistance.total().value(), 2e-3,
                        c.id + " Q");
        table.share(c.id, "R_rad_small, from a twentieth of the frequency",
                    r.resistance.radiation.value() * std::pow(20, 4), c.output("R_rad_small"),
                    several ? 0.03 : 1e-3);
    }
}

// matching-01 to -03: the resonator alone.
TEST(Resonator, BandwidthsOfTheIndependentCases) {
    const support::Compared table("independent-cases", "Resonator and matching");
    int compared = 0;
    for (const Case& c : support::independent_cases("matching")) {
        if (!c.has_output("f_lo_vswr")) {
            continue;
        }
        ++compared;
        const auto f0 = units::hertz(c.input("f0"));
        const double q = c.input("Q_unloaded");
        const auto edges = resonator_edges(f0, q, c.input("vswr"));
        table.share(c.id, "f_lo_vswr", edges.low.value(), c.output("f_lo_vswr"), 1e-11);
        table.share(c.id, "f_hi_vswr", edges.high.value(), c.output("f_hi_vswr"), 1e-11);
        table.share(c.id, "bw_vswr", resonator_bandwidth(f0, q, c.input("vswr")).value(), c.output("bw_vswr"),
                    1e-9);
        table.share(c.id, "bw_matched_half_power", resonator_bandwidth(f0, q, half_power_vswr).value(),
                    c.output("bw_matched_half_power"), 1e-9);
    }
    EXPECT_EQ(compared, 3);
}

TEST(ClosedForm, BandwidthOfAHighQLoopIsThatOfTheResonator) {
    design::Design d;
    d.capacitor.loss.q = 1e12;
    for (const double s : {1.5, 2.0, 2.618034, 3.0}) {
        const OperatingPoint point = point_of(d, 7.1e6, 5, s);
        const Resonance& r = *point.resonance;
        // Yaghjian and Best (2005): fractional bandwidth times Q = (s - 1)/sqrt(s).
        EXPECT_NEAR(r.bandwidth_vswr.value() * r.q_unloaded / 7.1e6, (s - 1) / std::sqrt(s), 1e-9);
        EXPECT_NEAR(r.bandwidth_half_power.value() * r.q_unloaded / 7.1e6, 2.0, 1e-9);
        EXPECT_DOUBLE_EQ(r.q_loaded(), r.q_unloaded / 2);
    }
}

TEST(ClosedForm, RefusesWhatIsOutOfRange) {
    const auto model = make_model({}, Model::closed_form);
    EXPECT_THROW((void)model->at(units::hertz(9e3), units::watts(5), 2), base::InputError);
    EXPECT_THROW((void)model->at(units::megahertz(7), units::watts(0), 2), base::InputError);
    EXPECT_THROW((void)model->at(units::megahertz(7), units::watts(5), 1), base::InputError);
    design::Design impossible;
    impossible.loop.size = units::metres(-1);
    EXPECT_THROW((void)make_model(impossible, Model::closed_form), base::InputError);
}

TEST(ClosedForm, SaysNothingAboutLoopsItCannotCompute) {
    design::Design touching;
    touching.loop.turns = 3;
    touching.loop.turn_spacing = units::millimetres(22.2);
    design::Design thick;
    thick.loop.size = units::millimetres(60);
    design::Design short_leads;
    short_leads.loop.turns = 3;
    short_leads.loop.lead = units::millimetres(5);
    for (const design::Design& d : {touching, thick, short_leads}) {
        const OperatingPoint point = point_of(d, 3.6e6);
        EXPECT_FALSE(point.resonance);
        EXPECT_TRUE(point.notices.has("geometry_not_modelled"));
        EXPECT_GT(point.perimeter_in_wavelengths, 0);
    }
}

TEST(ClosedForm, SaysNotEstablishedBeyondItsRange) {
    const auto model = make_model({}, Model::closed_form);
    const OperatingPoint beyond = model->at(units::megahertz(50), units::watts(5), 2);
    EXPECT_FALSE(beyond.resonance);
    EXPECT_TRUE(beyond.notices.has("perimeter_beyond_range"));
    EXPECT_TRUE(beyond.notices.has("free_space_only"));
    design::Design coil; // resonant by itself below 0.35 wavelengths of conductor
    coil.loop.turns = 12;
    coil.loop.size = units::metres(0.6);
    coil.conductor.diameter = units::millimetres(8);
    coil.loop.turn_spacing = units::millimetres(20);
    const OperatingPoint above = point_of(coil, 4.5e6);
    ASSERT_LT(above.perimeter_in_wavelengths, closed_form_range_wavelengths);
    EXPECT_FALSE(above.resonance);
    EXPECT_TRUE(above.notices.has("self_resonant"));
}

TEST(ClosedForm, NoticesFollowTheDesign) {
    design::Design d;
    const OperatingPoint plain = point_of(d, 7.1e6);
    EXPECT_TRUE(plain.notices.has("capacitor_loss_assumed"));
    EXPECT_TRUE(plain.notices.has("error_estimate"));
    EXPECT_FALSE(plain.notices.has("braid_factor_interval"));
    EXPECT_EQ(plain.notices.worst_first().front().code, "capacitor_loss_assumed");
    d.capacitor.loss.q = 900;
    d.conductor.form = design::ConductorForm::braid;
    d.site.ground.kind = design::GroundKind::soil;
    const OperatingPoint braid = point_of(d, 7.1e6);
    EXPECT_FALSE(braid.notices.has("capacitor_loss_assumed"));
    EXPECT_TRUE(braid.notices.has("braid_factor_interval"));
    for (const base::Notice& notice : braid.notices.all()) {
        if (notice.code == "free_space_only") {
            EXPECT_EQ(notice.severity, base::Severity::caution);
        }
    }
    EXPECT_FALSE(braid.resonance->resistance.ground);
    EXPECT_FALSE(braid.resonance->gain_over_dipole);
}

TEST(ClosedForm, IntervalsHoldTheNominalValueAndWhatIsUncertain) {
    design::Design d;
    d.conductor.form = design::ConductorForm::braid;
    d.conductor.diameter = units::millimetres(10);
    d.conductor.braid_factor = 1.8;
    const Resonance r = *point_of(d, 10.1e6).resonance;
    const auto& total = r.total_resistance_range;
    // From no excess of the braid and the best capacitor to twice the excess and the worst.
    const double smooth = r.resistance.conductor.value() / 1.8;
    EXPECT_LT(total.low.value(), r.resistance.total().value() - 0.75 * smooth);
    EXPECT_GT(total.high.value(), r.resistance.total().value() + 0.75 * smooth);
    EXPECT_LT(r.efficiency_range.low, r.efficiency);
    EXPECT_GT(r.efficiency_range.high, r.efficiency);
    EXPECT_LT(r.bandwidth_vswr_range.low, r.bandwidth_vswr);
    EXPECT_GT(r.bandwidth_vswr_range.high, r.bandwidth_vswr);
    EXPECT_LT(r.capacitor_voltage_peak_range.low, r.capacitor_voltage_peak);
    EXPECT_GT(r.capacitor_voltage_peak_range.high, r.capacitor_voltage_peak);
    // The place of the voltage alone leaves 0.4 pF open.
    EXPECT_LT(r.tuning_capacitance_range.low.value(), r.tuning_capacitance.value() - 0.4e-12);
    EXPECT_GT(r.tuning_capacitance_range.high.value(), r.tuning_capacitance.value() + 0.4e-12);
}

// The model against finer cuts of itself.
TEST(ClosedForm, HasConverged) {
    for (const bool square : {false, true}) {
        geometry::Winding w;
        if (square) {
            w.outline = geometry::Outline::polygon;
            w.sides = 4;
            w.measure = geometry::Measure::side;
        }
        const geometry::WirePath path = geometry::wire_path(w);
        const detail::Cutting fine{4, 1.4, 1.0 / 96};
        const auto coarse = detail::prepare_loop(path, 0.011, 2.5e-6, {}, {}).series;
        const auto finer = detail::prepare_loop(path, 0.011, 2.5e-6, {}, {}, fine).series;
        expect_relative(coarse.self_capacitance_F, finer.self_capacitance_F, 0.003, "own capacitance");
        expect_relative(coarse.radiation_ohm(0.3)[0], finer.radiation_ohm(0.3)[0], 1e-4, "radiation");
        expect_relative(coarse.reactance_ohm(0.3)[0], finer.reactance_ohm(0.3)[0], 1e-4, "reactance");
    }
}

// Field and circuit are computed apart: the power through a sphere must be the radiation resistance.
TEST(ClosedForm, FarFieldCarriesTheRadiatedPower) {
    geometry::Winding w;
    w.turns = 2;
    w.spacing = units::millimetres(60);
    constexpr int rings = 24;
    constexpr int around = 16;
    std::vector<geometry::Vector3> directions;
    for (int i = 0; i < rings; ++i) {
        const double z = -1 + (2 * i + 1.0) / rings; // equal areas, midpoint rule
        for (int j = 0; j < around; ++j) {
            const double azimuth = 2 * pi * j / around;
            const double rho = std::sqrt(1 - z * z);
            directions.push_back({rho * std::cos(azimuth), rho * std::sin(azimuth), z});
        }
    }
    const auto loop =
        detail::prepare_loop(geometry::wire_path(w), 0.011, 0, directions, {}, {2, 2, 1.0 / 32, true});
    const double k = 2 * pi * 0.3 / loop.series.length_m;
    const detail::CurrentVector c{std::complex<double>{0.6, 0.01}, {0.4, -0.01}, {0.1, 0.02}};
    double through_sphere = 0;
    for (const detail::FarDirection& direction : loop.directions) {
        through_sphere += direction.power(k, c) * 4 * pi / double(directions.size());
    }
    through_sphere *= units::constants::free_space_impedance_ohm * k * k / (16 * pi * pi);
    const auto r = loop.series.radiation_ohm(k);
    double circuit = 0;
    for (std::size_t i = 0; i < detail::currents; ++i) {
        for (std::size_t n = 0; n < detail::currents; ++n) {
            circuit += r[detail::entry(i, n)] * std::real(c[i] * std::conj(c[n]));
        }
    }
    expect_relative(through_sphere, circuit, 0.003, "sphere");
}

} // namespace loopwright::loop
