#include "loop/loop_model.hpp"

#include "base/error.hpp"
#include "design/validation.hpp"
#include "loop/closed_form.hpp"

namespace loopwright::loop {

std::unique_ptr<LoopModel> make_model(const design::Design& design, Model model) {
    design::require_valid(design);
    if (model == Model::full_wave) {
        throw base::InputError::sentence("--model", "This build has no full-wave model; use closed-form.");
    }
    return make_closed_form(design);
}

} // namespace loopwright::loop
