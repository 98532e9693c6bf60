#include "wire/samples.hpp"

#include "wire/detail/element_current.hpp"
#include "wire/detail/pair_rule.hpp"

namespace loopwright::wire {

std::vector<ground::CurrentElement> current_elements(const Mesh& mesh, const Currents& currents, int points) {
    std::vector<ground::CurrentElement> elements;
    for (const Element& element : mesh.elements()) {
        const auto ends = detail::end_currents(element, currents);
        for (const detail::Site& site : detail::sites_on(mesh, element, points)) {
            const auto moment = site.weight_m * ((1 - site.x) * ends[0] + site.x * ends[1]);
            elements.push_back({{site.point.x, site.point.y, site.point.z},
                                {moment * site.tangent.x, moment * site.tangent.y, moment * site.tangent.z}});
        }
    }
    return elements;
}

} // namespace loopwright::wire
