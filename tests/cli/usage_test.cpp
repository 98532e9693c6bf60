// Arguments that make no sense: exit status 2, nothing on the output, one exact sentence on the error output.
#include "process.hpp"

#include <gtest/gtest.h>

namespace loopwright::cli_test {
namespace {

struct Wrong {
    std::vector<std::string> arguments;
    std::string sentence; ///< without the program's name in front
};

class Usage : public testing::TestWithParam<Wrong> {};

TEST_P(Usage, IsRefusedInOneSentence) {
    const Result result = run(GetParam().arguments);
    EXPECT_EQ(result.status, 2);
    EXPECT_EQ(result.out, "");
    EXPECT_EQ(result.err, "loopwright-cli: " + GetParam().sentence + "\n");
}

const std::string top = "; see 'loopwright-cli --help'";
const std::string bands = "; see 'loopwright-cli bands --help'";
const std::string point = "; see 'loopwright-cli point --help'";
const std::string sweep = "; see 'loopwright-cli sweep --help'";

INSTANTIATE_TEST_SUITE_P(
    Commands, Usage,
    testing::Values(Wrong{{}, "a command is needed" + top},
                    Wrong{{"pont", "x.loop"}, "there is no command 'pont', perhaps 'point' is meant" + top},
                    Wrong{{"xyzzy"}, "there is no command 'xyzzy'" + top},
                    Wrong{{""}, "there is no command ''" + top},
                    Wrong{{"--frobnicate"}, "there is no option '--frobnicate'" + top},
                    Wrong{{"--version=2"}, "--version takes no value" + top},
                    Wrong{{"bands"}, "'bands' needs a design file" + bands},
                    Wrong{{"bands", "x.loop", "y.loop"},
                          "'y.loop' is one argument too many; a value with a blank needs quotes" + bands},
                    Wrong{{"point", "x.loop", "--frequency", "7", "MHz"},
                          "'MHz' is one argument too many; a value with a blank needs quotes" + point}));

INSTANTIATE_TEST_SUITE_P(
    Options, Usage,
    testing::Values(
        Wrong{{"bands", "x.loop", "--tilt", "-5deg"}, "there is no option '--tilt' for 'bands'" + bands},
        Wrong{{"bands", "x.loop", "--powr", "5W"},
              "there is no option '--powr' for 'bands', perhaps '--power' is meant" + bands},
        Wrong{{"bands", "x.loop", "--powr=5W"},
              "there is no option '--powr' for 'bands', perhaps '--power' is meant" + bands},
        Wrong{{"bands", "x.loop", "-5"},
              "'-5' is one argument too many; a value with a blank needs quotes" + bands},
        Wrong{{"bands", "x.loop", "--frequency", "7MHz"},
              "there is no option '--frequency' for 'bands'" + bands},
        Wrong{{"point", "x.loop"}, "--frequency is needed" + point},
        Wrong{{"point", "x.loop", "--frequency"}, "--frequency needs a value" + point},
        Wrong{{"point", "x.loop", "--frequency", "7MHz", "--frequency", "8MHz"},
              "--frequency is given more than once" + point},
        Wrong{{"bands", "x.loop", "--json", "--json"}, "--json is given more than once" + bands},
        Wrong{{"bands", "x.loop", "--json", "--csv"}, "--json and --csv exclude each other" + bands},
        Wrong{{"bands", "x.loop", "--json=yes"}, "--json takes no value" + bands},
        Wrong{{"bands", "x.loop", "--model", "fast"},
              "--model: 'fast' is not accepted; closed-form or full-wave" + bands},
        Wrong{{"sweep", "x.loop", "--from", "7MHz", "--to", "8MHz"}, "--points is needed" + sweep}));

// The file does not exist: values are judged first.
INSTANTIATE_TEST_SUITE_P(
    Values, Usage,
    testing::Values(
        Wrong{{"point", "x.loop", "--frequency", "-7MHz"},
              "--frequency: '-7MHz' is not accepted; a frequency from 10 kHz to 1 GHz"},
        Wrong{{"point", "x.loop", "--frequency", "9.99kHz"},
              "--frequency: '9.99kHz' is not accepted; a frequency from 10 kHz to 1 GHz"},
        Wrong{{"point", "x.loop", "--frequency=1.01 GHz"},
              "--frequency: '1.01 GHz' is not accepted; a frequency from 10 kHz to 1 GHz"},
        Wrong{{"bands", "x.loop", "--power", "-5W"},
              "--power: '-5W' is not accepted; a power above 0, up to 1 MW"},
        Wrong{{"bands", "x.loop", "--power", "0W"},
              "--power: '0W' is not accepted; a power above 0, up to 1 MW"},
        Wrong{{"bands", "x.loop", "--vswr", "1"},
              "--vswr: '1' is not accepted; a standing wave ratio above 1, up to 100"},
        Wrong{{"sweep", "x.loop", "--from", "7MHz", "--to", "3MHz", "--points", "5"},
              "--to: '3MHz' is not accepted; a frequency above that of --from, 7MHz"},
        Wrong{{"sweep", "x.loop", "--from", "7MHz", "--to", "8MHz", "--points", "5.5"},
              "--points: '5.5' is not accepted; a whole number from 1 to 100000"},
        Wrong{{"sweep", "x.loop", "--from", "7MHz", "--to", "8MHz", "--points", "100001"},
              "--points: '100001' is not accepted; a whole number from 1 to 100000"},
        Wrong{{"sweep", "x.loop", "--from", "7MHz", "--to", "8MHz", "--points", "99999999999999999999"},
              "--points: '99999999999999999999' is not accepted; a whole number from 1 to 100000"}));

// Their wording is that of the reader of quantities; here it matters that the option is named, once.
TEST(UnreadableValue, NamesTheOption) {
    for (const std::string value :
         {"", "seven", "7", "7 W", "7MHz7", "nan", "inf MHz", "1e999 MHz", "7//2 MHz"}) {
        const Result result = run({"point", "x.loop", "--frequency", value});
        EXPECT_EQ(result.status, 2) << value;
        EXPECT_EQ(result.out, "") << value;
        EXPECT_EQ(result.err.find("loopwright-cli: --frequency"), 0U) << result.err;
        EXPECT_EQ(result.err.find('\n'), result.err.size() - 1) << result.err;
    }
}

} // namespace
} // namespace loopwright::cli_test
