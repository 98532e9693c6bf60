#include "coupling/coupled_loop.hpp"

#include "base/error.hpp"
#include "coupling/detail/around.hpp"
#include "coupling/detail/coupling_wire.hpp"
#include "coupling/detail/series_feed.hpp"
#include "coupling/detail/tuner.hpp"
#include "coupling/mismatch.hpp"
#include "loop/fitted_capacitor.hpp"
#include "units/text.hpp"

#include <algorithm>
#include <array>
#include <boost/math/tools/toms748_solve.hpp>
#include <cmath>

namespace loopwright::coupling {

namespace {

using Complex = std::complex<double>;

const design::Coupling& coupling_of(const design::Design& design) {
    if (!design.coupling) {
        throw base::InputError::sentence("coupling", "The design has no coupling; a match needs one.");
    }
    return *design.coupling;
}

std::unique_ptr<const detail::FedLoop> fed_loop(const design::Design& design, const loop::FullWave& alone,
                                                units::Resistance line) {
    const design::Coupling& coupling = coupling_of(design);
    switch (coupling.kind) {
    case design::CouplingKind::loop:
        return std::make_unique<const detail::CouplingWire>(design, coupling, alone);
    case design::CouplingKind::tap:
        return std::make_unique<const detail::TapFeed>(design, coupling, alone);
    case design::CouplingKind::transformer:
        return std::make_unique<const detail::TransformerFeed>(coupling, alone, line);
    }
    throw base::ProgramError("a kind of coupling that is not known");
}

constexpr double widest_share = 0.3; ///< of the frequency, to either side

} // namespace

struct CoupledLoop::Parts {
    loop::FullWave alone; ///< where the resonance lies
    detail::Tuner tuner;
    std::unique_ptr<const detail::FedLoop> fed;

    Parts(const design::Design& design, units::Resistance line)
        : alone(design), tuner{loop::FittedCapacitors(design), line.value()},
          fed(fed_loop(design, alone, line)) {}

