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

const base::Notices& ClosedFormNotices::established(double relative_error) const noexcept {
    std::size_t step = 0;
    while (step + 1 < steps_.size() && steps_[step] < relative_error) {
        ++step;
    }
    return established_[step];
}

ClosedFormNotices closed_form_notices(const design::Design& design, const base::Notices& of_design) {
    ClosedFormNotices notices;
    const bool ground = design.site.ground.kind != design::GroundKind::free_space;
    notices.common.add({"free_space_only", ground ? Severity::caution : Severity::information,
                        ground ? "The closed form knows no ground: its figures are those of free space, not "
                                 "of the ground that the design names."
                               : "Figures are for free space.",
                        ground ? 1.0 : 0.0});
    notices.common.merge(of_design);
    for (std::size_t i = 0; i < ClosedFormNotices::steps_.size(); ++i) {
        const double step = ClosedFormNotices::steps_[i];
        notices.established_[i] = notices.common;
        notices.established_[i].add(
            {"error_estimate", step > 0.01 ? Severity::caution : Severity::information,
             "Estimated error of the model itself in resistance, currents and voltage: " + percent(step) +
                 ".",
             step});
    }
    notices.beyond_range = notices.common;
    notices.beyond_range.add(
        {"perimeter_beyond_range", Severity::not_established,
         "The conductor is longer than 0.40 wavelengths here: the closed form does not hold.", 1});
    notices.self_resonant = notices.common;
    notices.self_resonant.add({"self_resonant", Severity::not_established,
                               "With its own capacitance alone the loop is resonant below this frequency: no "
                               "capacitor tunes it.",
                               1});
    return notices;
}

} // namespace loopwright::loop::detail
