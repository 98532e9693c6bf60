// Where the power of whole designs goes: outlines, turns, tilts. The ground's part is what the wires give up
// less what the far field carries; here it is held against the flux of the plane-wave spectrum through the
// surface, a sum that knows nothing of the impedance matrix.
#include "ground/power_flux.hpp"
#include "loop/full_wave.hpp"
#include "units/constants.hpp"

#include <functional>
#include <gtest/gtest.h>

namespace loopwright::loop {
namespace {

struct Standing {
    const char* name;
    std::function<void(design::Design&)> change;
    double megahertz, lowest_m;
};

std::vector<Standing> standing_designs() {
    return {{"octagon on a corner, tilted",
             [](design::Design& d) {
                 d.loop.outline = design::Outline::polygon;
                 d.loop.sides = 8;
                 d.loop.corner_down = true;
                 d.loop.size_is = design::SizeMeaning::across_corners;
                 d.site.tilt = units::degrees(35);
             },
             21.2, 0.3},
            {"rectangle, lying",
             [](design::Design& d) {
                 d.loop.outline = design::Outline::rectangle;
                 d.loop.width = units::metres(1.4);
                 d.loop.height = units::metres(0.8);
                 d.site.plane = design::Plane::horizontal;
             },
             14.1, 2},
            {"stack of two",
             [](design::Design& d) {
                 d.loop.turns = 2;
                 d.loop.turn_spacing = units::millimetres(60);
             },
             7.1, 0.3},
            {"spiral of three, tilted",
             [](design::Design& d) {
                 d.loop.turns = 3;
                 d.loop.arrangement = design::Arrangement::spiral;
                 d.loop.turn_spacing = units::millimetres(50);
                 d.site.tilt = units::degrees(60);
             },
             3.6, 0.3}};
}

TEST(FullWaveEnergy, OfWholeDesignsReachesSkyOrSoil) {
    for (const Standing& standing : standing_designs()) {
        design::Design d;
        d.capacitor.loss.q = 1000.0;
        d.site.ground.kind = design::GroundKind::soil;
        d.site.lowest_point = units::metres(standing.lowest_m);
        standing.change(d);
        const units::Frequency f = units::megahertz(standing.megahertz);
        // The flux sees the ends of single pieces of long elements near the ground: it takes a finer
        // mesh, which the default one is then held against.
        const FullWave fine(d, Workload::few_frequencies, 2.0);
        const SolvedLoop solved = fine.solved(f).value();
        const auto pieces = solved.elements();
        const double k = 2 * units::constants::pi * f.value() / units::constants::speed_of_light_m_s;
        const double sky = ground::sky_power_W(pieces, k, solved.permittivity());
        const double soil = ground::ground_power_W(pieces, k, solved.permittivity());
        const auto finer = fine.at(f, units::watts(1), 2.0);
        ASSERT_TRUE(finer.resonance) << standing.name;
        const double whole = finer.resonance->resistance.total().value();
        EXPECT_NEAR(soil / whole, finer.resonance->resistance.ground->value() / whole, 1e-4) << standing.name;
        const auto point = FullWave(d, Workload::few_frequencies).at(f, units::watts(1), 2.0);
        const ResistanceParts& r = point.resonance->resistance;
        const double total = r.total().value();
        EXPECT_NEAR(sky / whole, r.radiation.value() / total, 1e-3) << standing.name;
        EXPECT_NEAR(soil / whole, r.ground->value() / total, 1e-3) << standing.name;
        EXPECT_GT(r.ground->value(), 0.02 * total) << standing.name << ": the ground has to matter here";
    }
}

} // namespace
} // namespace loopwright::loop
