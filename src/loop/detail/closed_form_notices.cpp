#include "loop/detail/closed_form_notices.hpp"

#include <algorithm>

namespace loopwright::loop::detail {
namespace {

using base::Severity;

// "0.3 %" for 0.003, "2 %" for 0.02.
std::string percent(double share) {
    std::string text = std::to_string(100 * share).substr(0, 3);
    return (text.substr(1) == ".0" ? text.substr(0, 1) : text) + " %";
}

base::Notices free_space_only(bool ground) {
    base::Notices notices;
    notices.add({"free_space_only", ground ? Severity::caution : Severity::information,
                 ground ? "The closed form knows no ground: its figures are those of free space, not "
                          "of the ground that the design names."
                        : "Figures are for free space.",
                 ground ? 1.0 : 0.0});
    return notices;
}

} // namespace

const ClosedFormNotices::Lists& ClosedFormNotices::without_design(bool ground) {
    static const Lists over_ground(free_space_only(true));
    static const Lists in_free_space(free_space_only(false));
    return ground ? over_ground : in_free_space;
}

ClosedFormNotices::ClosedFormNotices(const design::Design& design, const base::Notices& of_design)
    : lists_(&without_design(design.site.ground.kind != design::GroundKind::free_space)) {
    if (!of_design.empty()) {
        base::Notices common = lists_->common;
        common.merge(of_design);
        own_ = std::make_unique<const Lists>(std::move(common));
        lists_ = own_.get();
    }
}

// The common notices and one more.
template <class Make>
const base::Notices& ClosedFormNotices::with(List& list, const Make& make) const {
    if (!list.made.load(std::memory_order_acquire)) {
        const std::scoped_lock lock(lists_->making);
        if (!list.made.load(std::memory_order_relaxed)) {
            list.notices = lists_->common;
            list.notices.add(make());
            list.made.store(true, std::memory_order_release);
        }
    }
    return list.notices;
}

const base::Notices& ClosedFormNotices::established(double relative_error) const {
    std::size_t at = 0;
    while (at + 1 < steps_.size() && steps_[at] < relative_error) {
        ++at;
    }
    static const std::array<std::string, steps_.size()> texts = [] {
        std::array<std::string, steps_.size()> of_steps;
        std::transform(steps_.begin(), steps_.end(), of_steps.begin(), percent);
        return of_steps;
    }();
    return with(lists_->established[at], [step = steps_[at], at] {
        return base::Notice{
            "error_estimate", step > 0.01 ? Severity::caution : Severity::information,
            "Estimated error of the model itself in resistance, currents and voltage: " + texts[at] + ".",
            step};
    });
}

const base::Notices& ClosedFormNotices::beyond_range() const {
    return with(lists_->beyond_range, [] {
        return base::Notice{
            "perimeter_beyond_range", Severity::not_established,
            "The conductor is longer than 0.40 wavelengths here: the closed form does not hold.", 1};
    });
}

const base::Notices& ClosedFormNotices::self_resonant() const {
    return with(lists_->self_resonant, [] {
        return base::Notice{"self_resonant", Severity::not_established,
                            "With its own capacitance alone the loop is resonant below this frequency: no "
                            "capacitor tunes it.",
                            1};
    });
}

} // namespace loopwright::loop::detail
