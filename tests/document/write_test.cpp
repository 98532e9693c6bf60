#include "base/error.hpp"
#include "document/design_file.hpp"
#include "document/file_text.hpp"
#include "sample_text.hpp"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <csignal>
#include <fstream>
#include <random>
#include <sstream>
#include <sys/resource.h>
#include <sys/stat.h>
#include <unistd.h>

namespace loopwright::document {
namespace {

namespace fs = std::filesystem;
using testing::HasSubstr;

void put(const fs::path& file, const std::string& content) {
    std::ofstream(file, std::ios::binary) << content;
}

// A folder of its own for each test, removed afterwards.
class SaveDesign : public testing::Test {
protected:
    void SetUp() override {
        std::string name = (fs::temp_directory_path() / "loopwright-test-XXXXXX").string();
        ASSERT_NE(::mkdtemp(name.data()), nullptr);
        folder = name;
    }
    void TearDown() override { fs::remove_all(folder); }
    [[nodiscard]] std::string refusal(const fs::path& file) const {
        try {
            save_design(design, file);
            return "saved";
        } catch (const base::InputError& error) {
            return error.what();
        }
    }
    [[nodiscard]] std::ptrdiff_t files() const {
        return std::distance(fs::directory_iterator(folder), fs::directory_iterator());
    }
    fs::path folder;
    design::Design design = read_design(whole_text);
};

} // namespace

TEST(WriteDesign, TheWholeTextIsItsOwnCanonicalForm) {
    EXPECT_EQ(write_design(read_design(whole_text)), whole_text);
}

TEST(WriteDesign, IsStableAndKeepsTheDesign) {
    for (const std::string& text : {whole_text, least_text}) {
        const design::Design first = read_design(text);
        const std::string written = write_design(first);
        const design::Design second = read_design(written);
        EXPECT_EQ(write_design(second), written);
        EXPECT_EQ(second.loop.size, first.loop.size);
        EXPECT_EQ(second.capacitor.maximum, first.capacitor.maximum);
        EXPECT_EQ(second.station, first.station.bands.empty() ? second.station : first.station);
    }
    EXPECT_EQ(read_design(write_design(read_design(whole_text))), read_design(whole_text));
}

TEST(WriteDesign, WritesQuantitiesAsTypedAndOthersCanonically) {
    design::Design d;
    d.loop.size = {units::metres(0.9), "2*0.45 m"};
    d.capacitor.maximum = units::picofarads(150);
    d.loop.gap = {units::millimetres(20), "30 mm"}; // a text that no longer says the value
    d.loop.lead = {units::millimetres(40), "x"};
    const std::string text = write_design(d);
    EXPECT_THAT(text, HasSubstr("\"size\": \"2*0.45 m\""));
    EXPECT_THAT(text, HasSubstr("\"maximum\": \"150 pF\""));
    EXPECT_THAT(text, HasSubstr("\"gap\": \"20 mm\""));
    EXPECT_THAT(text, HasSubstr("\"lead\": \"40 mm\"")); // not used by one turn, but not the default
    EXPECT_THAT(text, HasSubstr("\"temperature\": \"20 °C\""));
    EXPECT_THAT(text, HasSubstr("\"joints\": []"));
    EXPECT_THAT(text, testing::Not(HasSubstr("turn_spacing")));
    EXPECT_THAT(text, testing::Not(HasSubstr("braid_factor")));
    EXPECT_EQ(text.back(), '\n');
}

TEST(WriteDesign, WhatTheOutlineDoesNotUseIsKept) {
    design::Design d;
    d.loop.width = {units::metres(2), "2 m"};
    d.conductor.form = design::ConductorForm::wire;
    d.conductor.diameter = {units::millimetres(3), "3 mm"};
    d.conductor.wall = {units::millimetres(0.5), "0.5 mm"};
    const design::Design back = read_design(write_design(d));
    EXPECT_EQ(back.loop.width, d.loop.width);
    EXPECT_EQ(back.conductor.wall, d.conductor.wall);
}

TEST(WriteDesign, BrokenTextFromElsewhereIsReplacedNotWritten) {
    design::Design d;
    d.title = "T\xFCr";
    EXPECT_NO_THROW((void)read_design(write_design(d)));
}

// Random designs: reading gives back every value to the last bit, whether typed or not.
TEST(WriteDesign, RandomDesignsComeBackExactly) {
    std::mt19937 engine(5);
    const auto in = [&](double low, double high) {
        return std::uniform_real_distribution<double>(low, high)(engine);
    };
    for (int i = 0; i < 300; ++i) {
        design::Design d;
        d.loop.outline = static_cast<design::Outline>(i % 3);
        d.loop.size_is = d.loop.outline == design::Outline::polygon ? design::SizeMeaning::side
                                                                    : design::SizeMeaning::diameter;
        d.loop.size = units::metres(in(0.3, 3));
        d.loop.width = units::metres(in(0.3, 3));
        d.loop.height = {units::metres(0.9144), "3 ft"};
        d.conductor.diameter = units::metres(in(0.003, 0.02));
        d.conductor.temperature = units::kelvin(in(250, 330));
        d.conductor.metal = {"", units::siemens_per_metre(in(1e6, 6e7)), units::per_kelvin(in(0.001, 0.004))};
        d.capacitor.minimum = units::farads(in(1e-12, 2e-11));
        d.capacitor.loss.series_resistance = units::ohms(in(0, 0.1));
        d.capacitor.loss.exponent = in(-1, 1);
        d.site.tilt = units::radians(in(-1.5, 1.5));
        d.station.power = units::watts(in(0.1, 100));
        const design::Design back = read_design(write_design(d));
        ASSERT_EQ(back.loop.size.value, d.loop.size.value);
        ASSERT_EQ(back.loop.width.value, d.loop.width.value);
        ASSERT_EQ(back.loop.height, d.loop.height);
        ASSERT_EQ(back.conductor.temperature.value, d.conductor.temperature.value);
        ASSERT_EQ(back.conductor.metal.conductivity.value, d.conductor.metal.conductivity.value);
        ASSERT_EQ(back.conductor.metal.temperature_coefficient.value,
                  d.conductor.metal.temperature_coefficient.value);
        ASSERT_EQ(back.capacitor.minimum.value, d.capacitor.minimum.value);
        ASSERT_EQ(back.capacitor.loss.series_resistance->value, d.capacitor.loss.series_resistance->value);
        ASSERT_EQ(back.capacitor.loss.exponent, d.capacitor.loss.exponent);
        ASSERT_EQ(back.site.tilt.value, d.site.tilt.value);
        ASSERT_EQ(back.station.power.value, d.station.power.value);
    }
}

TEST_F(SaveDesign, MakesAndReplacesAFile) {
    const fs::path file = folder / "a.loop";
    save_design(design, file);
    EXPECT_EQ(content_of(file), whole_text);
    design.title = "Other";
    save_design(design, file);
    EXPECT_EQ(load_design(file).title, "Other");
    EXPECT_EQ(files(), 1) << "nothing is left beside the file";
}

TEST_F(SaveDesign, KeepsPermissionsAndLinks) {
    const fs::path file = folder / "a.loop";
    put(file, "old");
    ASSERT_EQ(::chmod(file.c_str(), 0640), 0);
    fs::create_symlink("a.loop", folder / "link.loop");
    save_design(design, folder / "link.loop");
    EXPECT_TRUE(fs::is_symlink(folder / "link.loop"));
    EXPECT_EQ(content_of(file), whole_text);
    struct stat state {};
    ASSERT_EQ(::stat(file.c_str(), &state), 0);
    EXPECT_EQ(state.st_mode & 07777U, 0640U);
    const mode_t mask = ::umask(027);
    save_design(design, folder / "new.loop");
    ::umask(mask);
    ASSERT_EQ(::stat((folder / "new.loop").c_str(), &state), 0);
    EXPECT_EQ(state.st_mode & 07777U, 0640U) << "a new file follows the umask";
}

TEST_F(SaveDesign, RefusesWhatIsNoFile) {
    EXPECT_THAT(refusal(folder), HasSubstr("is a folder"));
    EXPECT_THAT(refusal(folder / "nowhere" / "a.loop"), HasSubstr("No such file or directory"));
    put(folder / "file", "x");
    EXPECT_THAT(refusal(folder / "file" / "a.loop"), HasSubstr("Not a directory"));
    EXPECT_EQ(content_of(folder / "file"), "x");
    EXPECT_THAT(refusal("/dev/full"), HasSubstr("is not an ordinary file"));
    EXPECT_THAT(refusal(""), HasSubstr("no file name"));
    EXPECT_THAT(refusal(folder / std::string(300, 'x')), HasSubstr("File name too long"));
    EXPECT_EQ(refusal(folder / (std::string(250, 'x') + ".loop")), "saved"); // as long as a name can be
    fs::remove(folder / (std::string(250, 'x') + ".loop"));
    EXPECT_EQ(files(), 1);
}

// The disk is full in the middle of the text: the process may write files of 100 bytes only.
TEST_F(SaveDesign, AFailedWriteLeavesTheOldFile) {
    const fs::path file = folder / "a.loop";
    put(file, "the old text");
    struct rlimit before {};
    ASSERT_EQ(::getrlimit(RLIMIT_FSIZE, &before), 0);
    struct rlimit tight = before;
    tight.rlim_cur = 100;
    const auto handler = std::signal(SIGXFSZ, SIG_IGN);
    ASSERT_EQ(::setrlimit(RLIMIT_FSIZE, &tight), 0);
    const std::string text = refusal(file);
    ASSERT_EQ(::setrlimit(RLIMIT_FSIZE, &before), 0);
    std::signal(SIGXFSZ, handler);
    EXPECT_THAT(text, HasSubstr("cannot be written: File too large"));
    EXPECT_EQ(content_of(file), "the old text");
    EXPECT_EQ(files(), 1);
}

TEST_F(SaveDesign, AnImpossibleDesignIsNotSaved) {
    const fs::path file = folder / "a.loop";
    put(file, "the old text");
    design.loop.turns = 0;
    EXPECT_THAT(refusal(file), HasSubstr("loop.turns"));
    design.loop.turns = 1;
    design.title = std::string(300, 'x');
    EXPECT_THAT(refusal(file), HasSubstr("title"));
    EXPECT_EQ(content_of(file), "the old text");
}

TEST_F(SaveDesign, LoadingSaysWhatIsWrongWithTheFile) {
    const auto load = [&](const fs::path& file) -> std::string {
        try {
            (void)load_design(file);
            return "loaded";
        } catch (const base::InputError& error) {
            return error.what();
        }
    };
    EXPECT_THAT(load(folder / "none.loop"), HasSubstr("none.loop: cannot be opened: No such file"));
    EXPECT_THAT(load(folder), HasSubstr("is a folder"));
    EXPECT_THAT(load("/dev/zero"), HasSubstr("larger than 1 MiB"));
    EXPECT_THAT(load("/dev/null"), HasSubstr("the file is empty"));
    put(folder / "bad.loop", "{\n\"format\": 1}");
    EXPECT_THAT(load(folder / "bad.loop"), HasSubstr("bad.loop:2: format:"));
    const fs::path large = folder / "large.loop";
    put(large, "{");
    fs::resize_file(large, 100'000'000); // sparse: 100 MB of zeros
    EXPECT_THAT(load(large), HasSubstr("larger than 1 MiB"));
}

} // namespace loopwright::document
