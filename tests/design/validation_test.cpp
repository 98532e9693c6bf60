#include "base/error.hpp"
#include "design/names.hpp"
#include "design/validation.hpp"
#include "design/winding.hpp"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <cmath>
#include <functional>
#include <limits>
#include <random>

namespace loopwright::design {
namespace {

using testing::HasSubstr;
using units::metres;
using units::millimetres;
using units::picofarads;

using Change = std::function<void(Design&)>;

std::vector<std::string> sentences(const Change& change) {
    Design design;
    change(design);
    std::vector<std::string> texts;
    for (const base::InputError& error : refusals(design)) {
        texts.emplace_back(error.what());
    }
    return texts;
}

// The one refusal of a changed default design; or what went wrong.
std::string only(const Change& change) {
    const auto texts = sentences(change);
    if (texts.size() != 1) {
        return std::to_string(texts.size()) + " refusals" + (texts.empty() ? "" : ": " + texts[0] + " ...");
    }
    return texts[0];
}

void polygon(Design& d, int sides, SizeMeaning meaning) {
    d.loop.outline = Outline::polygon;
    d.loop.sides = sides;
    d.loop.size_is = meaning;
}
void turns(Design& d, int count, Arrangement arrangement, double spacing_mm) {
    d.loop.turns = count;
    d.loop.arrangement = arrangement;
    d.loop.turn_spacing = millimetres(spacing_mm);
}

} // namespace

TEST(Validation, TheDefaultDesignStands) {
    EXPECT_TRUE(refusals(Design{}).empty());
    EXPECT_NO_THROW(require_valid(Design{}));
}

TEST(Validation, EveryRefusalNamesPathValueAndWhatIsAccepted) {
    EXPECT_EQ(only([](Design& d) {
                  d.loop.size = {metres(-1), "-1 m"};
              }),
              "loop.size: '-1 m' is not accepted; a length from 10 mm to 100 m");
    EXPECT_EQ(only([](Design& d) {
                  d.loop.size = {metres(1e6), "1000 km"};
              }),
              "loop.size: '1000 km' is not accepted; a length from 10 mm to 100 m");
    EXPECT_EQ(only([](Design& d) { d.loop.turns = 13; }),
              "loop.turns: '13' is not accepted; a whole number from 1 to 12");
    EXPECT_EQ(only([](Design& d) { d.loop.turns = 0; }),
              "loop.turns: '0' is not accepted; a whole number from 1 to 12");
    EXPECT_EQ(only([](Design& d) { polygon(d, 2, SizeMeaning::side); }),
              "loop.sides: '2' is not accepted; a whole number from 3 to 1000");
    EXPECT_THAT(only([](Design& d) {
                    d.loop.gap = {millimetres(0), "0 mm"};
                }),
                HasSubstr("loop.gap: '0 mm'"));
    EXPECT_THAT(only([](Design& d) { d.loop.lead = millimetres(-1); }), HasSubstr("loop.lead: '-1 mm'"));
}

TEST(Validation, SizeMeansWhatTheOutlineHas) {
    using M = SizeMeaning;
    for (const M meaning : {M::diameter, M::across_flats, M::across_corners, M::side, M::conductor_length}) {
        const bool circle = meaning == M::diameter || meaning == M::conductor_length;
        EXPECT_EQ(sentences([&](Design& d) { d.loop.size_is = meaning; }).empty(), circle)
            << name_of(meaning);
        EXPECT_EQ(sentences([&](Design& d) { polygon(d, 8, meaning); }).empty(), meaning != M::diameter);
        const bool odd = meaning == M::side || meaning == M::across_corners;
        EXPECT_EQ(sentences([&](Design& d) { polygon(d, 5, meaning); }).empty(), odd) << name_of(meaning);
        EXPECT_TRUE(sentences([&](Design& d) {
                        d.loop.outline = Outline::rectangle;
                        d.loop.size_is = meaning; // not used
                    }).empty());
    }
    EXPECT_EQ(
        only([](Design& d) { polygon(d, 5, M::across_flats); }),
        "loop.size_is: 'across_flats' is not accepted; across_corners or side for a polygon with an odd "
        "number of sides");
}

TEST(Validation, ConductorThickerThanTheLoop) {
    EXPECT_THAT(only([](Design& d) {
                    d.loop.size = metres(0.1);
                    d.conductor.diameter = {metres(0.1), "10 cm"};
                    d.loop.gap = millimetres(5);
                }),
                HasSubstr("conductor.diameter: '10 cm' is not accepted; a conductor thinner than the loop"));
    EXPECT_THAT(only([](Design& d) {
                    d.conductor.form = ConductorForm::strip;
                    d.conductor.width = metres(0.9);
                    d.loop.size = metres(0.5);
                }),
                HasSubstr("conductor.width: '0.9 m'"));
    // An equilateral triangle of side 60 mm has an inscribed circle of 60/sqrt(3) = 34.6 mm.
    const auto triangle = [](double diameter_mm) {
        return [=](Design& d) {
            polygon(d, 3, SizeMeaning::side);
            d.loop.size = millimetres(60);
            d.conductor.diameter = millimetres(diameter_mm);
        };
    };
    EXPECT_THAT(only(triangle(34.7)), HasSubstr("conductor.diameter"));
    EXPECT_TRUE(sentences(triangle(34.6)).empty());
}

TEST(Validation, WallOverHalfTheDiameter) {
    EXPECT_EQ(only([](Design& d) {
                  d.conductor.wall = {millimetres(11.5), "11.5 mm"};
              }),
              "conductor.wall: '11.5 mm' is not accepted; at most half the diameter (11.0\u2009mm)");
    EXPECT_TRUE(sentences([](Design& d) { d.conductor.wall = millimetres(11); }).empty());
    EXPECT_TRUE(sentences([](Design& d) {
                    d.conductor.form = ConductorForm::wire;
                    d.conductor.wall = millimetres(50); // a wire has none: not used
                }).empty());
}

TEST(Validation, TurnsThatOverlapOrRunOutOfRoom) {
    EXPECT_THAT(only([](Design& d) { turns(d, 2, Arrangement::stack, 22); }),
                HasSubstr("loop.turn_spacing: '22 mm' is not accepted; more than 22 mm"));
    EXPECT_TRUE(sentences([](Design& d) { turns(d, 2, Arrangement::stack, 22.1); }).empty());
    EXPECT_TRUE(sentences([](Design& d) { turns(d, 1, Arrangement::stack, 1); }).empty());
    // A strip stands with its width along the axis: 20 mm wide, 1 mm thick.
    const auto strip = [](Arrangement arrangement, double spacing_mm) {
        return [=](Design& d) {
            d.conductor.form = ConductorForm::strip;
            turns(d, 3, arrangement, spacing_mm);
        };
    };
    EXPECT_THAT(only(strip(Arrangement::stack, 15)), HasSubstr("more than 20 mm"));
    EXPECT_TRUE(sentences(strip(Arrangement::spiral, 15)).empty());
    // Circle of 1 m: 5 turns of 100 mm leave 500 - 450 mm at the inner end, more than half of 22 mm.
    EXPECT_TRUE(sentences([](Design& d) { turns(d, 5, Arrangement::spiral, 100); }).empty());
    EXPECT_THAT(only([](Design& d) { turns(d, 5, Arrangement::spiral, 110); }),
                HasSubstr("runs out of room"));
    EXPECT_THAT(only([](Design& d) { turns(d, 5, Arrangement::spiral, 200); }),
                HasSubstr("loop.turn_spacing"));
    EXPECT_THAT(only([](Design& d) {
                    d.loop.outline = Outline::rectangle;
                    d.loop.height = metres(0.3);
                    turns(d, 4, Arrangement::spiral, 45);
                }),
                HasSubstr("runs out of room"));
}

TEST(Validation, GapLongerThanTheSide) {
    EXPECT_THAT(only([](Design& d) {
                    polygon(d, 8, SizeMeaning::side);
                    d.loop.size = metres(0.4);
                    d.loop.gap = {metres(0.41), "41 cm"};
                }),
                HasSubstr("loop.gap: '41 cm' is not accepted; at most 0.400\u2009m, the side it is in"));
    EXPECT_THAT(only([](Design& d) { d.loop.gap = metres(0.8); }), HasSubstr("a quarter of the circle"));
    EXPECT_TRUE(sentences([](Design& d) { d.loop.gap = metres(0.5); }).empty());
}

TEST(Validation, ConductorAndMetal) {
    EXPECT_THAT(only([](Design& d) { d.conductor.metal.name = "coper"; }),
                testing::AllOf(HasSubstr("conductor.metal: 'coper' is not accepted"), HasSubstr("'copper'")));
    EXPECT_THAT(only([](Design& d) {
                    d.conductor.metal = {"", units::siemens_per_metre(58), units::per_kelvin(0)};
                }),
                HasSubstr("conductor.metal.conductivity: '58 S/m' is not accepted; a conductivity from"));
    EXPECT_THAT(
        only([](Design& d) { d.conductor.temperature = units::degrees_celsius(400); }),
        HasSubstr("conductor.temperature: '400 °C' is not accepted; a temperature from -100 °C to 250 °C"));
    EXPECT_THAT(only([](Design& d) {
                    d.conductor.form = ConductorForm::braid;
                    d.conductor.braid_factor = 0.5;
                }),
                HasSubstr("conductor.braid_factor: '0.5' is not accepted; a number from 1 to 20"));
    EXPECT_THAT(only([](Design& d) {
                    d.joints = {{1, units::ohms(0.001)}, {-1, units::ohms(0)}};
                }),
                HasSubstr("joints[1].count: '-1'"));
}

TEST(Validation, Capacitor) {
    EXPECT_THAT(
        only([](Design& d) {
            d.capacitor.minimum = picofarads(200);
            d.capacitor.maximum = {picofarads(150), "150pF"};
        }),
        HasSubstr(
            "capacitor.maximum: '150pF' is not accepted; a capacitance not below the minimum (200 pF)"));
    EXPECT_THAT(only([](Design& d) { d.capacitor.maximum = units::farads(1); }),
                HasSubstr("a capacitance from 0.01 pF to 1 µF"));
    EXPECT_TRUE(sentences([](Design& d) { d.capacitor.loss.q = 1e12; }).empty());
    EXPECT_THAT(only([](Design& d) { d.capacitor.loss.q = 1.1e12; }),
                HasSubstr("capacitor.loss.q: '1.1e12' is not accepted; a number from 10 to 1e12"));
    EXPECT_THAT(only([](Design& d) {
                    d.capacitor.loss.q = 1000;
                    d.capacitor.loss.series_resistance = units::ohms(0.01);
                }),
                HasSubstr("one of the two, or neither"));
    EXPECT_THAT(only([](Design& d) { d.capacitor.rating.peak_voltage = units::volts(0); }),
                HasSubstr("capacitor.rating.peak_voltage: '0 V'"));
    Capacitor alone;
    EXPECT_TRUE(refusals(alone).empty());
    alone.stray = picofarads(-1);
    ASSERT_EQ(refusals(alone).size(), 1U);
}

TEST(Validation, CouplingSiteStation) {
    EXPECT_TRUE(sentences([](Design& d) { d.coupling = Coupling{}; }).empty());
    EXPECT_THAT(only([](Design& d) {
                    d.coupling = Coupling{};
                    d.coupling->axis_offset = millimetres(13);
                }),
                HasSubstr("coupling.axis_offset: '13 mm' is not accepted; more than 13.0"));
    EXPECT_THAT(only([](Design& d) {
                    d.coupling = Coupling{};
                    d.coupling->diameter = metres(1);
                }),
                HasSubstr("coupling.diameter: '1 m'"));
    const auto coupled = [](CouplingKind kind, const std::function<void(Coupling&)>& change) {
        return [kind, change](Design& d) {
            d.coupling = Coupling{};
            d.coupling->kind = kind;
            change(*d.coupling);
        };
    };
    const auto nothing = [](Coupling&) {};
    EXPECT_TRUE(sentences(coupled(CouplingKind::tap, nothing)).empty());
    EXPECT_TRUE(sentences(coupled(CouplingKind::transformer, nothing)).empty());
    EXPECT_THAT(only(coupled(CouplingKind::tap, [](Coupling& c) { c.tap_length = metres(2); })),
                HasSubstr("coupling.tap_length: '2 m' is not accepted; at most two fifths"));
    EXPECT_THAT(only(coupled(CouplingKind::tap, [](Coupling& c) { c.tap_spacing = millimetres(13); })),
                HasSubstr("coupling.tap_spacing: '13 mm'"));
    EXPECT_THAT(only(coupled(CouplingKind::transformer, [](Coupling& c) { c.turns = 0; })),
                HasSubstr("coupling.turns: '0'"));
    EXPECT_THAT(only(coupled(CouplingKind::transformer, [](Coupling& c) { c.leakage_share = NAN; })),
                HasSubstr("coupling.leakage_share"));
    EXPECT_THAT(only([](Design& d) {
                    d.feed_line = FeedLine{metres(-1), units::ohms(50), {}};
                }),
                HasSubstr("feed_line.length: '-1 m'"));
    EXPECT_THAT(only([](Design& d) {
                    d.feed_line = FeedLine{metres(1), units::ohms(50), {{}, {}}};
                }),
                HasSubstr("feed_line.loss[1].frequency: '10 MHz' is not accepted; each frequency once"));
    EXPECT_TRUE(sentences([](Design& d) { d.site.lowest_point = metres(0); }).empty()) << "free space";
    EXPECT_THAT(only([](Design& d) {
                    d.site.ground.kind = GroundKind::soil;
                    d.site.lowest_point = metres(0);
                }),
                HasSubstr("the loop would touch the ground"));
    EXPECT_THAT(only([](Design& d) {
                    d.site.ground.kind = GroundKind::soil;
                    d.site.ground.class_name = "swamp";
                }),
                HasSubstr("site.ground: 'swamp' is not accepted; sea water, fresh water"));
    EXPECT_THAT(only([](Design& d) {
                    d.site.ground.kind = GroundKind::soil;
                    d.site.ground.relative_permittivity = 0.5;
                }),
                HasSubstr("site.ground.relative_permittivity: '0.5'"));
    EXPECT_THAT(only([](Design& d) { d.site.tilt = units::degrees(91); }), HasSubstr("from -90° to 90°"));
    EXPECT_THAT(only([](Design& d) { d.station.power = units::watts(0); }),
                HasSubstr("station.power: '0 W'"));
    EXPECT_THAT(only([](Design& d) { d.station.emission = "ft9"; }), HasSubstr("station.emission: 'ft9'"));
    EXPECT_THAT(only([](Design& d) { d.station.region = 4; }), HasSubstr("station.region: '4'"));
    EXPECT_THAT(only([](Design& d) {
                    d.station.bands = {"40m", "41m"};
                }),
                HasSubstr("station.bands[1]: '41m' is not accepted; a band: 160m, 80m"));
    EXPECT_THAT(only([](Design& d) { d.station.bands = {"40m", "40m"}; }), HasSubstr("each band once"));
}

TEST(Validation, RatingsUseAndLimits) {
    EXPECT_THAT(only([](Design& d) { d.capacitor.rating.gap = millimetres(0.05); }),
                HasSubstr("capacitor.rating.gap: '50 µm' is not accepted; a length from 0.1 mm to 0.1 m"));
    EXPECT_THAT(only([](Design& d) { d.capacitor.rating.safety_factor = 0.9; }),
                HasSubstr("capacitor.rating.safety_factor: '0.9'"));
    EXPECT_THAT(only([](Design& d) { d.capacitor.added.resize(21); }),
                HasSubstr("capacitor.added: '21 items' is not accepted; at most 20 items"));
    EXPECT_THAT(only([](Design& d) {
                    d.capacitor.added.resize(1);
                    d.capacitor.added[0].peak_voltage = units::volts(0);
                }),
                HasSubstr("capacitor.added[0].peak_voltage: '0 V'"));
    EXPECT_THAT(only([](Design& d) {
                    d.station.emission = "ssb";
                    d.station.use = Use{Habit::alternate_slots, 0.2, units::seconds(60)};
                }),
                HasSubstr("station.use.habit: 'alternate_slots' is not accepted; continuous or "
                          "listening_turns: ssb has no time slots"));
    EXPECT_TRUE(sentences([](Design& d) {
                    d.station.emission = "ssb";
                    d.station.use = Use{Habit::listening_turns, 0.2, units::seconds(60)};
                }).empty());
    EXPECT_THAT(only([](Design& d) {
                    d.station.limits = {"icnirp_2020", "icnirp"};
                }),
                HasSubstr("station.limits[1]: 'icnirp' is not accepted; fcc_1_1310"));
    EXPECT_THAT(only([](Design& d) { d.station.own_limits.resize(1); }),
                HasSubstr("station.own_limits[0].name: '' is not accepted; a name"));
}

TEST(Validation, EveryRefusalComesInTheOrderOfTheDocument) {
    Design design;
    design.station.power = units::watts(-1);
    design.capacitor.stray = picofarads(-1);
    design.loop.size = metres(0);
    design.conductor.temperature = units::kelvin(0);
    std::vector<std::string> paths;
    for (const auto& error : refusals(design)) {
        paths.push_back(error.where());
    }
    EXPECT_THAT(paths, testing::ElementsAre("loop.size", "conductor.temperature", "capacitor.stray",
                                            "station.power"));
    EXPECT_THROW(require_valid(design), base::InputError);
}

TEST(Validation, NoNumberThatIsNoneIsAccepted) {
    const double nan = std::nan("");
    const double inf = std::numeric_limits<double>::infinity();
    for (const double bad : {nan, inf, -inf}) {
        const std::vector<Change> changes{
            [=](Design& d) { d.loop.size = metres(bad); },
            [=](Design& d) { d.loop.gap = metres(bad); },
            [=](Design& d) { d.loop.lead = metres(bad); },
            [=](Design& d) {
                d.loop.outline = Outline::rectangle;
                d.loop.height = metres(bad);
            },
            [=](Design& d) {
                d.loop.turns = 3;
                d.loop.turn_spacing = metres(bad);
            },
            [=](Design& d) { d.conductor.diameter = metres(bad); },
            [=](Design& d) { d.conductor.wall = metres(bad); },
            [=](Design& d) { // every rule that sets the conductor against something else
                d.loop.turns = 2;
                d.coupling = Coupling{};
                d.site.ground.kind = GroundKind::soil;
                d.conductor.diameter = metres(bad);
            },
            [=](Design& d) { d.conductor.temperature = units::kelvin(bad); },
            [=](Design& d) {
                d.joints = {{1, units::ohms(bad)}};
            },
            [=](Design& d) { d.capacitor.minimum = units::farads(bad); },
            [=](Design& d) { d.capacitor.loss.q = bad; },
            [=](Design& d) { d.capacitor.contact_resistance = units::ohms(bad); },
            [=](Design& d) { d.capacitor.rating.gap = metres(bad); },
            [=](Design& d) { d.capacitor.rating.safety_factor = bad; },
            [=](Design& d) { d.capacitor.rating.current = units::amperes(bad); },
            [=](Design& d) {
                d.capacitor.added.resize(1);
                d.capacitor.added[0].capacitance = units::farads(bad);
            },
            [=](Design& d) {
                d.capacitor.added.resize(1);
                d.capacitor.added[0].q = bad;
            },
            [=](Design& d) { d.site.altitude = metres(bad); },
            [=](Design& d) { d.site.air_temperature = units::kelvin(bad); },
            [=](Design& d) {
                d.station.use = Use{};
                d.station.use->share = bad;
            },
            [=](Design& d) {
                d.station.use = Use{};
                d.station.use->over = units::seconds(bad);
            },
            [=](Design& d) {
                d.station.own_limits.resize(1);
                d.station.own_limits[0].name = "x";
                d.station.own_limits[0].electric = units::ElectricField::from_value(bad);
            },
            [=](Design& d) { d.station.reach = metres(bad); },
            [=](Design& d) { d.site.tilt = units::radians(bad); },
            [=](Design& d) { d.site.lowest_point = metres(bad); },
            [=](Design& d) { d.station.power = units::watts(bad); },
        };
        for (std::size_t i = 0; i < changes.size(); ++i) {
            const auto texts = sentences(changes[i]);
            ASSERT_FALSE(texts.empty()) << i;
            EXPECT_THAT(texts.front(), HasSubstr("'not a number'")) << i;
        }
    }
}

// Whatever is accepted can be drawn: geometry/ finds a path as long as the loop is, without complaint.
TEST(Validation, WhatIsAcceptedHasAPath) {
    std::mt19937 engine(31);
    const auto in = [&](double low, double high) {
        return std::exp(std::uniform_real_distribution<double>(std::log(low), std::log(high))(engine));
    };
    const auto of = [&](int count) { return std::uniform_int_distribution<int>(0, count - 1)(engine); };
    int accepted = 0;
    for (int i = 0; i < 3000; ++i) {
        Design d;
        d.loop.outline = static_cast<Outline>(of(3));
        d.loop.sides = 3 + of(10);
        d.loop.size_is = static_cast<SizeMeaning>(of(5));
        d.loop.size = metres(in(0.02, 20));
        d.loop.width = metres(in(0.02, 20));
        d.loop.height = metres(in(0.02, 20));
        d.loop.corner_down = of(2) == 1;
        d.loop.turns = 1 + of(6);
        d.loop.arrangement = static_cast<Arrangement>(of(2));
        d.loop.turn_spacing = metres(in(0.002, 0.5));
        d.loop.gap = metres(in(0.002, 1));
        d.conductor.diameter = metres(in(0.0005, 0.2));
        d.conductor.wall = d.conductor.diameter.value / 10.0;
        if (!refusals(d).empty()) {
            continue;
        }
        ++accepted;
        const auto path = geometry::wire_path(as_winding(d.loop));
        ASSERT_GT(path.length_m(), d.loop.gap.value.value());
        ASSERT_TRUE(std::isfinite(path.length_m()));
    }
    EXPECT_GT(accepted, 300);
}

TEST(Names, GoThereAndBack) {
    for (const std::string& word : names<SizeMeaning>()) {
        EXPECT_EQ(name_of(*choice_of<SizeMeaning>(word)), word);
    }
    EXPECT_EQ(name_of(ConductorForm::stranded), "stranded");
    EXPECT_EQ(name_of(Plane::horizontal), "horizontal");
    EXPECT_EQ(name_of(Arrangement::spiral), "spiral");
    EXPECT_EQ(name_of(Outline::rectangle), "rectangle");
    EXPECT_FALSE(choice_of<Outline>("Circle"));
}

} // namespace loopwright::design
