#pragma once
// One straight conductor of any form, prepared once, asked at many frequencies.
#include "base/notice.hpp"
#include "conductor/strip.hpp"
#include "units/quantities.hpp"

#include <complex>
#include <memory>

namespace loopwright::conductor {

enum class Form { wire, tube, strip, braid, stranded };

struct ConductorSpec {
    Form form = Form::tube;
    units::Length diameter{};         ///< outer; wire, tube, braid, stranded
    units::Length wall{};             ///< tube
    units::Length width{};            ///< strip
    units::Length thickness{};        ///< strip
    units::Conductivity conductivity; ///< at 20 degC
    /// At 20 degC, where copies disagree; both ends zero: taken as certain.
    units::Interval<units::Conductivity> conductivity_range{};
    units::PerKelvin temperature_coefficient{};
    units::Temperature temperature = units::degrees_celsius(20);
    /// Braid: impedance over that of a smooth tube. Stranded: over that of a solid wire of the same diameter.
    double factor = 1.0;
};

class Conductor {
public:
    /// Throws base::InputError (fields named as in a design file: "conductor.wall") for sizes, factor,
    /// temperature or conductivity that no conductor has.
    explicit Conductor(const ConductorSpec& spec);

    /// Internal impedance [ohm/m] of the straight conductor alone, real part resistance, imaginary part omega
    /// times internal inductance. wire, tube: exact (C3, C5). strip: within 1 %, (C14). braid: a solid wire
    /// of the outer diameter times the factor, which is a smooth tube thicker than the skin; stranded:
    /// likewise. frequency >= 0. Cost: some 30 to 300 ns, no allocation.
    [[nodiscard]] units::ImpedancePerLength internal_impedance(units::Frequency frequency) const;
    /// The same in plain numbers, for kernels that call it often.
    [[nodiscard]] std::complex<double> internal_impedance_ohm_per_m(double frequency_Hz) const;

    [[nodiscard]] units::ResistancePerLength dc_resistance() const;
    /// Radius of the round wire with the same external field: half the diameter; strip: (C12).
    [[nodiscard]] units::Length equivalent_radius() const { return units::metres(radius_m_); }
    /// At the conductor's temperature.
    [[nodiscard]] units::Conductivity conductivity() const {
        return units::siemens_per_metre(conductivity_S_m_);
    }
    [[nodiscard]] units::Length skin_depth(units::Frequency frequency) const;
    /// Equivalent radius over skin depth, what proximity.hpp asks for.
    [[nodiscard]] double radius_over_skin_depth(double frequency_Hz) const;

    /// Ends of the true resistance over the nominal one [1]: metal (where copies disagree), strip formula,
    /// braid and stranding factor (common practice, no source: from no excess to twice the excess).
    [[nodiscard]] units::Interval<double> resistance_factor_range(units::Frequency frequency) const;
    /// Not empty where the impedance is not established at this frequency: a braid or strands while the skin
    /// is deeper than 0.15 mm (`braid_below_range`, `strands_below_range`), where a factor over the smooth
    /// conductor has no meaning. All other forms hold at every frequency.
    [[nodiscard]] base::Notices notices(units::Frequency frequency) const;

private:
    [[nodiscard]] std::complex<double> impedance_at(double conductivity_S_m, double frequency_Hz) const;

    Form form_;
    double radius_m_ = 0;
    double wall_fraction_ = 1;
    double factor_ = 1;
    double conductivity_S_m_ = 0;
    units::Interval<double> conductivity_range_S_m_{};
    double dc_ohm_per_m_ = 0; ///< without factor
    std::shared_ptr<const StripImpedance> strip_;
};

} // namespace loopwright::conductor
