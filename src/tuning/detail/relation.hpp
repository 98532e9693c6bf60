#pragma once
// How the dial follows the frequency for hardware that deviates from its file, as a function of whitened
// parameters (each standard normal before any point). docs/theory/calibration.md, (D1) to (D4).
#include "tuning/calibration.hpp"
#include "tuning/detail/posterior.hpp"

#include <Eigen/Core>
#include <optional>

namespace loopwright::tuning::detail {

/// Places of the parameters; the fixed capacitors follow, then the smooth deviation of the law.
enum Place : Eigen::Index { stray_at, inductance_at, capacitor_at, offset_at, fixed_at };

inline constexpr Eigen::Index smooth_functions = 10;

class Relation {
public:
    explicit Relation(Hardware hardware);

    [[nodiscard]] Eigen::Index parameters() const { return smooth_from() + smooth_functions; }
    [[nodiscard]] Eigen::Index smooth_from() const {
        return fixed_at + static_cast<Eigen::Index>(hardware_.fixed.size());
    }
    [[nodiscard]] const Hardware& hardware() const { return hardware_; }
    [[nodiscard]] double travel() const { return hardware_.last_stop - hardware_.first_stop; }
    [[nodiscard]] double position_of(double reading) const {
        return (reading - hardware_.first_stop) / travel();
    }
    [[nodiscard]] double reading_of(double position) const {
        return hardware_.first_stop + position * travel();
    }

    /// Position on the dial, 0 at the first stop and 1 at the last, for resonance at a frequency. Nothing
    /// where there is none.
    [[nodiscard]] std::optional<double> position(units::Frequency frequency,
                                                 const Eigen::VectorXd& theta) const;
    /// Its derivatives by the parameters. Only where position() answers.
    [[nodiscard]] Eigen::VectorXd row(units::Frequency frequency, const Eigen::VectorXd& theta) const;

    /// Deviation of the law at a position, and its slope.
    [[nodiscard]] double deviation(double position, const Eigen::VectorXd& theta) const;
    [[nodiscard]] double deviation_slope(double position, const Eigen::VectorXd& theta) const;
    /// The smooth functions at a position, for a median deviation of 1 (that of the prior multiplies them).
    [[nodiscard]] static Eigen::VectorXd smooth(double position, double length);
    /// Whether the calibrated dial rises all along.
    [[nodiscard]] bool monotone(const Eigen::VectorXd& theta) const;

    /// Sizes of noise and of the two parts, as the prior states them.
    [[nodiscard]] Sizes sizes() const;

private:
    /// By the law alone, the dial's own errors left out.
    [[nodiscard]] std::optional<double> law_position(units::Frequency frequency,
                                                     const Eigen::VectorXd& theta) const;
    Hardware hardware_;
};

} // namespace loopwright::tuning::detail
