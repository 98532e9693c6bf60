#pragma once
// The notices of the closed form. Each list is made when a point first asks for it; after that a point only
// picks its list.
#include "base/notice.hpp"
#include "design/design.hpp"

#include <array>
#include <cstddef>
#include <mutex>

namespace loopwright::loop::detail {

/// Asked by several threads at once.
class ClosedFormNotices {
public:
    /// of_design: what the design's parts say, see design_notices.hpp.
    ClosedFormNotices(const design::Design& design, const base::Notices& of_design);

    [[nodiscard]] const base::Notices& common() const noexcept { return common_; }
    [[nodiscard]] const base::Notices& beyond_range() const;
    [[nodiscard]] const base::Notices& self_resonant() const;
    /// For results, with the notice `error_estimate` of the next step above the relative error.
    [[nodiscard]] const base::Notices& established(double relative_error) const;

private:
    static constexpr std::array<double, 6> steps_{0.003, 0.005, 0.01, 0.02, 0.03, 0.05};
    struct List {
        std::once_flag once;
        base::Notices notices;
    };
    template <class Make>
    [[nodiscard]] const base::Notices& with(List& list, const Make& make) const;

    base::Notices common_;
    mutable List beyond_range_, self_resonant_;
    mutable std::array<List, steps_.size()> established_;
};

} // namespace loopwright::loop::detail
