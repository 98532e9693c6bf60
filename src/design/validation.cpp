#include "design/validation.hpp"

#include "design/detail/refusals.hpp"

namespace loopwright::design {

std::vector<base::InputError> refusals(const Design& design) {
    detail::Refusals found;
    detail::check_loop(design, found);
    detail::check_conductor(design.conductor, found);
    detail::check_joints(design.joints, found);
    detail::check_capacitor(design.capacitor, found);
    detail::check_coupling(design, found);
    if (design.feed_line) {
        detail::check_feed_line(*design.feed_line, found);
    }
    detail::check_site(design, found);
    detail::check_station(design.station, found);
    if (design.calibration) {
        detail::check_calibration(*design.calibration, found);
    }
    return found.take();
}

void require_valid(const Design& design) {
    const auto found = refusals(design);
    if (!found.empty()) {
        throw base::InputError(found.front());
    }
}

std::vector<base::InputError> refusals(const Capacitor& capacitor) {
    detail::Refusals found;
    detail::check_capacitor(capacitor, found);
    return found.take();
}

} // namespace loopwright::design
