// Arguments at random: the program answers with 0, 1 or 2, says something, and never crashes or prints a
// number that is not finite.
#include "process.hpp"

#include <gtest/gtest.h>
#include <nlohmann/json.hpp>

#include <random>

namespace loopwright::cli_test {
namespace {

class Words {
public:
    explicit Words(unsigned seed) : random_(seed) {}

    std::vector<std::string> arguments(const std::string& file) {
        static const std::vector<std::string> commands = {
            "bands", "point", "sweep", "report", "check-file", "", "nonsense", "--help", "--version"};
        static const std::vector<std::string> options = {
            "--frequency", "--from", "--to",     "--points",         "--power",  "--vswr",
            "--model",     "--json", "--csv",    "--compare-dipole", "--strict", "--",
            "-",           "-x",     "--json=1", "--power=",         "--tilt"};
        std::vector<std::string> all = {any(commands)};
        const int count = below(9);
        for (int i = 0; i < count; ++i) {
            all.push_back(below(5) == 0 ? file : any(options));
            if (below(3) != 0) {
                all.push_back(value());
            }
        }
        return all;
    }
    /// Arguments that are complete, with odd values: most of them reach the model.
    std::vector<std::string> complete(const std::string& file) {
        if (below(2) == 0) {
            return {"point", file, "--frequency", value(), "--power", value(), "--vswr", value(), "--json"};
        }
        return {"sweep", file, "--from", value(), "--to", value(), "--points", std::to_string(below(40)),
                "--json"};
    }

private:
    int below(int limit) { return std::uniform_int_distribution<int>(0, limit - 1)(random_); }
    std::string any(const std::vector<std::string>& words) {
        return words[static_cast<std::size_t>(below(static_cast<int>(words.size())))];
    }
    std::string value() {
        static const std::vector<std::string> numbers = {"0",     "1",   "-1",  "2.5", "1e3",   "1e-300",
                                                         "1e300", "7,1", "nan", "inf", "10000", "0.0001",
                                                         "(1+2)", "1/0", "",    "99"};
        static const std::vector<std::string> units = {"",    "Hz", " kHz", "MHz", " GHz", "W",
                                                       " mW", "kW", "pF",   "m",   "%"};
        if (below(8) == 0) {
            std::string noise;
            for (int i = below(12); i > 0; --i) {
                noise += static_cast<char>(1 + below(255));
            }
            return noise;
        }
        return any(numbers) + any(units);
    }
    std::mt19937 random_;
};

void expect_sound(const std::vector<std::string>& arguments) {
    std::string line;
    for (const std::string& argument : arguments) {
        line += " '" + argument + "'";
    }
    SCOPED_TRACE(line);
    const Result result = run(arguments);
    EXPECT_LE(result.status, 2);
    EXPECT_GE(result.status, 0);
    EXPECT_FALSE(result.out.empty() && result.err.empty());
    EXPECT_EQ(result.err.find("mistake of the program"), std::string::npos) << result.err;
    if (result.status == 2) {
        EXPECT_EQ(result.out, "");
    }
    EXPECT_EQ(not_finite(result.out), "");
    if (!result.out.empty() && result.out.front() == '{') {
        EXPECT_TRUE(nlohmann::json::accept(result.out));
    }
}

TEST(Fuzz, RandomArgumentsAreAnswered) {
    const Folder folder;
    const std::string file = folder.write("copper.loop", copper_loop());
    Words words(20240501);
    for (int i = 0; i < 150; ++i) {
        expect_sound(words.arguments(file));
        expect_sound(words.complete(file));
    }
}

} // namespace
} // namespace loopwright::cli_test
