#include "wire/detail/site_pairs.hpp"

namespace loopwright::wire::detail {

SiteCache::SiteCache(const Mesh& mesh) {
    for (const Element& element : mesh.elements()) {
        tracks_.emplace_back(mesh, element);
        middles_.push_back(tracks_.back().at(0.5).point);
    }
    for (const int points : {2, 3, 4, 6}) {
        auto& of_all = sites_[static_cast<std::size_t>(points)];
        for (std::size_t i = 0; i < tracks_.size(); ++i) {
            of_all.push_back(sites_on(tracks_[i], mesh.elements()[i].length_m, points));
        }
    }
}

} // namespace loopwright::wire::detail
