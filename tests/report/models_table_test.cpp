// Both models' curves as one table for programs.
#include "base/error.hpp"
#include "point_samples.hpp"
#include "report/tables.hpp"

#include <algorithm>
#include <gtest/gtest.h>

namespace loopwright::report {
namespace {

loop::OperatingPoint full_wave_over_ground(loop::OperatingPoint point) {
    point.model = loop::Model::full_wave;
    if (point.resonance) {
        point.resonance->resistance.ground = units::ohms(0.1); // half of the 0.2 ohm in all
        point.resonance->efficiency = 0.1;
    }
    return point;
}

survey::Survey survey_of(loop::Model model, std::vector<loop::OperatingPoint> curve) {
    survey::Survey survey;
    survey.request.model = model;
    survey.request.design.site.ground.kind = design::GroundKind::soil;
    survey.curve = std::move(curve);
    return survey;
}

std::string text_at(const Table& table, std::size_t row, const std::string& key) {
    const auto column = std::find_if(table.columns.begin(), table.columns.end(),
                                     [&](const Column& one) { return one.key == key; });
    if (column == table.columns.end()) {
        ADD_FAILURE() << key;
        return {};
    }
    const Cell& cell = table.rows.at(row).at(static_cast<std::size_t>(column - table.columns.begin()));
    const auto* text = std::get_if<std::string>(&cell);
    return text != nullptr ? *text : std::string();
}

TEST(ModelsTable, PairsThePointsAndNamesTheReasons) {
    const survey::Survey closed = survey_of(loop::Model::closed_form, {established(), not_established()});
    const survey::Survey full = survey_of(loop::Model::full_wave, {full_wave_over_ground(established()),
                                                                   full_wave_over_ground(not_established())});
    const Table table = models_data(closed, full);
    EXPECT_EQ(to_csv(table), to_csv(models_data(full, closed))) << "either order";
    ASSERT_EQ(table.rows.size(), 4U);
    const char* models[] = {"full-wave", "closed-form", "full-wave", "closed-form"};
    for (std::size_t i = 0; i < 4; ++i) {
        EXPECT_EQ(table.rows[i].size(), table.columns.size());
        EXPECT_EQ(text_at(table, i, "model"), models[i]);
    }
    for (const std::size_t i : {0U, 1U}) {
        EXPECT_EQ(text_at(table, i, "models_part_by"), "ground");
    }
    EXPECT_EQ(text_at(table, 2, "models_part_by"), "closed_form_range");
}

TEST(ModelsTable, RefusesSurveysThatAreNoPair) {
    const survey::Survey closed = survey_of(loop::Model::closed_form, {established()});
    const survey::Survey longer =
        survey_of(loop::Model::full_wave,
                  {full_wave_over_ground(established()), full_wave_over_ground(not_established())});
    EXPECT_THROW(static_cast<void>(models_data(closed, longer)), base::ProgramError);
    EXPECT_THROW(static_cast<void>(models_data(closed, closed)), base::ProgramError);
}

} // namespace
} // namespace loopwright::report
