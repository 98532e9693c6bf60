#include "field/pattern.hpp"

#include "base/error.hpp"
#include "design/validation.hpp"
#include "loop/full_wave.hpp"
#include "units/constants.hpp"
#include "units/text.hpp"

#include <cmath>

namespace loopwright::field {

namespace {

using units::constants::pi;

struct Circle {
    std::vector<units::Angle> angle;
    std::vector<loop::Direction> direction;
};

int steps_of(double whole_rad, double step_rad) {
    return static_cast<int>(std::ceil(whole_rad / step_rad - 1e-9));
}

/// Over the zenith and, in free space, back below the horizon.
Circle over_the_zenith(const PatternRequest& request, bool free_space) {
    const double whole = free_space ? 2 * pi : pi;
    const int steps = steps_of(whole, request.step.value());
    Circle circle;
    for (int i = 0; i <= steps; ++i) {
        const double angle = whole * i / steps;
        // Elevation folds at the zenith, where the azimuth turns to the other side, and at the nadir.
        const bool beyond = angle > pi / 2 && angle <= 3 * pi / 2;
        const double elevation = beyond ? pi - angle : (angle > 3 * pi / 2 ? angle - 2 * pi : angle);
        circle.angle.push_back(units::radians(angle));
        circle.direction.push_back(
            {units::radians(elevation), request.azimuth + units::radians(beyond ? pi : 0.0)});
    }
    return circle;
}

Circle around(const PatternRequest& request) {
    const int steps = steps_of(2 * pi, request.step.value());
    Circle circle;
    for (int i = 0; i <= steps; ++i) {
        circle.angle.push_back(units::radians(2 * pi * i / steps));
        circle.direction.push_back({request.elevation, circle.angle.back()});
    }
    return circle;
}

template <class Gain>
Cut cut_of(const Circle& circle, const Gain& gain) {
    Cut cut{circle.angle, {}};
    for (const loop::Direction& direction : circle.direction) {
        cut.gain.push_back(gain(direction));
    }
    return cut;
}

void require(const PatternRequest& request, bool free_space) {
    const double step_deg = request.step.value() * 180 / pi;
    if (!(step_deg >= 0.5 && step_deg <= 30)) {
        throw base::InputError("step", units::canonical(request.step), "from 0.5 to 30 degrees");
    }
    const double elevation_deg = request.elevation.value() * 180 / pi;
    const double lowest = free_space ? -90 : 0;
    if (!(elevation_deg >= lowest && elevation_deg <= 90)) {
        throw base::InputError("elevation", units::canonical(request.elevation),
                               free_space ? "from -90 to 90 degrees" : "from 0 to 90 degrees");
    }
    if (!std::isfinite(request.azimuth.value())) {
        throw base::InputError("azimuth", "not a number", "a direction in degrees");
    }
}

void add_dipole(Pattern& pattern, const design::Ground& ground, const Circle& over, const Circle& ring) {
    const loop::DipoleOverGround dipole(ground, pattern.frequency, *pattern.request.dipole);
    const auto gain = [&](const loop::Direction& to) { return dipole.gain(to.elevation, to.azimuth); };
    pattern.dipole_elevation = cut_of(over, gain);
    pattern.dipole_azimuth = cut_of(ring, gain);
    pattern.dipole_gain_low_angle = dipole.low_angle_gain();
}

} // namespace

std::optional<Pattern> pattern(const design::Design& design, units::Frequency frequency,
                               const PatternRequest& request, base::Notices* notices) {
    design::require_valid(design);
    const bool free_space = design.site.ground.kind == design::GroundKind::free_space;
    require(request, free_space);
    const loop::FullWave model(design, loop::Workload::few_frequencies);
    const loop::OperatingPoint point = model.at(frequency, design.station.power.value, 2.0);
    if (notices != nullptr) {
        notices->merge(point.notices);
    }
    const auto solved = point.resonance ? model.solved(frequency) : std::nullopt;
    if (!solved) {
        return std::nullopt;
    }
    const loop::FarPattern far(*solved);
    const double accepted_W = solved->total.value();
    const Circle over = over_the_zenith(request, free_space);
    const Circle ring = around(request);
    const auto gain = [&](const loop::Direction& to) {
        return far.gain(to.elevation, to.azimuth, accepted_W);
    };
    Pattern pattern;
    pattern.frequency = frequency;
    pattern.free_space = free_space;
    pattern.request = request;
    pattern.elevation = cut_of(over, gain);
    pattern.azimuth = cut_of(ring, gain);
    pattern.best = far.best_direction();
    pattern.gain_max = *point.resonance->gain_max;
    pattern.gain_low_angle = *point.resonance->gain_low_angle;
    pattern.efficiency = point.resonance->efficiency;
    if (request.dipole) {
        add_dipole(pattern, design.site.ground, over, ring);
    }
    return pattern;
}

} // namespace loopwright::field
