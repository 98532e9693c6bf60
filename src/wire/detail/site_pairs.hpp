#pragma once
// Walks over the quadrature points of a pair of elements.
#include "wire/detail/pair_rule.hpp"

#include <array>
#include <cmath>

namespace loopwright::wire::detail {

/// Tracks and Gauss points of every element, made once.
class SiteCache {
public:
    explicit SiteCache(const Mesh& mesh);
    [[nodiscard]] const std::vector<Site>& sites(std::size_t element, int points) const {
        return sites_[static_cast<std::size_t>(points)][element];
    }
    [[nodiscard]] const geometry::Vector3& middle(std::size_t element) const { return middles_[element]; }
    [[nodiscard]] const Track& track(std::size_t element) const { return tracks_[element]; }
    static constexpr int most_points = 6;

private:
    std::vector<Track> tracks_;
    std::array<std::vector<std::vector<Site>>, most_points + 1> sites_; ///< [points][element]
    std::vector<geometry::Vector3> middles_;
};

/// Calls visit(site of p, site of q, weight in m^2) for all points of the pair's rule; p == q: the rule
/// covers only half of the square, and the weight is that of the half. Error about 1e-6 of each double
/// integral.
template <class Visit>
class PairWalk {
public:
    PairWalk(const Mesh& mesh, const SiteCache& cache, Visit& visit)
        : mesh_(mesh), cache_(cache), visit_(visit) {}

    void walk(std::size_t p, std::size_t q) {
        const Element& a = mesh_.elements()[p];
        const Element& b = mesh_.elements()[q];
        if (p == q) {
            self(p, a.length_m);
            return;
        }
        for (std::size_t i = 0; i < 2; ++i) {
            for (std::size_t k = 0; k < 2; ++k) {
                if (a.node[i] != no_node && a.node[i] == b.node[k]) {
                    fill_rays(cache_.track(p), i == 1, rays_of_first_);
                    fill_rays(cache_.track(q), k == 1, rays_of_second_);
                    touching(a.length_m * b.length_m);
                    return;
                }
            }
        }
        const double apart = norm(cache_.middle(p) - cache_.middle(q));
        const int points = gauss_points(0.5 * (a.length_m + b.length_m) / apart);
        if (points > 0) {
            product(cache_.sites(p, points), cache_.sites(q, points));
        } else {
            divided({&cache_.track(p), a.length_m, 0, 1}, {&cache_.track(q), b.length_m, 0, 1}, 0);
        }
    }

private:
    struct Part {
        const Track* track;
        double whole_m, low, high;
        [[nodiscard]] double length_m() const { return (high - low) * whole_m; }
        [[nodiscard]] geometry::Vector3 middle() const { return track->at(0.5 * (low + high)).point; }
    };

    // Points a side for a relative error of about 1e-6: the nearest singularity of 1/R lies 2/ratio - 1 half
    // lengths from the middle. 0: subdivide.
    static int gauss_points(double ratio) {
        return ratio < 0.12 ? 2 : ratio < 0.3 ? 3 : ratio < 0.5 ? 4 : ratio < 0.7 ? 6 : 0;
    }

    static Site site_at(const Track& track, double x) {
        const Station station = track.at(x);
        return {station.point, station.tangent, x, 0};
    }

    void product(const std::vector<Site>& one, const std::vector<Site>& other) {
        for (const Site& s : one) {
            for (const Site& t : other) {
                visit_(s, t, s.weight_m * t.weight_m);
            }
        }
    }

    // The triangle y < x of the square: v = x - y graded towards 0, y spread over what is left.
    void self(std::size_t p, double length_m) {
        const GaussRule& across = graded_rule(self_panels);
        const GaussRule& along = gauss_rule(points_along);
        const Track& track = cache_.track(p);
        for (std::size_t i = 0; i < across.x.size(); ++i) {
            const double rest = 1.0 - across.x[i];
            const double weight = length_m * length_m * across.weight[i] * rest;
            for (std::size_t k = 0; k < along.x.size(); ++k) {
                const double y = rest * along.x[k];
                visit_(site_at(track, y + across.x[i]), site_at(track, y), weight * along.weight[k]);
            }
        }
    }

    // Sites of one element at distances t from the common point, then at t times each Gauss point across.
    static void fill_rays(const Track& track, bool from_end, std::vector<Site>& rays) {
        rays.clear();
        for (const double t : graded_rule(touch_panels).x) {
            rays.push_back(site_at(track, from_end ? 1.0 - t : t));
            for (const double u : gauss_rule(points_across).x) {
                rays.push_back(site_at(track, from_end ? 1.0 - t * u : t * u));
            }
        }
    }

    // Two triangles: y = x u and x = y u, with x (or y) graded towards the common point (M. G. Duffy, SIAM J.
    // Numer. Anal. 19 (1982) 1260).
    void touching(double area_m2) {
        const GaussRule& from_corner = graded_rule(touch_panels);
        const GaussRule& across = gauss_rule(points_across);
        const std::size_t stride = across.x.size() + 1;
        for (std::size_t i = 0; i < from_corner.x.size(); ++i) {
            const double ray = area_m2 * from_corner.weight[i] * from_corner.x[i];
            for (std::size_t k = 1; k < stride; ++k) {
                const double weight = ray * across.weight[k - 1];
                visit_(rays_of_first_[i * stride], rays_of_second_[i * stride + k], weight);
                visit_(rays_of_first_[i * stride + k], rays_of_second_[i * stride], weight);
            }
        }
    }

    void divided(const Part& a, const Part& b, int depth) {
        constexpr int deepest = 12;
        const double apart = norm(a.middle() - b.middle());
        int points = apart > 0 ? gauss_points(0.5 * (a.length_m() + b.length_m()) / apart) : 0;
        if (points == 0 && depth == deepest) {
            points = SiteCache::most_points;
        }
        if (points > 0) {
            product(sites_on(*a.track, a.whole_m, points, a.low, a.high),
                    sites_on(*b.track, b.whole_m, points, b.low, b.high));
        } else if (a.length_m() > b.length_m()) {
            const double middle = 0.5 * (a.low + a.high);
            divided({a.track, a.whole_m, a.low, middle}, b, depth + 1);
            divided({a.track, a.whole_m, middle, a.high}, b, depth + 1);
        } else {
            const double middle = 0.5 * (b.low + b.high);
            divided(a, {b.track, b.whole_m, b.low, middle}, depth + 1);
            divided(a, {b.track, b.whole_m, middle, b.high}, depth + 1);
        }
    }

    const Mesh& mesh_;
    const SiteCache& cache_;
    Visit& visit_;
    std::vector<Site> rays_of_first_, rays_of_second_;
};

} // namespace loopwright::wire::detail
