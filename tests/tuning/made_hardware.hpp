#pragma once
// Hardware drawn at random, by rules of its own: a loop L || C0 in closed form, a capacitor with a law, a
// dial that is off, a law deviation drawn from its covariance by Cholesky factors, reading errors.
#include "tuning/calibration.hpp"

#include <Eigen/Cholesky>
#include <Eigen/Core>

#include <cmath>
#include <random>
#include <utility>
#include <vector>

namespace loopwright::tuning {

/// One loop of 3 uH with 3 pF of its own (invented): the capacitance for resonance, 1/(w^2 L) - C0.
inline double needed_F(double frequency_Hz) {
    const double omega = 2 * M_PI * frequency_Hz;
    return 1 / (omega * omega * 3e-6) - 3e-12;
}

enum class MadeLaw { capacitance, frequency, wavelength };

inline constexpr double made_minimum_F = 12e-12;
inline constexpr double made_maximum_F = 150e-12;
inline constexpr double made_travel = 180;

/// Of a capacitance, 0 at the minimum and 1 at the maximum; straight beyond (12 to 150 pF).
inline double made_position(MadeLaw law, double capacitance_F) {
    const auto scale = [law](double c) {
        return law == MadeLaw::capacitance  ? c
               : law == MadeLaw::wavelength ? std::sqrt(c)
                                            : -1 / std::sqrt(c);
    };
    const auto slope = [law](double c) {
        return law == MadeLaw::capacitance  ? 1
               : law == MadeLaw::wavelength ? 0.5 / std::sqrt(c)
                                            : 0.5 / (c * std::sqrt(c));
    };
    const double width = scale(made_maximum_F) - scale(made_minimum_F);
    if (capacitance_F < made_minimum_F) {
        return slope(made_minimum_F) * (capacitance_F - made_minimum_F) / width;
    }
    if (capacitance_F > made_maximum_F) {
        return 1 + slope(made_maximum_F) * (capacitance_F - made_maximum_F) / width;
    }
    return (scale(capacitance_F) - scale(made_minimum_F)) / width;
}

inline Hardware made_file(MadeLaw law = MadeLaw::capacitance) {
    Hardware hardware;
    hardware.needed = [](units::Frequency f) -> std::optional<units::Capacitance> {
        return units::farads(needed_F(f.value()));
    };
    hardware.frequencies = {units::megahertz(5), units::megahertz(30)};
    hardware.reading = [law](units::Capacitance c) { return made_travel * made_position(law, c.value()); };
    hardware.stray = units::picofarads(4);
    hardware.first_stop = 0;
    hardware.last_stop = made_travel;
    hardware.prior.stray = units::picofarads(3);
    return hardware;
}

/// Within the stops of the file's hardware: 150 + 4 pF at 7.33 MHz to 12 + 4 pF at 21 MHz.
inline constexpr double lowest_Hz = 7.5e6;
inline constexpr double highest_Hz = 20.5e6;

/// The hardware as it really is.
struct Truth {
    MadeLaw law = MadeLaw::capacitance;
    double stray_F = 4e-12;
    double inductance = 1;             ///< factor
    double capacitor = 1;              ///< factor
    double offset = 0;                 ///< in travels
    double noise = 0;                  ///< of one reading, in travels
    std::vector<double> at, deviation; ///< of the law, by position: straight between

    [[nodiscard]] double law_position(double frequency_Hz) const {
        const double variable_F = (needed_F(frequency_Hz) / inductance - stray_F) / capacitor;
        return made_position(law, variable_F);
    }
    [[nodiscard]] double reading(double frequency_Hz) const {
        const double position = law_position(frequency_Hz);
        double wave = 0;
        if (!at.empty()) {
            const double step = at[1] - at[0];
            const double place =
                std::clamp((position - at.front()) / step, 0.0, static_cast<double>(at.size()) - 1.001);
            const auto k = static_cast<std::size_t>(place);
            wave = deviation[k] + (place - static_cast<double>(k)) * (deviation[k + 1] - deviation[k]);
        }
        return made_travel * (position + offset + wave);
    }
};

/// A smooth wave of unit variance: exp(-d^2 / 2 l^2) over 61 places from -0.2 to 1.2, by its Cholesky factor.
class Waves {
public:
    explicit Waves(double length) {
        constexpr int places = 61;
        Eigen::MatrixXd covariance(places, places);
        for (int i = 0; i < places; ++i) {
            at_.push_back(-0.2 + 1.4 * i / (places - 1));
        }
        for (int i = 0; i < places; ++i) {
            for (int k = 0; k < places; ++k) {
                const double d =
                    (at_[static_cast<std::size_t>(i)] - at_[static_cast<std::size_t>(k)]) / length;
                covariance(i, k) = std::exp(-d * d / 2) + (i == k ? 1e-9 : 0);
            }
        }
        factor_ = covariance.llt().matrixL();
    }
    [[nodiscard]] const std::vector<double>& at() const { return at_; }
    template <class Random>
    [[nodiscard]] std::vector<double> drawn(double size, Random& random) const {
        std::normal_distribution<double> normal;
        Eigen::VectorXd z(factor_.rows());
        for (Eigen::Index i = 0; i < z.size(); ++i) {
            z[i] = normal(random);
        }
        const Eigen::VectorXd wave = size * (factor_ * z);
        return {wave.data(), wave.data() + wave.size()};
    }

private:
    std::vector<double> at_;
    Eigen::MatrixXd factor_;
};

inline double frequency_between(double low_Hz, double high_Hz, std::mt19937_64& random) {
    std::uniform_real_distribution<double> uniform(std::log(low_Hz), std::log(high_Hz));
    return std::exp(uniform(random));
}

inline design::CalibrationPoint point_at(double reading, double frequency_Hz) {
    design::CalibrationPoint point;
    point.reading = reading;
    point.frequency = units::hertz(frequency_Hz);
    return point;
}

inline design::CalibrationPoint measured(const Truth& truth, double frequency_Hz, std::mt19937_64& random) {
    std::normal_distribution<double> normal;
    return point_at(truth.reading(frequency_Hz) + made_travel * truth.noise * normal(random), frequency_Hz);
}

} // namespace loopwright::tuning
