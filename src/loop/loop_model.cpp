#include "loop/loop_model.hpp"

#include "design/validation.hpp"
#include "loop/closed_form.hpp"
#include "loop/detail/remembering_model.hpp"
#include "loop/full_wave.hpp"

namespace loopwright::loop {

std::unique_ptr<LoopModel> make_model(const design::Design& design, Model model, Workload workload,
                                      double mesh_refinement) {
    design::require_valid(design);
    if (model == Model::full_wave) {
        if (workload == Workload::many_frequencies) {
            return detail::remembering_full_wave(design, mesh_refinement);
        }
        return std::make_unique<FullWave>(design, workload, mesh_refinement);
    }
    return make_closed_form(design);
}

} // namespace loopwright::loop
