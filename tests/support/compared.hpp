#pragma once
// A comparison with something outside the project: held to its limit, and printed in docs/validation.
#include <string>
#include <utility>

namespace loopwright::support {

/// A table of docs/validation/<chapter>.md. Each check fails the test in which it stands when
/// - the difference is over its limit, or
/// - the committed table does not hold the same figures within what it prints (scripts/validation renews it).
/// With LOOPWRIGHT_VALIDATION_DIR set the rows are written there instead of being looked up.
class Compared {
public:
    Compared(std::string chapter, std::string table)
        : chapter_(std::move(chapter)), table_(std::move(table)) {}

    /// ours/theirs - 1 within limit (0.005: half a per cent). quantity names its unit.
    void share(const std::string& which, const std::string& quantity, double ours, double theirs,
               double limit) const;
    /// ours - theirs within limit, in the quantity's own unit.
    void amount(const std::string& which, const std::string& quantity, double ours, double theirs,
                double limit) const;

private:
    struct Row;
    void settle(const Row& row) const;

    std::string chapter_, table_;
};

} // namespace loopwright::support
