#include "base/error.hpp"
#include "loop/explain.hpp"
#include "loop/loop_model.hpp"

#include <gtest/gtest.h>
#include <set>

namespace loopwright::loop {
namespace {

OperatingPoint any_point_of(const design::Design& d, Model model = Model::closed_form) {
    return make_model(d, model)->at(units::megahertz(14.1), units::watts(5), 2);
}

} // namespace

TEST(Explain, EveryHeadlineNumberHasFormulaValueSourceAndValidity) {
    const design::Design d;
    for (const Model model : {Model::closed_form, Model::full_wave}) {
        const auto all = explanations(d, any_point_of(d, model));
        std::set<std::string> keys;
        for (const Explanation& e : all) {
            EXPECT_TRUE(keys.insert(e.key).second) << e.key;
            EXPECT_FALSE(e.title.empty() || e.formula.empty() || e.source.empty() || e.validity.empty())
                << e.key;
            ASSERT_FALSE(e.symbols.empty()) << e.key;
            for (const Symbol& symbol : e.symbols) {
                EXPECT_FALSE(symbol.value.empty()) << e.key;
            }
        }
        for (const char* key :
             {"inductance_H", "tuning_capacitance_F", "resistance_ohm.radiation", "resistance_ohm.conductor",
              "resistance_ohm.joints", "resistance_ohm.capacitor", "resistance_ohm.total", "efficiency",
              "gain_max_dBi", "gain_low_angle_dBi", "q_unloaded", "bandwidth_half_power_Hz",
              "bandwidth_vswr_Hz", "loop_current_rms_A", "capacitor_voltage_peak_V"}) {
            EXPECT_TRUE(keys.contains(key)) << key;
        }
    }
}

TEST(Explain, ShowsTheNumberOfThePointItself) {
    const design::Design d;
    const OperatingPoint point = any_point_of(d);
    EXPECT_EQ(explain("q_unloaded", d, point).symbols.front().value,
              units::shown(point.resonance->q_unloaded, units::Dimension::number, 4));
    EXPECT_EQ(explain("capacitor_voltage_peak_V", d, point).symbols.front().value,
              units::shown(point.resonance->capacitor_voltage_peak, 4));
}

TEST(Explain, NothingIsExplainedThatIsNotEstablished) {
    const design::Design d;
    const OperatingPoint beyond =
        make_model(d, Model::closed_form)->at(units::megahertz(60), units::watts(5), 2);
    EXPECT_TRUE(explanations(d, beyond).empty());
    EXPECT_TRUE(explain("efficiency", d, beyond).title.empty());
    EXPECT_THROW((void)explain("no such key", d, any_point_of(d)), base::ProgramError);
}

} // namespace loopwright::loop
