#include "loop/conductor_voltage.hpp"

#include "base/error.hpp"
#include "ground/half_space_table.hpp"
#include "units/constants.hpp"
#include "units/text.hpp"
#include "wire/potential.hpp"

#include <algorithm>
#include <cmath>
#include <functional>
#include <memory>
#include <string>

namespace loopwright::loop {
namespace {

using Complex = std::complex<double>;
using geometry::Vector3;
using units::constants::free_space_impedance_ohm;
using units::constants::pi;

struct Place {
    double along_m; ///< from the gap's edge
    Vector3 standing;
};

struct Charge {
    Vector3 standing;
    Complex current_A; ///< I' ds
};

Vector3 stood(const geometry::Frame& stand, const Vector3& v) {
    return stand.origin + (v.x * stand.right + v.y * stand.rise + v.z * stand.up);
}

/// Evenly from one edge of the capacitor's gap round to the other.
std::vector<Place> places(const SolvedLoop& loop, int count) {
    const wire::Mesh& mesh = loop.solution.mesh();
    const wire::Gap& gap = mesh.model().ports.at(1);
    const double whole_m = mesh.model().wires.at(gap.wire).length_m();
    std::vector<Place> all;
    for (int i = 0; i < count; ++i) {
        const double along_m = (whole_m - gap.width_m) * i / (count - 1);
        const double on_wire_m = std::fmod(gap.at_m + 0.5 * gap.width_m + along_m, whole_m);
        const auto& elements = mesh.elements();
        const auto holds = [&](const wire::Element& e) {
            return e.wire == gap.wire && on_wire_m >= e.begin_m - 1e-12 &&
                   on_wire_m <= e.begin_m + e.length_m + 1e-12;
        };
        const auto element = std::find_if(elements.begin(), elements.end(), holds);
        if (element == elements.end()) {
            throw base::ProgramError("conductor_voltage: a place beside the wire");
        }
        const double x = std::clamp((on_wire_m - element->begin_m) / element->length_m, 0.0, 1.0);
        all.push_back({along_m, stood(loop.stand, mesh.point(*element, x))});
    }
    return all;
}

/// The potential of an element outside the gap, at its middle.
struct Mean {
    double along_m;
    Complex potential_V;
};

/// The mean over each element is what the solver's equation holds to (its test functions' slopes are even on
/// an element); from point to point the charge's steps would show.
std::vector<Mean> means(const SolvedLoop& loop) {
    const wire::Mesh& mesh = loop.solution.mesh();
    const wire::Gap& gap = mesh.model().ports.at(1);
    const double whole_m = mesh.model().wires.at(gap.wire).length_m();
    constexpr std::array<double, 2> gauss{0.21132486540518712, 0.78867513459481288};
    std::vector<Mean> all;
    for (const wire::Element& element : mesh.elements()) {
        const double from_edge_m = element.begin_m + 0.5 * element.length_m - gap.at_m - 0.5 * gap.width_m;
        const double along_m = from_edge_m - whole_m * std::floor(from_edge_m / whole_m);
        if (element.wire != gap.wire || along_m > whole_m - gap.width_m) {
            continue;
        }
        Complex sum = 0;
        for (const double x : gauss) {
            sum += 0.5 * wire::surface_potential(mesh, loop.currents, element, x);
        }
        all.push_back({along_m, sum});
    }
    std::sort(all.begin(), all.end(), [](const Mean& a, const Mean& b) { return a.along_m < b.along_m; });
    return all;
}

/// Straight lines between the elements' middles, the outermost carried on to the gap's edges.
Complex between(const std::vector<Mean>& known, double along_m) {
    auto above =
        std::find_if(known.begin(), known.end(), [&](const Mean& mean) { return mean.along_m > along_m; });
    above = std::clamp(above, known.begin() + 1, known.end() - 1);
    const Mean &a = *(above - 1), &b = *above;
    return a.potential_V +
           (b.potential_V - a.potential_V) * ((along_m - a.along_m) / (b.along_m - a.along_m));
}

std::vector<Charge> charges(const SolvedLoop& loop) {
    const wire::Mesh& mesh = loop.solution.mesh();
    const auto node_current = [&](std::size_t node) {
        return node == wire::no_node ? Complex(0) : loop.currents.node_A[node];
    };
    constexpr std::array<double, 2> gauss{0.21132486540518712, 0.78867513459481288};
    std::vector<Charge> all;
    for (const wire::Element& element : mesh.elements()) {
        const Complex change = node_current(element.node[1]) - node_current(element.node[0]);
        for (const double x : gauss) {
            all.push_back({stood(loop.stand, mesh.point(element, x)), 0.5 * change});
        }
    }
    return all;
}

/// What the ground adds at each place.
std::vector<Complex> of_ground(const SolvedLoop& loop, const std::vector<Place>& at) {
    const std::vector<Charge> sources = charges(loop);
    const double k = loop.solution.wavenumber_rad_m();
    double rho_max = 1e-3, z_min = 1e300, z_max = 0;
    for (const Place& p : at) {
        for (const Charge& q : sources) {
            rho_max = std::max(rho_max, std::hypot(p.standing.x - q.standing.x, p.standing.y - q.standing.y));
            z_min = std::min(z_min, p.standing.z + q.standing.z);
            z_max = std::max(z_max, p.standing.z + q.standing.z);
        }
    }
    const auto kernel = [&]() -> std::function<Complex(double, double)> {
        if (loop.underground->perfect) {
            return [k](double rho, double z) {
                const double r = std::hypot(rho, z);
                return -std::exp(Complex(0, -k * r)) / (4 * pi * r);
            };
        }
        constexpr double tolerance = 1e-5;
        const auto table = std::make_shared<const ground::HalfSpaceTable>(
            k, loop.permittivity(), rho_max * (1 + 1e-9), z_min * (1 - 1e-9), z_max * (1 + 1e-9), tolerance);
        return [table](double rho, double z) { return table->potentials(rho, z).scalar; };
    }();
    std::vector<Complex> sums;
    for (const Place& p : at) {
        Complex sum = 0;
        for (const Charge& q : sources) {
            const double rho = std::hypot(p.standing.x - q.standing.x, p.standing.y - q.standing.y);
            sum += q.current_A * kernel(rho, p.standing.z + q.standing.z);
        }
        sums.push_back(Complex(0, free_space_impedance_ohm / k) * sum);
    }
    return sums;
}

double in_wavelengths(const SolvedLoop& loop) {
    const wire::WireModel& model = loop.solution.mesh().model();
    return model.wires.at(model.ports.at(1).wire).length_m() * loop.solution.wavenumber_rad_m() / (2 * pi);
}

} // namespace

std::optional<ConductorVoltage> conductor_voltage(const SolvedLoop& loop, units::Power power, int points) {
    if (!(power.value() > 0)) {
        throw base::InputError("power", units::canonical(power), "a power above 0");
    }
    if (points < 3 || points > 1001) {
        throw base::InputError("points", std::to_string(points), "3 to 1001");
    }
    if (in_wavelengths(loop) > touch_range_wavelengths) {
        return std::nullopt;
    }
    const double scale = std::sqrt(power.value() / loop.total.value());
    const std::vector<Place> at = places(loop, points);
    const std::vector<Complex> ground =
        loop.underground ? of_ground(loop, at) : std::vector<Complex>(at.size());
    const std::vector<Mean> free = means(loop);
    ConductorVoltage result;
    for (std::size_t i = 0; i < at.size(); ++i) {
        const Complex potential = between(free, at[i].along_m) + ground[i];
        const units::Voltage rms = units::volts(scale * std::abs(potential));
        const Vector3& place = at[i].standing;
        const double whole_m = at.back().along_m;
        result.points.push_back({units::metres(at[i].along_m),
                                 units::metres(std::min(at[i].along_m, whole_m - at[i].along_m)),
                                 {place.x, place.y, place.z},
                                 rms,
                                 rms * std::sqrt(2.0)});
        result.highest_rms = std::max(result.highest_rms, rms);
    }
    // Of an even number of places the two in the middle are as near as it gets: the higher.
    const std::size_t middle = at.size() / 2;
    result.at_middle_rms = at.size() % 2 != 0
                               ? result.points[middle].rms
                               : std::max(result.points[middle].rms, result.points[middle - 1].rms);
    return result;
}

} // namespace loopwright::loop
