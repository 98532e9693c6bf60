#include "wire/detail/pair_rule.hpp"

#include "base/error.hpp"

#include <array>
#include <boost/math/special_functions/legendre.hpp>
#include <cmath>

namespace loopwright::wire::detail {

namespace {

constexpr int most_points = 8;

GaussRule make_rule(int points) {
    GaussRule rule;
    const auto zeros = boost::math::legendre_p_zeros<double>(points); // those >= 0
    const auto add = [&](double zero) {
        const double slope = boost::math::legendre_p_prime(points, zero);
        rule.x.push_back(0.5 * (1.0 + zero));
        rule.weight.push_back(1.0 / ((1.0 - zero * zero) * slope * slope));
    };
    for (auto zero = zeros.rbegin(); zero != zeros.rend(); ++zero) {
        if (*zero > 0) {
            add(-*zero);
        }
    }
    for (const double zero : zeros) {
        add(zero);
    }
    return rule;
}

GaussRule make_graded_rule(int panels) {
    constexpr double shrink = 0.3;
    const GaussRule& gauss = gauss_rule(5);
    GaussRule rule;
    double high = 1.0;
    for (int panel = 0; panel < panels; ++panel) {
        const double low = panel + 1 == panels ? 0.0 : shrink * high;
        for (std::size_t i = 0; i < gauss.x.size(); ++i) {
            rule.x.push_back(low + (high - low) * gauss.x[i]);
            rule.weight.push_back((high - low) * gauss.weight[i]);
        }
        high = low;
    }
    return rule;
}

} // namespace

const GaussRule& gauss_rule(int points) {
    static const std::array<GaussRule, most_points> rules = [] {
        std::array<GaussRule, most_points> made;
        for (std::size_t i = 0; i < made.size(); ++i) {
            made[i] = make_rule(static_cast<int>(i) + 1);
        }
        return made;
    }();
    if (points < 1 || points > most_points) {
        throw base::ProgramError("no Gauss rule of this many points");
    }
    return rules[static_cast<std::size_t>(points - 1)];
}

const GaussRule& graded_rule(int panels) {
    static const GaussRule touch = make_graded_rule(touch_panels);
    static const GaussRule self = make_graded_rule(self_panels);
    return panels == touch_panels ? touch : self;
}

std::vector<Site> sites_on(const Track& track, double length_m, int points, double low, double high) {
    const GaussRule& rule = gauss_rule(points);
    std::vector<Site> sites;
    sites.reserve(rule.x.size());
    for (std::size_t i = 0; i < rule.x.size(); ++i) {
        const double x = low + (high - low) * rule.x[i];
        const Station station = track.at(x);
        sites.push_back({station.point, station.tangent, x, (high - low) * rule.weight[i] * length_m});
    }
    return sites;
}

std::vector<Site> sites_on(const Mesh& mesh, const Element& element, int points) {
    return sites_on(Track(mesh, element), element.length_m, points);
}

} // namespace loopwright::wire::detail
