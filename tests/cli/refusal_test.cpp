// Files that are refused: exit status 1, nothing on the output, one sentence that names file and place.
#include "process.hpp"
#include "support/samples.hpp"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

namespace loopwright::cli_test {
namespace {

using testing::HasSubstr;
using testing::StartsWith;

class Refused : public testing::Test {
protected:
    /// The sentence that every command gives for a file; checks that they are one and the same.
    [[nodiscard]] static std::string sentence(const std::string& file) {
        const Result checked = run({"check-file", file});
        EXPECT_EQ(checked.status, 1);
        EXPECT_EQ(checked.out, "");
        for (const std::vector<std::string>& asked :
             {std::vector<std::string>{"bands", file},
              {"bands", file, "--json"},
              {"report", file},
              {"point", file, "--frequency", "7MHz"},
              {"sweep", file, "--from", "7MHz", "--to", "8MHz", "--points", "2"}}) {
            const Result result = run(asked);
            EXPECT_EQ(result.status, 1);
            EXPECT_EQ(result.out, "");
            EXPECT_EQ(result.err, checked.err);
        }
        EXPECT_THAT(checked.err, StartsWith("loopwright-cli: " + file));
        EXPECT_EQ(checked.err.find('\n'), checked.err.size() - 1) << checked.err;
        return checked.err;
    }
    [[nodiscard]] std::string of_text(const std::string& text) const {
        return sentence(folder.write("bad.loop", text));
    }
    Folder folder;
};

TEST_F(Refused, FilesThatAreNotThere) {
    static_cast<void>(sentence((folder.path() / "none.loop").string()));
}

TEST_F(Refused, FoldersAndEmptyFiles) {
    static_cast<void>(sentence(folder.path().string()));
    static_cast<void>(of_text(""));
}

TEST_F(Refused, TextThatIsNoJson) {
    static_cast<void>(of_text("{ \"format\": \n oops"));
    static_cast<void>(of_text("\xFF\xFE"));
}

TEST_F(Refused, WrongUnitsNameTheField) {
    EXPECT_THAT(of_text(copper_loop("5 pF")), HasSubstr("capacitor.rating.peak_voltage"));
    EXPECT_THAT(of_text(copper_loop("5 pF")), HasSubstr("5 pF"));
}

TEST_F(Refused, UnknownKeysNameTheNearestKnownOne) {
    const std::string error = of_text(copper_loop("5 kV", R"(, "staton": {})"));
    EXPECT_THAT(error, HasSubstr("staton"));
    EXPECT_THAT(error, HasSubstr("station"));
}

TEST_F(Refused, BandsThatTheRegionHasNot) {
    EXPECT_THAT(of_text(copper_loop("5 kV", R"(, "station": { "bands": ["41m"] })")), HasSubstr("41m"));
}

TEST(CheckFile, AcceptsAndSaysSo) {
    const Folder folder;
    const std::string file = folder.write("mine.loop", copper_loop());
    const Result result = run({"check-file", file});
    EXPECT_EQ(result.status, 0) << result.err;
    EXPECT_EQ(result.out, file + ": accepted\n");
    EXPECT_EQ(result.err, "");
}

TEST(CheckFile, StrictRefusesWhatSavingWouldChange) {
    const Folder folder;
    const std::string file = folder.write("mine.loop", copper_loop());
    const Result result = run({"check-file", "--strict", file});
    EXPECT_EQ(result.status, 1);
    EXPECT_EQ(result.out, "");
    EXPECT_THAT(result.err,
                HasSubstr(file + ":1: saving the file would change it, from this line on: from '{"));
}

// The line as it is and as it would be.
TEST(CheckFile, StrictSaysWhatSavingWouldChange) {
    const Folder folder;
    const std::string sample = read_file(support::samples().front());
    const auto said = [&](const std::string& from, const std::string& to) {
        std::string text = sample;
        const auto at = text.find(from);
        EXPECT_NE(at, std::string::npos) << from;
        text.replace(at, from.size(), to);
        const Result result = run({"check-file", "--strict", folder.write("mine.loop", text)});
        EXPECT_EQ(result.status, 1);
        return result.err;
    };
    EXPECT_THAT(
        said("\"version\": 1,", "\"version\": 1.0,"),
        HasSubstr(":3: saving the file would change it, from this line on: from '\"version\": 1.0,' to "
                  "'\"version\": 1,'"));
    EXPECT_THAT(said("  \"version\"", "   \"version\""),
                HasSubstr(":3: saving the file would change it, from this line on: the blanks or the end of "
                          "the line '\"version\": 1,'"));
    EXPECT_THAT(
        said("\"version\": 1,\n", "\"version\": 1,\n\n"),
        HasSubstr(
            ":4: saving the file would change it, from this line on: from an empty line to '\"title\""));
}

} // namespace
} // namespace loopwright::cli_test
