#include "loop/detail/solved_frequencies.hpp"

#include <utility>

namespace loopwright::loop::detail {

SolvedFrequencies::SolvedFrequencies(std::shared_ptr<const wire::Solver> solver,
                                     std::shared_ptr<const wire::GroundMatrices> ground, bool ground_directly)
    : solver_(std::move(solver)), ground_(std::move(ground)), directly_(ground_directly) {}

wire::FieldMatrix SolvedFrequencies::of_ground(units::Frequency frequency) const {
    return directly_ ? ground_->direct(frequency) : ground_->at(frequency);
}

/// Free space and ground together.
wire::FieldMatrix SolvedFrequencies::field_matrix(double frequency_Hz) const {
    wire::FieldMatrix field = solver_->free_space(units::hertz(frequency_Hz));
    if (ground_) {
        const wire::FieldMatrix added = of_ground(units::hertz(frequency_Hz));
        for (std::size_t e = 0; e < field.re.size(); ++e) {
            field.re[e] += added.re[e];
            field.im[e] += added.im[e];
        }
    }
    return field;
}

wire::Solution SolvedFrequencies::solve(units::Frequency frequency,
                                        std::complex<double> conductor_ohm_per_m) const {
    const wire::Loading loading{{conductor_ohm_per_m}, {}};
    if (ground_) {
        const wire::FieldMatrix added = of_ground(frequency);
        return solver_->solve(frequency, loading, &added);
    }
    return solver_->solve(frequency, loading);
}

std::shared_ptr<const SolvedFrequency> SolvedFrequencies::at(units::Frequency frequency,
                                                             std::complex<double> conductor_ohm_per_m) const {
    const double f = frequency.value();
    {
        const std::lock_guard lock(mutex_);
        const auto found = kept_.find(f);
        if (found != kept_.end() && found->second->conductor_ohm_per_m == conductor_ohm_per_m) {
            return found->second;
        }
    }
    wire::FieldMatrix change = field_matrix(f * (1 + slope_step));
    const wire::FieldMatrix below = field_matrix(f * (1 - slope_step));
    for (std::size_t e = 0; e < change.re.size(); ++e) {
        change.re[e] -= below.re[e];
        change.im[e] -= below.im[e];
    }
    auto solved = std::make_shared<const SolvedFrequency>(
        SolvedFrequency{conductor_ohm_per_m, solve(frequency, conductor_ohm_per_m), std::move(change)});
    const std::lock_guard lock(mutex_);
    if (kept_.insert_or_assign(f, solved).second) {
        order_.push_back(f);
    }
    if (order_.size() > most_kept) {
        kept_.erase(order_.front());
        order_.pop_front();
    }
    return solved;
}

std::shared_ptr<const NearbyPorts>
SolvedFrequencies::near(units::Frequency frequency,
                        const std::function<std::complex<double>(double)>& conductor_ohm_per_m) const {
    const double f = frequency.value();
    std::vector<std::complex<double>> conductor;
    for (const double node_Hz : NearbyPorts::nodes_Hz(f)) {
        conductor.push_back(conductor_ohm_per_m(node_Hz));
    }
    {
        const std::lock_guard lock(mutex_);
        const auto found = nearby_.find(f);
        if (found != nearby_.end() && found->second.conductor_ohm_per_m == conductor) {
            return found->second.ports;
        }
    }
    auto ports = std::make_shared<const NearbyPorts>(f, [&](double node_Hz) {
        const std::complex<double> in_conductor = conductor_ohm_per_m(node_Hz);
        return wire::two_port(node_Hz == f ? at(frequency, in_conductor)->solution.admittance()
                                           : solve(units::hertz(node_Hz), in_conductor).admittance());
    });
    const std::lock_guard lock(mutex_);
    if (nearby_.size() >= most_kept) {
        nearby_.clear();
    }
    nearby_.insert_or_assign(f, Nearby{std::move(conductor), ports});
    return ports;
}

} // namespace loopwright::loop::detail
