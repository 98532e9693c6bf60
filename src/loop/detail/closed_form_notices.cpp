#include "loop/detail/closed_form_notices.hpp"

namespace loopwright::loop::detail {
namespace {

using base::Severity;

// "0.3 %" for 0.003, "2 %" for 0.02.
std::string percent(double share) {
    std::string text = std::to_string(100 * share).substr(0, 3);
    return (text.substr(1) == ".0" ? text.substr(0, 1) : text) + " %";
}

} // namespace

ClosedFormNotices::ClosedFormNotices(const design::Design& design, const base::Notices& of_design) {
    const bool ground = design.site.ground.kind != design::GroundKind::free_space;
    common_.add({"free_space_only", ground ? Severity::caution : Severity::information,
                 ground ? "The closed form knows no ground: its figures are those of free space, not "
                          "of the ground that the design names."
                        : "Figures are for free space.",
                 ground ? 1.0 : 0.0});
    common_.merge(of_design);
}

// The common notices and one more.
template <class Make>
const base::Notices& ClosedFormNotices::with(List& list, const Make& make) const {
    std::call_once(list.once, [&] {
        list.notices = common_;
        list.notices.add(make());
    });
    return list.notices;
}

const base::Notices& ClosedFormNotices::established(double relative_error) const {
    std::size_t at = 0;
    while (at + 1 < steps_.size() && steps_[at] < relative_error) {
        ++at;
    }
    return with(established_[at], [step = steps_[at]] {
        return base::Notice{
            "error_estimate", step > 0.01 ? Severity::caution : Severity::information,
            "Estimated error of the model itself in resistance, currents and voltage: " + percent(step) + ".",
            step};
    });
}

const base::Notices& ClosedFormNotices::beyond_range() const {
    return with(beyond_range_, [] {
        return base::Notice{
            "perimeter_beyond_range", Severity::not_established,
            "The conductor is longer than 0.40 wavelengths here: the closed form does not hold.", 1};
    });
}

const base::Notices& ClosedFormNotices::self_resonant() const {
    return with(self_resonant_, [] {
        return base::Notice{"self_resonant", Severity::not_established,
                            "With its own capacitance alone the loop is resonant below this frequency: no "
                            "capacitor tunes it.",
                            1};
    });
}

} // namespace loopwright::loop::detail
