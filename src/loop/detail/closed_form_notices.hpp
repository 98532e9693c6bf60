#pragma once
// The notices of the closed form, made once a design: a point only picks its list.
#include "base/notice.hpp"
#include "design/design.hpp"

#include <array>

namespace loopwright::loop::detail {

class ClosedFormNotices {
public:
    base::Notices common, beyond_range, self_resonant;

    /// For results, with the notice `error_estimate` of the next step above the relative error.
    [[nodiscard]] const base::Notices& established(double relative_error) const noexcept;

private:
    friend ClosedFormNotices closed_form_notices(const design::Design&, const base::Notices&);
    static constexpr std::array<double, 6> steps_{0.003, 0.005, 0.01, 0.02, 0.03, 0.05};
    std::array<base::Notices, steps_.size()> established_;
};

/// of_design: what the design's parts say, see design_notices.hpp.
[[nodiscard]] ClosedFormNotices closed_form_notices(const design::Design& design,
                                                    const base::Notices& of_design);

} // namespace loopwright::loop::detail
