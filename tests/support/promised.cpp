#include "support/promised.hpp"

#include <array>
#include <gtest/gtest.h>
#include <nlohmann/json.hpp>

namespace loopwright::support {

namespace {

constexpr std::array promised{
    "schema",
    "model",
    "frequency_Hz",
    "power_W",
    "inductance_H",
    "tuning_capacitance_F",
    "in_capacitor_range",
    "resistance_ohm",
    "dissipation_W",
    "efficiency",
    "gain_max_dBi",
    "gain_low_angle_dBi",
    "gain_over_dipole_dB",
    "q_unloaded",
    "q_loaded",
    "bandwidth_half_power_Hz",
    "bandwidth_vswr_Hz",
    "vswr",
    "loop_current_rms_A",
    "capacitor_current_rms_A",
    "capacitor_voltage_rms_V",
    "capacitor_voltage_peak_V",
    "notices",
};
constexpr std::array parts{"radiation", "ground", "conductor", "joints", "capacitor", "total"};

} // namespace

void expect_promised(const nlohmann::json& point) {
    for (const char* key : promised) {
        EXPECT_TRUE(point.contains(key)) << key;
    }
    for (const char* part : parts) {
        EXPECT_TRUE(point.at("resistance_ohm").contains(part)) << part;
        EXPECT_TRUE(point.at("dissipation_W").contains(part)) << part;
    }
    EXPECT_FALSE(point.at("notices").empty());
}

} // namespace loopwright::support
