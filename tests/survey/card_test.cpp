// The retune card: rows from the working frequencies, figures from the model, dial and back.
#include "survey/card.hpp"

#include "base/error.hpp"
#include "loop/design_parts.hpp"
#include "loop/full_wave.hpp"
#include "survey/keying.hpp"
#include "survey/survey.hpp"

#include <algorithm>
#include <cmath>
#include <gtest/gtest.h>

namespace loopwright::survey {
namespace {

using units::picofarads;

design::Design a_loop() {
    design::Design d;
    d.capacitor.minimum = picofarads(10);
    d.capacitor.maximum = picofarads(220);
    d.capacitor.stray = picofarads(3);
    d.capacitor.loss.q = 1500.0;
    d.capacitor.rating.peak_voltage = units::volts(4000);
    d.capacitor.dial = design::Dial{};
    d.site.ground.kind = design::GroundKind::soil;
    d.site.ground.class_name = "average ground";
    d.station.power = units::watts(5);
    return d;
}

Card card_of(const design::Design& d) {
    CardRequest request;
    request.design = d;
    return card(request);
}

const CardRow& row_of(const Card& card, const std::string& band, const std::string& emission) {
    const auto found = std::find_if(card.rows.begin(), card.rows.end(), [&](const CardRow& row) {
        return row.band == band && row.emission.id == emission;
    });
    if (found == card.rows.end()) {
        throw std::runtime_error("no row for " + band);
    }
    return *found;
}

bool says(const CardRow& row, CardRemarkKind kind) {
    return std::any_of(row.remarks.begin(), row.remarks.end(),
                       [&](const CardRemark& remark) { return remark.kind == kind; });
}

TEST(Card, HasARowForEveryWorkingFrequencyOfThePlannedBands) {
    design::Design d = a_loop();
    d.station.bands = {"40m", "20m"};
    d.station.region = 2;
    d.station.working_frequencies = {{units::megahertz(14.2), "local net"}, {units::megahertz(5.0), ""}};
    const Card got = card_of(d);
    ASSERT_TRUE(got.complete);
    std::size_t expected = 2;
    for (const char* band : {"40m", "20m"}) {
        for (const auto& each : band::working_frequencies(2, band)) {
            ++expected;
            const CardRow& row = row_of(got, band, each.emission);
            EXPECT_EQ(row.tuned(), each.tuned);
            EXPECT_EQ(row.radio, each.dial);
        }
    }
    EXPECT_EQ(got.rows.size(), expected);
    EXPECT_TRUE(std::is_sorted(got.rows.begin(), got.rows.end(),
                               [](const CardRow& a, const CardRow& b) { return a.tuned() < b.tuned(); }));
    const auto net = std::find_if(got.rows.begin(), got.rows.end(),
                                  [](const CardRow& row) { return row.use == "local net"; });
    ASSERT_NE(net, got.rows.end());
    EXPECT_EQ(net->band, "20m");
    EXPECT_NEAR(net->tuned().value(), 14.2015e6, 1e-3); // the station's FT8 lies 1.5 kHz above the dial
    EXPECT_TRUE(net->own);
    EXPECT_EQ(got.rows.front().band, ""); // 5 MHz is in no band
}

TEST(Card, FiguresAreThoseOfTheModel) {
    const design::Design d = a_loop();
    const Card got = card_of(d);
    const loop::FullWave model(d);
    for (const char* band : {"40m", "20m", "10m"}) {
        const CardRow& row = row_of(got, band, "ft8");
        const auto point = model.at(row.tuned(), units::watts(5), 2.0);
        ASSERT_TRUE(point.resonance && row.point.resonance);
        EXPECT_NEAR(row.point.resonance->tuning_capacitance / point.resonance->tuning_capacitance, 1, 1e-6);
        EXPECT_NEAR(row.usable_span->value() / point.resonance->bandwidth_vswr.value(), 1, 1e-6);
        EXPECT_EQ(row.reachable, point.resonance->in_capacitor_range);
    }
}

// The reading set on the dial gives the capacitance at whose resonance, found anew with the model, the
// frequency comes back; and a little off it, the change per kHz.
TEST(Card, DialGoesBackToTheFrequencyThroughTheModel) {
    const design::Design d = a_loop();
    const Card got = card_of(d);
    const loop::FullWave model(d);
    const tuning::DialCurve curve(d.capacitor);
    const auto resonance = [&](double reading, double near_Hz) {
        const double whole_F = curve.capacitance_at(reading).value() + 3e-12;
        double f = near_Hz;
        for (int i = 0; i < 30; ++i) { // C goes nearly as 1/f^2
            const double need =
                model.at(units::hertz(f), units::watts(1), 2.0).resonance->tuning_capacitance.value();
            f *= std::sqrt(need / whole_F);
        }
        return f;
    };
    for (const char* band : {"40m", "17m"}) {
        const CardRow& row = row_of(got, band, "ft8");
        ASSERT_TRUE(row.predicted);
        const double f = row.tuned().value();
        EXPECT_NEAR(resonance(row.predicted->reading, 0.98 * f) / f, 1, 2e-6) << band;
        const double shift_Hz = 20e3;
        EXPECT_NEAR(resonance(row.predicted->reading + shift_Hz * row.predicted->per_Hz, f), f + shift_Hz,
                    0.01 * shift_Hz)
            << band;
        EXPECT_TRUE(row.predicted->within_stops);
        EXPECT_GT(row.predicted->uncertainty(), 0);
    }
}

// A reading whose interval reaches past a stop is marked, on the side where it does.
TEST(Card, SaysWhereTheDialMayEnd) {
    const Card got = card_of(a_loop());
    int marked = 0;
    for (const CardRow& row : got.rows) {
        if (!row.reachable || !row.dial()) {
            continue;
        }
        const auto& range = row.dial()->range;
        const bool past = range.low < 0 || range.high > 180;
        EXPECT_TRUE(!past || says(row, CardRemarkKind::edge_of_range)) << row.band << " " << row.use;
        marked += past ? 1 : 0;
    }
    EXPECT_GT(marked, 0);
    EXPECT_FALSE(says(row_of(got, "20m", "ft8"), CardRemarkKind::edge_of_range));
}

TEST(Card, OutOfReachSaysByHowMuchAndWhatWouldHelp) {
    const Card got = card_of(a_loop());
    const CardRow& row = row_of(got, "80m", "ft8");
    ASSERT_FALSE(row.reachable);
    ASSERT_TRUE(row.shortfall);
    EXPECT_TRUE(row.shortfall->above);
    EXPECT_NEAR(row.shortfall->by.value(), row.point.resonance->tuning_capacitance.value() - 223e-12, 1e-16);
    ASSERT_TRUE(row.shortfall->remedy);
    EXPECT_FALSE(row.dial());
    ASSERT_EQ(row.remarks.size(), 1U);
    EXPECT_EQ(row.remarks.front().kind, CardRemarkKind::out_of_reach);
    // With the advised capacitor plugged in on that band alone, all its rows come into reach.
    design::Design d = a_loop();
    d.capacitor.added.resize(1);
    d.capacitor.added[0].capacitance = row.shortfall->remedy->capacitance;
    d.capacitor.added[0].bands = {"80m"};
    const Card helped = card_of(d);
    for (const CardRow& each : helped.rows) {
        if (each.band == "80m") {
            EXPECT_TRUE(each.reachable) << each.use;
            EXPECT_EQ(each.plugged, std::vector<std::size_t>{0}) << each.use;
            ASSERT_TRUE(each.dial());
            EXPECT_TRUE(each.dial()->within_stops);
        }
    }
    const CardRow& forty = row_of(helped, "40m", "ft8");
    EXPECT_TRUE(forty.plugged.empty());
    EXPECT_NEAR(forty.dial()->reading, row_of(got, "40m", "ft8").dial()->reading, 1e-6);
}

// The smallest E12 value for each row of 80 m differs here (560 pF, but 680 pF for the lowest): the card
// names one that serves them all, and with it plugged in they are all in reach.
TEST(Card, OneFixedCapacitorServesAllRowsOfABand) {
    design::Design d = a_loop();
    d.loop.size = units::metres(1.05);
    d.capacitor.maximum = picofarads(200);
    d.station.bands = {"80m"};
    const Card got = card_of(d);
    ASSERT_FALSE(got.rows.empty());
    const tuning::FixedRemedy first = *got.rows.front().shortfall->remedy;
    ASSERT_FALSE(first.whole_band);
    for (const CardRow& row : got.rows) {
        ASSERT_TRUE(row.shortfall && row.shortfall->remedy) << row.use;
        EXPECT_TRUE(row.shortfall->remedy->working_frequencies) << row.use;
        EXPECT_EQ(row.shortfall->remedy->capacitance, first.capacitance) << row.use;
        EXPECT_NE(row.remarks.front().text.find("brings the working frequencies of 80m in"),
                  std::string::npos)
            << row.remarks.front().text;
    }
    d.capacitor.added.resize(1);
    d.capacitor.added[0].capacitance = first.capacitance;
    for (const CardRow& row : card_of(d).rows) {
        EXPECT_TRUE(row.reachable) << row.use;
    }
}

// The board and the page before keying know of what is plugged in on a band, as the card does.
TEST(Card, SurveyKnowsWhatIsPluggedIn) {
    design::Design d = a_loop();
    d.station.bands = {"80m", "40m"};
    const auto missing = row_of(card_of(d), "80m", "ft8").shortfall;
    ASSERT_TRUE(missing && missing->remedy);
    d.capacitor.added.resize(1);
    d.capacitor.added[0].capacitance = missing->remedy->capacitance;
    d.capacitor.added[0].bands = {"80m"};
    Request request;
    request.design = d;
    const Survey board = run(request);
    ASSERT_EQ(board.bands.size(), 2U);
    EXPECT_NE(board.bands[0].verdict, BandVerdict::out_of_reach);
    design::Design bare = d;
    bare.capacitor.added.clear();
    request.design = bare;
    const Survey without = run(request);
    EXPECT_EQ(without.bands[0].verdict, BandVerdict::out_of_reach);
    EXPECT_EQ(board.bands[1].point.resonance->resistance.total(),
              without.bands[1].point.resonance->resistance.total()); // nothing of it on 40 m
    KeyingRequest before;
    before.design = d;
    before.intervals = false;
    const Keying keyed = keying(before);
    ASSERT_EQ(keyed.bands.size(), 2U);
    ASSERT_TRUE(keyed.bands[0].load && keyed.bands[1].load);
    EXPECT_EQ(keyed.bands[0].load->members.size(), keyed.bands[1].load->members.size() + 1);
}

TEST(Card, DriveIsHeldAgainstTheSpan) {
    design::Design d = a_loop();
    d.capacitor.dial->hand_step = 2;
    const CardRow coarse = row_of(card_of(d), "20m", "ft8");
    ASSERT_TRUE(coarse.drive);
    ASSERT_FALSE(coarse.drive->resolves);
    EXPECT_TRUE(says(coarse, CardRemarkKind::drive_too_coarse));
    d.capacitor.dial->reduction = *coarse.drive->needed_reduction;
    const CardRow fine = row_of(card_of(d), "20m", "ft8");
    EXPECT_TRUE(fine.drive->resolves);
    EXPECT_FALSE(says(fine, CardRemarkKind::drive_too_coarse));
}

// A very lossy loop is wide: all of 30 m (50 kHz) goes without retuning; a good one stays within some kHz.
TEST(Card, SaysHowFarOneMayGoWithoutRetuning) {
    design::Design d = a_loop();
    const CardRow narrow = row_of(card_of(d), "30m", "ft8");
    EXPECT_FALSE(narrow.whole_band);
    d.capacitor.loss.q = 20.0;
    const CardRow wide = row_of(card_of(d), "30m", "ft8");
    EXPECT_GT(wide.usable_span->value(), 100e3);
    EXPECT_TRUE(wide.whole_band);
    EXPECT_TRUE(says(wide, CardRemarkKind::whole_band));
    // What is shared lies within half of the span; what is not, does not.
    for (const auto& other : band::working_frequencies(1, "30m")) {
        const auto emission = *band::find_emission(other.emission);
        const double far =
            std::abs((other.tuned - narrow.tuned()).value()) + emission.working_width.value() / 2;
        const bool in = far <= std::min(*narrow.usable_span, narrow.usable_span_range.low).value() / 2;
        const bool said = std::find(narrow.shared_with.begin(), narrow.shared_with.end(), emission.name) !=
                          narrow.shared_with.end();
        EXPECT_EQ(said, in && other.emission != "ft8") << other.emission;
    }
}

TEST(Card, VoltageOverTheRatingComesFirst) {
    design::Design d = a_loop();
    d.station.power = units::watts(100);
    d.capacitor.rating.peak_voltage = units::volts(1000);
    const Card got = card_of(d);
    const CardRow& row = row_of(got, "20m", "ft8");
    ASSERT_FALSE(row.remarks.empty());
    EXPECT_EQ(row.remarks.front().kind, CardRemarkKind::voltage_exceeded);
    EXPECT_NEAR(row.usable_voltage->value(), 1000, 1e-6);
    const CardRow* highest = highest_voltage(got);
    ASSERT_NE(highest, nullptr);
    EXPECT_GE(highest->point.resonance->capacitor_voltage_peak, row.point.resonance->capacitor_voltage_peak);
}

// Hardware with 4 pF more of stray than the file says: readings in resonance made with it put the card right
// where the file alone is off, with a narrower interval that holds the truth.
TEST(Card, CalibrationStandsBesideThePrediction) {
    design::Design d = a_loop();
    d.station.bands = {"40m", "30m", "20m", "17m"};
    design::Design real = d;
    real.capacitor.stray = picofarads(7);
    design::Calibration calibration;
    for (const double megahertz : {7.02, 7.15, 10.12, 14.05, 14.3, 18.1}) {
        CardRequest measured;
        measured.design = real;
        const CardRow row = card_row(measured, units::megahertz(megahertz));
        ASSERT_TRUE(row.predicted);
        calibration.points.push_back({row.predicted->reading, units::megahertz(megahertz)});
    }
    d.calibration = calibration;
    const Card got = card_of(d);
    const Card truth = card_of(real);
    ASSERT_EQ(got.rows.size(), truth.rows.size());
    for (std::size_t i = 0; i < got.rows.size(); ++i) {
        const CardRow& row = got.rows[i];
        ASSERT_TRUE(row.predicted && row.calibrated) << row.band;
        EXPECT_EQ(row.dial()->reading, row.calibrated->reading);
        const double real_reading = truth.rows[i].predicted->reading;
        EXPECT_NEAR(row.predicted->reading - real_reading, 4.0 / 210 * 180, 0.05) << row.band;
        EXPECT_NEAR(row.calibrated->reading, real_reading, 0.4) << row.band;
        EXPECT_LT(row.calibrated->uncertainty(), row.predicted->uncertainty()) << row.band;
        EXPECT_LE(row.calibrated->range.low, real_reading) << row.band;
        EXPECT_GE(row.calibrated->range.high, real_reading) << row.band;
    }
}

// What further points would bring is about the intervals of the rows, and a point brings less than the one
// before it.
TEST(Card, SaysWhatFurtherPointsWouldNarrow) {
    design::Design d = a_loop();
    d.station.bands = {"40m", "30m", "20m", "17m"};
    const Card got = card_of(d);
    ASSERT_EQ(got.next.size(), 3U);
    double mean = 0;
    std::string before_band;
    for (const CardRow& row : got.rows) { // the lowest row of each band
        ASSERT_TRUE(row.reachable);
        if (row.band != before_band) {
            mean += (row.predicted->range.high - row.predicted->range.low) / 4.0;
            before_band = row.band;
        }
    }
    EXPECT_NEAR(got.next.front().width_now, mean, 0.02 * mean);
    double before = mean;
    for (const tuning::NextPoint& next : got.next) {
        EXPECT_LT(next.width_after, before);
        before = next.width_after;
    }
    EXPECT_LT(got.next.front().width_after, 0.6 * mean) << "the first point tells most";
    d.capacitor.dial.reset();
    EXPECT_TRUE(card_of(d).next.empty());
}

TEST(Card, OneRowForAFrequency) {
    CardRequest request;
    request.design = a_loop();
    const CardRow carrier = card_row(request, units::megahertz(7.1));
    EXPECT_EQ(carrier.tuned(), units::megahertz(7.1));
    EXPECT_EQ(carrier.band, "40m");
    ASSERT_TRUE(carrier.dial());
    const CardRow digital = card_row(request, units::megahertz(7.1), *band::find_emission("ft8"));
    EXPECT_NEAR(digital.tuned().value(), 7.1015e6, 1e-3);
    EXPECT_LT(digital.dial()->reading, carrier.dial()->reading); // less capacitance, a smaller reading
    EXPECT_NEAR(digital.dial()->reading - carrier.dial()->reading, 1.5e3 * carrier.dial()->per_Hz,
                1e-3 * std::abs(1.5e3 * carrier.dial()->per_Hz));
    EXPECT_THROW((void)card_row(request, units::hertz(5)), base::InputError);
}

TEST(Card, WithoutADialTheRestStands) {
    design::Design d = a_loop();
    d.capacitor.dial.reset();
    const CardRow row = row_of(card_of(d), "40m", "ft8");
    EXPECT_FALSE(row.dial());
    EXPECT_FALSE(row.drive);
    EXPECT_TRUE(row.reachable);
    EXPECT_TRUE(row.variable);
    const base::StopToken stop;
    stop.request_stop();
    CardRequest request;
    request.design = d;
    EXPECT_FALSE(card(request, stop).complete);
}

} // namespace
} // namespace loopwright::survey
