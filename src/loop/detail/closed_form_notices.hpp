#pragma once
// The notices of the closed form. Each list is made when a point first asks for it; after that a point only
// picks its list.
#include "base/notice.hpp"
#include "design/design.hpp"

#include <array>
#include <atomic>
#include <cstddef>
#include <memory>
#include <mutex>
#include <utility>

namespace loopwright::loop::detail {

/// Asked by several threads at once.
class ClosedFormNotices {
public:
    /// of_design: what the design's parts say, see design_notices.hpp.
    ClosedFormNotices(const design::Design& design, const base::Notices& of_design);

    [[nodiscard]] const base::Notices& common() const noexcept { return lists_->common; }
    [[nodiscard]] const base::Notices& beyond_range() const;
    [[nodiscard]] const base::Notices& self_resonant() const;
    /// For results, with the notice `error_estimate` of the next step above the relative error.
    [[nodiscard]] const base::Notices& established(double relative_error) const;

private:
    static constexpr std::array<double, 6> steps_{0.003, 0.005, 0.01, 0.02, 0.03, 0.05};
    struct List {
        std::atomic<bool> made = false;
        base::Notices notices;
    };
    struct Lists {
        explicit Lists(base::Notices of_all) : common(std::move(of_all)) {}
        base::Notices common;
        mutable std::mutex making; ///< a once_flag would ask the kernel to wake others each time
        mutable List beyond_range, self_resonant;
        mutable std::array<List, steps_.size()> established;
    };
    [[nodiscard]] static const Lists& without_design(bool ground);
    template <class Make>
    [[nodiscard]] const base::Notices& with(List& list, const Make& make) const;

    std::unique_ptr<const Lists> own_;
    const Lists* lists_; ///< own_, or one that all designs share whose parts say nothing
};

} // namespace loopwright::loop::detail
