#include "design/on_band.hpp"

#include <gtest/gtest.h>

namespace loopwright::design {
namespace {

TEST(OnBand, LeavesOutWhatIsPluggedInElsewhere) {
    Design d;
    d.capacitor.added.resize(3);
    d.capacitor.added[0].note = "always";
    d.capacitor.added[1].note = "low";
    d.capacitor.added[1].bands = {"160m", "80M"};
    d.capacitor.added[2].note = "top";
    d.capacitor.added[2].bands = {"10m"};
    const auto notes = [&](const char* band) {
        std::string all;
        for (const AddedCapacitor& each : on_band(d, band).capacitor.added) {
            all += each.note + " ";
        }
        return all;
    };
    EXPECT_EQ(notes("80m"), "always low ");
    EXPECT_EQ(notes("10m"), "always top ");
    EXPECT_EQ(notes("20m"), "always ");
    EXPECT_EQ(notes(""), "always ");
}

} // namespace
} // namespace loopwright::design
