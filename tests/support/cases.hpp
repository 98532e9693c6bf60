#pragma once
// The independent reference cases of tests/reference/data, for tests of any folder.
#include <array>
#include <string>
#include <vector>

namespace loopwright::support {

/// One case of independent_cases.json; every value in SI. A missing input or output fails by exception.
struct Case {
    std::string id, category, json; ///< json: the whole case as text, for what the accessors do not reach
    [[nodiscard]] bool has_input(const std::string& path) const;
    /// A number of the inputs; path may reach into objects: "conductor.od".
    [[nodiscard]] double input(const std::string& path) const;
    [[nodiscard]] std::string input_text(const std::string& path) const;
    [[nodiscard]] std::array<double, 3> input_point(const std::string& path) const;
    [[nodiscard]] bool has_output(const std::string& name) const;
    [[nodiscard]] double output(const std::string& name) const;
    /// Relative numerical uncertainty; model uncertainty (0 where none is given).
    [[nodiscard]] double u_num(const std::string& name) const;
    [[nodiscard]] double u_model(const std::string& name) const;
    /// max(1e-6, 3 u_num), the tolerance stated for closed forms.
    [[nodiscard]] double tolerance(const std::string& name) const;
};

/// The cases of a category ("skin", "inductance", ...); an unknown category fails by exception.
[[nodiscard]] std::vector<Case> independent_cases(const std::string& category);

} // namespace loopwright::support
