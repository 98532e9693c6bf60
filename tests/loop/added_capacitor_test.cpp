// Added capacitors in the models: what the loop needs stays, range and loss follow the network.
#include "loop/design_parts.hpp"
#include "loop/loop_model.hpp"

#include <gtest/gtest.h>

namespace loopwright::loop {
namespace {

design::AddedCapacitor fixed(double pF, design::AddedConnection how, double q) {
    design::AddedCapacitor made;
    made.capacitance = units::picofarads(pF);
    made.connection = how;
    made.q = q;
    return made;
}

} // namespace

class AddedInModels : public testing::TestWithParam<Model> {};

TEST_P(AddedInModels, TheLoopNeedsTheSameAndRangeAndLossFollow) {
    design::Design plain;
    plain.capacitor.minimum = units::picofarads(20);
    plain.capacitor.maximum = units::picofarads(150);
    plain.capacitor.stray = units::picofarads(4);
    plain.capacitor.loss.q = 1e12;
    design::Design padded = plain;
    padded.capacitor.added = {fixed(100, design::AddedConnection::parallel, 500)};
    const auto at = [](const design::Design& design) {
        return make_model(design, GetParam(), Workload::few_frequencies)
            ->at(units::megahertz(7.1), units::watts(10), 2);
    };
    const OperatingPoint alone = at(plain), with = at(padded);
    ASSERT_TRUE(alone.resonance && with.resonance);
    const double need_F = alone.resonance->tuning_capacitance.value();
    EXPECT_NEAR(with.resonance->tuning_capacitance.value() / need_F, 1, 1e-4);
    EXPECT_GT(need_F, 154e-12); // 1 m of 22 mm tube: about 200 pF
    EXPECT_FALSE(alone.resonance->in_capacitor_range);
    EXPECT_TRUE(with.resonance->in_capacitor_range);
    EXPECT_NEAR(capacitor_range(padded.capacitor).high.value(), 254e-12, 1e-18);
    // 100 pF with Q 500 carry the share 100 pF/C of the current.
    const double omega = 2 * 3.141592653589793 * 7.1e6;
    const double added_ohm = 1 / (omega * 100e-12 * 500) * (100e-12 / need_F) * (100e-12 / need_F);
    const double current_ratio =
        (with.resonance->capacitor_current_rms / with.resonance->loop_current_rms).value();
    EXPECT_NEAR(with.resonance->resistance.capacitor.value() / (added_ohm * current_ratio * current_ratio), 1,
                1e-3);
    EXPECT_NEAR(with.resonance->resistance.radiation.value() / alone.resonance->resistance.radiation.value(),
                1, 1e-4);
}

INSTANTIATE_TEST_SUITE_P(BothModels, AddedInModels, testing::Values(Model::closed_form, Model::full_wave));

} // namespace loopwright::loop