    [[nodiscard]] Complex capacitor_ohm(double capacitance_F, double f) const {
        return tuner.capacitor_ohm(capacitance_F, f, f);
    }
    /// At f, the loop tuned to another frequency.
    [[nodiscard]] Complex input(const detail::OpenTwoPort& port, double capacitance_F, double f,
                                units::Frequency tuned) const {
        return port.input(tuner.capacitor_ohm(capacitance_F, f, tuned.value()));
    }
    [[nodiscard]] double vswr_of(Complex z) const {
        return vswr(units::Impedance::from_value(z), units::ohms(tuner.line_ohm));
    }
    [[nodiscard]] double reflected_power(Complex z) const { return tuner.reflected_power(z); }
    [[nodiscard]] std::optional<double> edge_Hz(const detail::Around& around, const Match& match,
                                                double limit, double half_span_Hz) const;
};

CoupledLoop::CoupledLoop(const design::Design& design, units::Resistance line)
    : parts_(std::make_unique<const Parts>(design, line)) {}
CoupledLoop::~CoupledLoop() = default;
CoupledLoop::CoupledLoop(CoupledLoop&&) noexcept = default;
CoupledLoop& CoupledLoop::operator=(CoupledLoop&&) noexcept = default;

const loop::FullWave& CoupledLoop::alone() const noexcept {
    return parts_->alone;
}

Match CoupledLoop::match(units::Frequency frequency) const {
    const loop::OperatingPoint alone = parts_->alone.at(frequency, units::watts(1), 2.0);
    if (!alone.resonance) {
        throw base::InputError("frequency", units::canonical(frequency),
                               "a frequency to which a capacitor can tune this loop");
    }
    return match(frequency, *alone.resonance);
}

Match CoupledLoop::match(units::Frequency frequency, const loop::Resonance& own) const {
    const Parts& p = *parts_;
    const detail::OpenTwoPort port = p.fed->at(frequency);
    const double capacitance_F = p.tuner.best_F(port, frequency.value(), own);
    const Complex load = p.capacitor_ohm(capacitance_F, frequency.value());
    const Complex z = port.input(load);
    return {frequency, units::farads(capacitance_F), units::Impedance::from_value(z), p.vswr_of(z),
            p.fed->own_loss_share(frequency, port, load)};
}

units::Impedance CoupledLoop::input(units::Frequency frequency, units::Capacitance capacitance) const {
    return units::Impedance::from_value(
        parts_->input(parts_->fed->at(frequency), capacitance.value(), frequency.value(), frequency));
}

std::vector<MatchPoint> CoupledLoop::curve(const Match& match, units::Frequency span, int points) const {
    if (points < 2 || !(span.value() > 0) || span > 2 * widest_share * match.frequency) {
        throw base::ProgramError("a curve has two points or more, over at most 60 % of the frequency");
    }
    const detail::Around around(*parts_->fed, match.frequency, 0.5 * span);
    std::vector<MatchPoint> curve;
    for (int i = 0; i < points; ++i) {
        const units::Frequency f = match.frequency + span * (static_cast<double>(i) / (points - 1) - 0.5);
        const Complex z =
            parts_->input(around.at(f), match.tuning_capacitance.value(), f.value(), match.frequency);
        curve.push_back({f, units::Impedance::from_value(z), parts_->vswr_of(z)});
    }
    return curve;
}

// The first crossing outward, by steps that grow; then closely.
std::optional<double> CoupledLoop::Parts::edge_Hz(const detail::Around& around, const Match& match,
                                                  double limit, double half_span_Hz) const {
    const double wanted = reflection_magnitude(limit) * reflection_magnitude(limit);
    const double f0 = match.frequency.value();
    const auto excess = [&](double f) {
        return reflected_power(
                   input(around.at(units::hertz(f)), match.tuning_capacitance.value(), f, match.frequency)) -
               wanted;
    };
    double inner = f0;
    constexpr int steps = 50; // from 1e-4 of the span to all of it
    for (int i = 0; i <= steps; ++i) {
        const double outer = f0 + half_span_Hz * std::pow(1e-4, 1 - static_cast<double>(i) / steps);
        if (excess(outer) > 0) {
            std::uintmax_t evaluations = 60;
            const auto [low, high] =
                boost::math::tools::toms748_solve(excess, std::min(inner, outer), std::max(inner, outer),
                                                  boost::math::tools::eps_tolerance<double>(40), evaluations);
            return 0.5 * (low + high);
        }
        inner = outer;
    }
    return std::nullopt;
}

std::optional<units::Frequency> CoupledLoop::bandwidth(const Match& match, double limit) const {
    if (!(match.vswr < limit)) {
        return std::nullopt;
    }
    const double f0 = match.frequency.value();
    for (const double share : {0.01, 0.05, widest_share}) { // a narrow range first: its polynomials are best
        const detail::Around around(*parts_->fed, match.frequency, units::hertz(share * f0));
        const auto low = parts_->edge_Hz(around, match, limit, -share * f0);
        const auto high = parts_->edge_Hz(around, match, limit, share * f0);
        if (low && high) {
            return units::hertz(*high - *low);
        }
    }
    return std::nullopt;
}

std::vector<Mistuning> CoupledLoop::mistuning(const Match& match,
                                              const std::vector<units::Capacitance>& offsets) const {
    const Parts& p = *parts_;
    const double f = match.frequency.value();
    const detail::OpenTwoPort port = p.fed->at(match.frequency);
    // Radiated power goes with the square of the loop's current; what the feed takes with the mismatch.
    const auto current_square = [&](Complex load) {
        const Complex z = port.input(load);
        return (1 - p.reflected_power(z)) / z.real() * std::norm(port.capacitor_per_feed(load));
    };
    const double best = current_square(p.capacitor_ohm(match.tuning_capacitance.value(), f));
    std::vector<Mistuning> rows;
    for (const units::Capacitance& offset : offsets) {
        const units::Capacitance capacitance = match.tuning_capacitance + offset;
        if (!(capacitance.value() > 0)) {
            throw base::ProgramError("a capacitance not above 0");
        }
        const Complex load = p.capacitor_ohm(capacitance.value(), f);
        const Complex z = port.input(load);
        rows.push_back({offset,
                        units::Impedance::from_value(z),
                        p.vswr_of(z),
                        1 - p.reflected_power(z),
                        {10 * std::log10(current_square(load) / best)}});
    }
    return rows;
}

std::optional<PowerShares> CoupledLoop::powers(const Match& match) const {
    const Parts& p = *parts_;
    const double f = match.frequency.value();
    const auto* coupled = dynamic_cast<const detail::CouplingWire*>(p.fed.get());
    if (coupled == nullptr) {
        return std::nullopt;
    }
    const wire::Solution solution = coupled->solve(match.frequency);
    const wire::TwoPort y = wire::two_port(solution.admittance());
    const Complex load_S = 1.0 / p.capacitor_ohm(match.tuning_capacitance.value(), f);
    const std::array<Complex, 2> volts{1.0, y.second_voltage(1.0, load_S)};
    const wire::PowerParts parts = solution.powers(solution.currents(volts));
    const double accepted = (1.0 / y.input_impedance(load_S)).real(); // for 1 V
    return PowerShares{parts.field_W / accepted, parts.conductor_W.at(0) / accepted,
                       parts.conductor_W.at(1) / accepted, std::norm(volts[1]) * load_S.real() / accepted};
}

base::Notices CoupledLoop::notices(units::Frequency frequency) const {
    return parts_->fed->notices(frequency);
}

} // namespace loopwright::coupling
