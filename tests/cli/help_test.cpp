// Help, version, and the texts that are made from the table of commands.
#include "process.hpp"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <sstream>

namespace loopwright::cli_test {
namespace {

using testing::HasSubstr;

const std::vector<std::string> all_commands = {"bands",   "point",  "sweep",     "report", "match",
                                               "pattern", "height", "field",     "limits", "calibrate",
                                               "card",    "dial",   "check-file"};

std::string expected(const std::string& name) {
    return read_file(std::filesystem::path(LOOPWRIGHT_SOURCE_DIR) / "tests/cli/expected" / name);
}

void expect_output(const std::vector<std::string>& arguments, const std::string& text) {
    const Result result = run(arguments);
    EXPECT_EQ(result.status, 0);
    EXPECT_EQ(result.out, text);
    EXPECT_EQ(result.err, "");
}

TEST(Help, IsExact) {
    expect_output({"--help"}, expected("help.txt"));
    expect_output({"-h"}, expected("help.txt"));
    expect_output({"point", "--help"}, expected("help-point.txt"));
    expect_output({"point", "x.loop", "--frequency", "oddly", "-h"}, expected("help-point.txt"));
}

TEST(Help, OfEveryCommandFitsATerminalAndNamesItsOptions) {
    for (const std::string& command : all_commands) {
        const Result result = run({command, "--help"});
        EXPECT_EQ(result.status, 0);
        EXPECT_THAT(result.out, HasSubstr("Usage: loopwright-cli " + command +
                                          (command == "limits" ? " [ID]" : " FILE")));
        EXPECT_THAT(result.out, HasSubstr("--help"));
        std::istringstream lines(result.out);
        for (std::string line; std::getline(lines, line);) {
            EXPECT_TRUE(line.size() <= 88 || line.find("  loopwright-cli ") == 0) << line;
        }
    }
}

TEST(Version, IsThatOfTheProject) {
    expect_output({"--version"}, std::string("loopwright-cli ") + LOOPWRIGHT_VERSION + "\n");
}

TEST(Reference, OnPaperIsWhatTheProgramWrites) {
    EXPECT_EQ(run({"--print-reference"}).out,
              read_file(std::filesystem::path(LOOPWRIGHT_SOURCE_DIR) / "docs/reference/cli.md"))
        << "Run: loopwright-cli --print-reference > docs/reference/cli.md";
}

TEST(Manual, HasItsSectionsAndEveryCommand) {
    const std::string page = run({"--print-manual"}).out;
    EXPECT_EQ(page.find(".TH LOOPWRIGHT\\-CLI 1"), 0U);
    for (const char* title : {"NAME", "SYNOPSIS", "DESCRIPTION", "COMMANDS", "EXIT STATUS", "EXAMPLES"}) {
        EXPECT_THAT(page, HasSubstr(std::string(".SH ") + title + "\n"));
    }
    for (const std::string command : {"bands", "point", "sweep", "report", "check\\-file"}) {
        EXPECT_THAT(page, HasSubstr(".SS " + command + "\n"));
    }
    std::istringstream lines(page);
    for (std::string line; std::getline(lines, line);) {
        EXPECT_FALSE(line.empty()) << "an empty line is a stray gap in troff";
        EXPECT_NE(line.front(), '\'') << line;
    }
}

TEST(Manual, IsInstalledAsItIsPrinted) {
    const Result unpacked = run_program("gzip", {"-dc", LOOPWRIGHT_GENERATED "/loopwright-cli.1.gz"});
    EXPECT_EQ(unpacked.status, 0);
    EXPECT_EQ(unpacked.out, run({"--print-manual"}).out);
}

/// What bash offers behind some words of a command line.
std::string completed(const std::string& words) {
    const std::string script = "source '" LOOPWRIGHT_GENERATED "/loopwright-cli.bash'\nCOMP_WORDS=(" + words +
                               ")\nCOMP_CWORD=$((${#COMP_WORDS[@]} - 1))\n_loopwright_cli\n"
                               "echo \"${COMPREPLY[*]}\"\n";
    const Result result = run_program("bash", {"-c", script});
    EXPECT_EQ(result.status, 0);
    EXPECT_EQ(result.err, "");
    return result.out;
}

TEST(Completion, OffersCommandsOptionsAndChoices) {
    EXPECT_EQ(completed("loopwright-cli s"), "sweep\n");
    EXPECT_EQ(completed("loopwright-cli ''"),
              "bands point sweep report match pattern height field keying "
              "calibrate card dial drift limits check-file --help --version\n");
    EXPECT_EQ(completed("loopwright-cli point x.loop --c"), "--compare-dipole\n");
    EXPECT_EQ(completed("loopwright-cli point x.loop --model f"), "full-wave\n");
    EXPECT_EQ(completed("loopwright-cli point x.loop --frequency 7"), "\n");
    EXPECT_EQ(completed("loopwright-cli nonsense --"), "\n");
}

TEST(Completion, OffersDesignFilesAndFolders) {
    const Folder folder;
    const std::string file = folder.write("mine.loop", "");
    static_cast<void>(folder.write("other.txt", ""));
    std::filesystem::create_directory(folder.path() / "more");
    const std::string start = (folder.path() / "m").string();
    EXPECT_EQ(completed("loopwright-cli bands " + start),
              (folder.path() / "more").string() + "/ " + file + "\n");
    EXPECT_EQ(completed("loopwright-cli bands " + (folder.path() / "o").string()), "\n");
}

} // namespace
} // namespace loopwright::cli_test
