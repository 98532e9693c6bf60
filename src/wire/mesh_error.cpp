#include "wire/mesh_error.hpp"

#include "base/error.hpp"
#include "units/constants.hpp"

#include <array>

namespace loopwright::wire {

namespace {

using Complex = std::complex<double>;

struct Tuned {
    double capacitance_F, resistance_ohm;
    std::size_t unknowns;
};

Tuned tune(const WireModel& model, const MeshOptions& options, units::Frequency frequency,
           const Loading& loading) {
    const Solver solver(model, options, frequency);
    const Solution solution = solver.solve(frequency, loading);
    const TwoPort port = two_port(solution.admittance());
    const double omega = 2 * units::constants::pi * frequency.value();
    const auto load = [omega](double capacitance_F) { return Complex(0, omega * capacitance_F); };
    const auto capacitance = resonating_capacitance_F(port, omega, load);
    if (!capacitance) {
        throw base::InputError("frequency", "a frequency above the loop's own resonance",
                               "one at which a capacitance resonates the loop");
    }
    // Sums of parts, not the small real part of the port's impedance.
    const Complex volt = port.input_impedance(load(*capacitance));
    const std::array<Complex, 2> volts{volt, port.second_voltage(volt, load(*capacitance))};
    const double power = solution.powers(solution.currents(volts)).total_W();
    return {*capacitance, power, solver.mesh().nodes()};
}

} // namespace

MeshError estimate_mesh_error(const WireModel& model, const MeshOptions& options, units::Frequency frequency,
                              const Loading& loading) {
    MeshOptions coarser = options;
    coarser.refinement = options.refinement / 2;
    const Tuned fine = tune(model, options, frequency, loading);
    const Tuned coarse = tune(model, coarser, frequency, loading);
    const auto third = [](double coarse_value, double fine_value) {
        return (coarse_value - fine_value) / 3 / fine_value;
    };
    return {third(coarse.capacitance_F, fine.capacitance_F),
            third(coarse.resistance_ohm, fine.resistance_ohm), fine.unknowns, coarse.unknowns};
}

} // namespace loopwright::wire
