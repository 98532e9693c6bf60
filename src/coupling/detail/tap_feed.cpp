#include "coupling/detail/coupling_wire.hpp"
#include "coupling/detail/series_feed.hpp"
#include "coupling/detail/tap_path.hpp"
#include "loop/design_parts.hpp"
#include "units/constants.hpp"

#include <algorithm>

namespace loopwright::coupling::detail {

namespace {

using units::constants::pi;

// Common practice, no source: below a twentieth of a wavelength a current is even along a wire to 5 %.
constexpr double longest_wavelengths = 0.05;
constexpr double least_radii_apart = 4; // docs/theory/wire.md: nearer, the current crowds

} // namespace

TapFeed::TapFeed(const design::Design& design, const design::Coupling& coupling, const loop::FullWave& alone)
    : SeriesFeed(alone), rod_(copper_wire(coupling.conductor_diameter.value)),
      tap_length_m_(coupling.tap_length.value.value()), spacing_m_(coupling.tap_spacing.value.value()) {
    const double radius_m = loop::conductor_of(design.conductor).equivalent_radius().value();
    radii_m_ = radius_m + 0.5 * coupling.conductor_diameter.value.value();
    const TapPath tap = tap_path(design.loop, coupling, radius_m);
    rod_length_m_ = tap.rod_length_m;
    series_F_ = coupling.series_capacitor ? coupling.series_capacitor->value.value() : 0;
    self_H_ = partial_inductance(tap.circuit, tap.circuit).value();
    double along_m = 0;
    for (const WirePiece& piece : conductor_pieces(design.loop, radius_m)) {
        const double length_m = norm(piece.to - piece.from);
        place_m_.push_back(along_m + 0.5 * length_m);
        mutual_H_.push_back(partial_inductance(std::vector<WirePiece>{piece}, tap.circuit).value());
        along_m += length_m;
    }
}

double TapFeed::rod_ohm(units::Frequency frequency) const {
    return rod_.internal_impedance_ohm_per_m(frequency.value()).real() * rod_length_m_;
}

SeriesCircuit TapFeed::circuit(units::Frequency frequency, const loop::SolvedLoop& loop) const {
    const double omega = 2 * pi * frequency.value();
    const Complex j{0, 1};
    const Complex conductor_ohm = alone().conductor_ohm_per_m(frequency) * tap_length_m_;
    const double whole_m = loop.solution.mesh().model().wires.front().length_m();
    const auto current_at = [&](double s) {
        return loop.solution.current_at(loop.currents, {0, std::min(s, whole_m), 0});
    };
    const Complex reference = current_at(0.5 * whole_m);
    Complex mutual_H = 0;
    for (std::size_t i = 0; i < place_m_.size(); ++i) {
        mutual_H += current_at(place_m_[i]) / reference * mutual_H_[i];
    }
    SeriesCircuit c;
    c.zgg = conductor_ohm + rod_.internal_impedance_ohm_per_m(frequency.value()) * rod_length_m_ +
            j * omega * self_H_;
    if (series_F_ > 0) {
        c.zgg += 1.0 / (j * omega * series_F_);
    }
    c.z12 =
        j * omega * mutual_H - conductor_ohm; // in the tapped part the two currents run against each other
    c.zs = 0;
    return c;
}

double TapFeed::own_loss_share(units::Frequency frequency, const OpenTwoPort& port,
                               Complex capacitor_ohm) const {
    const double all_ohm = port.input(capacitor_ohm).real();
    const double own_ohm = rod_ohm(frequency);
    return all_ohm > own_ohm ? own_ohm / all_ohm : 1.0;
}

base::Notices TapFeed::notices(units::Frequency frequency) const {
    base::Notices notices;
    notices.add(
        {"tap_circuit_model", base::Severity::caution,
         "The tapped match is a circuit model: inductance of the rod, its links and the tapped part of "
         "the conductor. What the rod radiates, its capacitance and the ground's share in the "
         "coupling are not in it; the rod is taken as copper.",
         0});
    const double wavelengths = rod_length_m_ * frequency.value() / units::constants::speed_of_light_m_s;
    if (wavelengths > longest_wavelengths) {
        notices.add(
            {"tap_long", base::Severity::caution,
             "The tap's rod is longer than a twentieth of a wavelength: its current is no longer even "
             "and the match only indicative.",
             wavelengths / longest_wavelengths});
    }
    if (spacing_m_ < least_radii_apart * radii_m_ / 2) {
        notices.add({"tap_close", base::Severity::caution,
                     "Rod and conductor are so close that their currents crowd toward each other: the tap's "
                     "inductance is less than computed.",
                     least_radii_apart * radii_m_ / (2 * spacing_m_)});
    }
    return notices;
}

} // namespace loopwright::coupling::detail
