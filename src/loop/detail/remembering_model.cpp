#include "loop/detail/remembering_model.hpp"

#include "base/recent.hpp"
#include "loop/detail/asked_point.hpp"
#include "loop/fitted_capacitor.hpp"
#include "loop/full_wave.hpp"
#include "loop/solved_part.hpp"

#include <cmath>
#include <map>
#include <optional>

namespace loopwright::loop::detail {

namespace {

constexpr std::size_t kept_designs = 4;
constexpr std::size_t kept_points = 4096;

struct Key {
    design::Design design;
    Workload workload;
    double mesh_refinement;
    bool operator==(const Key&) const = default;
};

/// Solves, and keeps what it solved.
class Points {
public:
    Points(const design::Design& design, Workload workload, double mesh_refinement)
        : model_(design, workload, mesh_refinement) {}

    [[nodiscard]] OperatingPoint at(units::Frequency frequency, double vswr_limit) const {
        const std::pair place{frequency.value(), vswr_limit};
        {
            const std::lock_guard lock(mutex_);
            if (const auto found = kept_.find(place); found != kept_.end()) {
                return found->second;
            }
        }
        OperatingPoint point = model_.at(frequency, units::watts(1), vswr_limit);
        const std::lock_guard lock(mutex_);
        if (kept_.size() < kept_points) {
            kept_.emplace(place, point);
        }
        return point;
    }

private:
    FullWave model_;
    mutable std::mutex mutex_;
    mutable std::map<std::pair<double, double>, OperatingPoint> kept_;
};

class RememberingModel final : public LoopModel {
public:
    RememberingModel(const design::Design& design, Workload workload, double mesh_refinement)
        : capacitors_(design) {
        static base::Recent<Key, Points> recent(kept_designs);
        points_ = recent.get(Key{solved_part(design), workload, mesh_refinement}, [&] {
            return std::make_shared<const Points>(design, workload, mesh_refinement);
        });
    }

    [[nodiscard]] Model kind() const noexcept override { return Model::full_wave; }

    [[nodiscard]] OperatingPoint at(units::Frequency frequency, units::Power power,
                                    double vswr_limit) const override {
        static_cast<void>(asked(frequency, power, vswr_limit, 0)); // refuses the power too
        OperatingPoint point = scaled_to(points_->at(frequency, vswr_limit), power);
        if (point.resonance) {
            point.resonance->in_capacitor_range =
                capacitors_.at(frequency).can_supply(point.resonance->tuning_capacitance);
        }
        return point;
    }

private:
    FittedCapacitors capacitors_;
    std::shared_ptr<const Points> points_;
};

} // namespace

OperatingPoint scaled_to(OperatingPoint point, units::Power power) {
    const double root = std::sqrt((power / point.power).value());
    point.power = power;
    if (point.resonance) {
        Resonance& r = *point.resonance;
        r.loop_current_rms *= root;
        r.capacitor_current_rms *= root;
        r.capacitor_voltage_rms *= root;
        r.capacitor_voltage_peak *= root;
        r.capacitor_voltage_peak_range.low *= root;
        r.capacitor_voltage_peak_range.high *= root;
    }
    return point;
}

std::unique_ptr<LoopModel> remembering_full_wave(const design::Design& design, Workload workload,
                                                 double mesh_refinement) {
    return std::make_unique<RememberingModel>(design, workload, mesh_refinement);
}

} // namespace loopwright::loop::detail
