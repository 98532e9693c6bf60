#include "loop/loop_model.hpp"

#include "design/validation.hpp"
#include "loop/closed_form.hpp"
#include "loop/detail/remembering_model.hpp"

namespace loopwright::loop {

std::unique_ptr<LoopModel> make_model(const design::Design& design, Model model, Workload workload,
                                      double mesh_refinement) {
    design::require_valid(design);
    if (model == Model::full_wave) {
        return detail::remembering_full_wave(design, workload, mesh_refinement);
    }
    return make_closed_form(design);
}

} // namespace loopwright::loop
