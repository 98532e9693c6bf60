// What must hold for every sample design, whatever it is: definitions (docs/theory), conservation of power,
// and verdicts that agree with the numbers beside them. No past values.
#include "document/design_file.hpp"
#include "support/samples.hpp"
#include "survey/survey.hpp"
#include "survey/verdict.hpp"

#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>
#include <filesystem>
#include <numbers>

namespace loopwright::survey {
namespace {

using std::numbers::pi;
using support::samples;

/// All bands of the region and a curve over HF.
Survey whole(const std::string& file, double power_W) {
    Request request;
    request.design = document::load_design(file);
    request.design.station.bands.clear();
    request.design.station.power = units::watts(power_W);
    request.points = 80;
    return run(request);
}

class Sample : public testing::TestWithParam<std::string> {
protected:
    Survey survey = whole(GetParam(), 5);
    [[nodiscard]] std::vector<loop::OperatingPoint> points() const {
        std::vector<loop::OperatingPoint> all = survey.curve;
        for (const BandRow& row : survey.bands) {
            all.push_back(row.point);
        }
        return all;
    }
};

TEST_P(Sample, IsEstablishedSomewhereAndSaysWhyWhereNot) {
    int established = 0;
    for (const loop::OperatingPoint& point : points()) {
        established += point.resonance ? 1 : 0;
        const auto& notices = point.notices.all();
        const bool reason = std::any_of(notices.begin(), notices.end(), [](const base::Notice& notice) {
            return notice.severity == base::Severity::not_established;
        });
        EXPECT_NE(point.resonance.has_value(), reason) << point.frequency.value();
    }
    EXPECT_GT(established, 5);
}

TEST_P(Sample, PowerIsConserved) {
    for (const loop::OperatingPoint& point : points()) {
        if (!point.resonance) {
            continue;
        }
        const loop::Resonance& r = *point.resonance;
        const loop::ResistanceParts& parts = r.resistance;
        for (const auto& part : {parts.radiation, parts.conductor, parts.joints, parts.capacitor}) {
            EXPECT_GE(part.value(), 0.0);
        }
        EXPECT_GT(r.efficiency, 0.0);
        EXPECT_LE(r.efficiency, 1.0);
        const double current = r.loop_current_rms.value();
        EXPECT_NEAR(current * current * parts.total().value(), 5.0, 5e-9);
        EXPECT_NEAR(r.efficiency, (parts.radiation / parts.total()).value(), 1e-12) << "free space";
    }
}

TEST_P(Sample, VoltageIsThatOfTheCapacitorsCurrent) {
    for (const loop::OperatingPoint& point : points()) {
        if (!point.resonance) {
            continue;
        }
        const loop::Resonance& r = *point.resonance;
        const double reactance = 1 / (2 * pi * point.frequency.value() * r.tuning_capacitance.value());
        const double volts = r.capacitor_voltage_rms.value();
        EXPECT_NEAR(volts / (r.capacitor_current_rms.value() * reactance), 1.0, 1e-9);
        EXPECT_NEAR(r.capacitor_voltage_peak.value() / volts, std::sqrt(2.0), 1e-9);
        EXPECT_LE(r.capacitor_current_rms.value(), r.loop_current_rms.value() * (1 + 1e-12))
            << "the current is largest opposite the capacitor";
    }
}

template <class Quantity>
void expect_inside(Quantity nominal, const units::Interval<Quantity>& range) {
    EXPECT_LE(range.low, nominal);
    EXPECT_GE(range.high, nominal);
}

TEST_P(Sample, IntervalsHoldTheNominalValue) {
    for (const loop::OperatingPoint& point : points()) {
        if (!point.resonance) {
            continue;
        }
        const loop::Resonance& r = *point.resonance;
        expect_inside(r.tuning_capacitance, r.tuning_capacitance_range);
        expect_inside(r.resistance.total(), r.total_resistance_range);
        expect_inside(r.efficiency, r.efficiency_range);
        expect_inside(r.bandwidth_vswr, r.bandwidth_vswr_range);
        expect_inside(r.capacitor_voltage_peak, r.capacitor_voltage_peak_range);
        EXPECT_LE(r.efficiency_range.high, 1.0);
    }
}

TEST_P(Sample, NeedsLessCapacitanceTheHigherItIsTuned) {
    const loop::Resonance* below = nullptr;
    for (const loop::OperatingPoint& point : survey.curve) {
        if (point.resonance && below != nullptr) {
            EXPECT_LT(point.resonance->tuning_capacitance, below->tuning_capacitance);
        }
        below = point.resonance ? &*point.resonance : below;
    }
}

// A linear circuit: four times the power, twice the voltage and current, nothing else.
TEST_P(Sample, ScalesWithTheRootOfThePower) {
    const Survey louder = whole(GetParam(), 20);
    ASSERT_EQ(louder.curve.size(), survey.curve.size());
    for (std::size_t i = 0; i < survey.curve.size(); ++i) {
        const auto& one = survey.curve[i].resonance;
        const auto& four = louder.curve[i].resonance;
        ASSERT_EQ(one.has_value(), four.has_value());
        if (one) {
            EXPECT_NEAR((four->capacitor_voltage_peak / one->capacitor_voltage_peak).value(), 2.0, 1e-9);
            EXPECT_NEAR((four->loop_current_rms / one->loop_current_rms).value(), 2.0, 1e-9);
            EXPECT_EQ(four->efficiency, one->efficiency);
            EXPECT_EQ(four->tuning_capacitance.value(), one->tuning_capacitance.value());
        }
    }
}

TEST_P(Sample, VerdictsAgreeWithTheNumbers) {
    const design::Capacitor& capacitor = survey.request.design.capacitor;
    for (const BandRow& row : survey.bands) {
        SCOPED_TRACE(row.band.name);
        auto beside = capacitor.stray.value;
        for (const design::AddedCapacitor& each : capacitor.added) { // those of the samples are in parallel
            const bool there = std::count(each.bands.begin(), each.bands.end(), row.band.name) > 0;
            beside += there || each.bands.empty() ? each.capacitance.value : units::farads(0);
        }
        const auto start = capacitor.minimum.value + beside;
        const auto end = capacitor.maximum.value + beside;
        EXPECT_FALSE(row.verdict_text.empty());
        EXPECT_EQ(row.verdict == BandVerdict::not_established, !row.point.resonance);
        if (!row.point.resonance) {
            continue;
        }
        const loop::Resonance& r = *row.point.resonance;
        const bool reached = r.tuning_capacitance >= start && r.tuning_capacitance <= end;
        EXPECT_EQ(r.in_capacitor_range, reached);
        EXPECT_EQ(row.verdict == BandVerdict::out_of_reach, !reached);
        const auto& rating = capacitor.rating.peak_voltage;
        const bool over = rating && r.capacitor_voltage_peak_range.high > rating->value;
        EXPECT_EQ(row.verdict == BandVerdict::voltage_exceeded, reached && over);
        if (row.verdict == BandVerdict::worthwhile) {
            EXPECT_GE(r.efficiency_range.low, worthwhile_from);
        }
        for (const Reason& reason : row.further) {
            EXPECT_LE(reason.verdict, row.verdict) << "the worst is the verdict";
        }
    }
}

std::string name_of_sample(const testing::TestParamInfo<std::string>& info) {
    std::string name = std::filesystem::path(info.param).stem().string();
    std::replace_if(
        name.begin(), name.end(), [](unsigned char c) { return std::isalnum(c) == 0; }, '_');
    return name;
}

INSTANTIATE_TEST_SUITE_P(Designs, Sample, testing::ValuesIn(samples()), name_of_sample);

TEST(Samples, AreAtLeastSix) {
    EXPECT_GE(samples().size(), 6U);
}

} // namespace
} // namespace loopwright::survey
