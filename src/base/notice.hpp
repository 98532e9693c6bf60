#pragma once
// Doubt is data: what a result must be read with. A model attaches notices; window, command line and print
// show the same ones.
#include <memory>
#include <string>
#include <vector>

namespace loopwright::base {

/// How much a notice matters: information (how to read the number), caution (the number is less certain than
/// it looks, or something is not modelled), not_established (the model does not stand behind a number here),
/// hazard (can hurt people or hardware).
enum class Severity { information, caution, not_established, hazard };

/// The word used for a severity in files and on the command line ("not_established").
[[nodiscard]] const char* name_of(Severity severity) noexcept;

struct Notice {
    std::string code; ///< stable, snake_case, what scripts test ("perimeter_beyond_range")
    Severity severity = Severity::information;
    std::string text;   ///< one plain sentence, English; the window translates by code where it can
    double measure = 0; ///< what it is judged by (dimensionless); of two with one code the larger stays

    bool operator==(const Notice&) const = default;
};

/// A set of notices, one a code: adding a second with the same code keeps the worse (severity, then measure).
/// Copies share one list until one of them is added to: a copy costs as much as a pointer.
class Notices {
public:
    void add(Notice notice);
    void merge(const Notices& others);
    [[nodiscard]] bool has(const std::string& code) const noexcept;
    [[nodiscard]] bool empty() const noexcept { return all().empty(); }
    /// Worst first; of equal severity in the order of adding.
    [[nodiscard]] std::vector<Notice> worst_first() const;
    [[nodiscard]] const std::vector<Notice>& all() const noexcept;
    bool operator==(const Notices& other) const { return all() == other.all(); }

private:
    std::shared_ptr<const std::vector<Notice>> list_; ///< none: empty
};

} // namespace loopwright::base
