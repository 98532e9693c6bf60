// Every sample design of the repository through every command.
#include "process.hpp"
#include "support/samples.hpp"

#include <filesystem>
#include <gmock/gmock.h>
#include <gtest/gtest.h>
#include <nlohmann/json.hpp>

namespace loopwright::cli_test {
namespace {

using nlohmann::json;
using support::samples;
using testing::HasSubstr;

class EverySample : public testing::TestWithParam<std::string> {};

TEST_P(EverySample, RunsThroughEveryCommand) {
    const std::string& sample = GetParam();
    EXPECT_EQ(run({"check-file", sample}).status, 0);
    for (const std::vector<std::string>& asked :
         {std::vector<std::string>{"bands", sample, "--json"},
          {"point", sample, "--frequency", "10.1375MHz", "--json"},
          {"sweep", sample, "--from", "1.8MHz", "--to", "54MHz", "--points", "41", "--json"},
          {"match", sample, "--frequency", "10.1375MHz", "--json"},
          {"pattern", sample, "--frequency", "10.1375MHz", "--step", "15deg", "--json"},
          {"height", sample, "--frequency", "10.1375MHz", "--points", "3", "--json"}}) {
        const Result result = run(asked);
        EXPECT_LE(result.status, 1);
        EXPECT_EQ(result.status == 1, !result.err.empty()) << result.err;
        ASSERT_TRUE(json::accept(result.out));
        EXPECT_EQ(not_finite(result.out), "");
    }
    for (const std::vector<std::string>& asked :
         {std::vector<std::string>{"bands", sample}, {"report", sample}}) {
        const std::string text = run(asked).out;
        EXPECT_THAT(text, HasSubstr("\nHazards\n"));
        EXPECT_EQ(not_finite(text), "");
    }
}

INSTANTIATE_TEST_SUITE_P(Samples, EverySample, testing::ValuesIn(samples()), [](const auto& chosen) {
    return std::filesystem::path(chosen.param).stem().string();
});

TEST(Samples, AreAsTheProgramWouldSaveThem) {
    ASSERT_GE(samples().size(), 6U);
    for (const std::string& sample : samples()) {
        const Result result = run({"check-file", sample, "--strict"});
        EXPECT_EQ(result.status, 0) << result.err;
        EXPECT_EQ(result.out, sample + ": accepted, and saving would not change it\n");
    }
}

} // namespace
} // namespace loopwright::cli_test
