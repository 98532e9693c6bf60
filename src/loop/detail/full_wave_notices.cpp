#include "loop/detail/full_wave_notices.hpp"

namespace loopwright::loop::detail {

base::Notices full_wave_notices(const design::Design& design, const base::Notices& of_design) {
    using base::Severity;
    base::Notices notices;
    switch (design.site.ground.kind) {
    case design::GroundKind::free_space:
        notices.add({"free_space_only", Severity::information, "Figures are for free space.", 0});
        break;
    case design::GroundKind::perfect:
        notices.add(
            {"perfect_ground", Severity::caution,
             "Perfect ground does not exist on land: real soil takes power that this figure leaves out.", 0});
        break;
    case design::GroundKind::soil:
        notices.add({"soil_constants", Severity::caution,
                     "Soil is taken as even in depth, with the constants of the design; wet and dry seasons "
                     "change them.",
                     0});
        break;
    }
    notices.add({"capacitor_body", Severity::information,
                 "The capacitor's voltage is spread evenly over the gap; its body belongs to the stray "
                 "capacitance, and "
                 "capacitance is known to about 0.4 pF by this.",
                 0});
    notices.add(
        {"feed_line_outside", Severity::caution,
         "Currents on the outside of the feed line are not in the model; a choke belongs at the loop.", 0});
    notices.add({"surroundings", Severity::caution,
                 "Railings, reinforced concrete and other metal beside the loop are not in the model.", 0});
    notices.merge(of_design);
    return notices;
}

PointNotices::PointNotices(const base::Notices& of_model)
    : established(of_model), beyond(of_model), self_resonant(of_model) {
    beyond.add({"perimeter_beyond_range", base::Severity::not_established,
                "The conductor is longer than a wavelength here: this is no loop tuned by one capacitor.",
                1});
    self_resonant.add(
        {"self_resonant", base::Severity::not_established,
         "The loop with its own capacitance is resonant below this frequency: no capacitor tunes it.", 1});
}

} // namespace loopwright::loop::detail
