#pragma once
// The independent full-wave cases of tests/reference/data; the note in that file defines their model.
#include <array>
#include <string>
#include <vector>

namespace loopwright::support {

struct FullwaveCase {
    std::string id, json; ///< json: the whole case as text
    /// A number of the inputs or outputs, SI except where the name says otherwise (C_pF). A missing one fails
    /// by exception.
    [[nodiscard]] double in(const std::string& name) const;
    [[nodiscard]] double out(const std::string& name) const;
    [[nodiscard]] std::string text(const std::string& name) const; ///< of the inputs
    [[nodiscard]] bool has(const std::string& name) const;         ///< among the inputs
    [[nodiscard]] bool free_space() const { return text("ground") == "free"; }
    [[nodiscard]] std::array<double, 3> point(const std::string& name) const; ///< of the inputs
    [[nodiscard]] std::vector<std::array<double, 3>> vertices() const;        ///< of the closed polyline
    [[nodiscard]] std::array<double, 2> input_impedance() const;              ///< Zin of the outputs

    struct Near {
        std::array<double, 3> position_m;
        double electric_rms, magnetic_rms;
    };
    [[nodiscard]] std::vector<Near> near_fields() const; ///< at 10 W
    struct Gain {
        double elevation_deg, azimuth_deg, gain_dBi;
    };
    [[nodiscard]] std::vector<Gain> gains() const;
};

[[nodiscard]] std::vector<FullwaveCase> fullwave_cases();
/// For the rows of tables: " at (1, 0, 2.5) m"; "gain, elevation 5, azimuth 90 [dBi]".
[[nodiscard]] std::string place_text(const std::array<double, 3>& position_m);
[[nodiscard]] std::string direction_text(const FullwaveCase::Gain& gain);

} // namespace loopwright::support
